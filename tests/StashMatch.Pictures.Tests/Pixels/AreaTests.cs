using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

/// <summary>What is seen on the picture is in the proportion of rows × stitches.</summary>
public sealed class AreaTests
{
    private static readonly string[] Sizes = ["A", "F", "H"];
    private static readonly int[] Counts = [1, 4, 6, 12, 24];

    private static IEnumerable<RowPlan> Every(HatDesign design) =>
        from size in Sizes
        from count in Counts
        let needs = (design with { StripeCounts = new StripeCounts(1, 24) }).TryNeeds(size, count, out var found, out _) ? found : null
        where needs is not null
        select needs.Plan!;

    [Theory]
    [InlineData(Construction.SideToSide)]
    [InlineData(Construction.BrimUpRound)]
    [InlineData(Construction.BrimUpFlat)]
    public void Pixels_are_in_proportion_to_rows_times_stitches(Construction construction)
    {
        var design = construction == Construction.SideToSide ? Samples.SideToSide with { Brim = Samples.BrimUp.Brim } : Samples.BrimUp with { Construction = construction };
        var plans = Every(design).ToList();
        Assert.True(plans.Count >= 12, $"{plans.Count}");
        Parallel.ForEach(plans, plan =>
        {
            // Sections in turn red and green, a braid's strands alike; the brim of a panel lies under all of them and is blue.
            var sections = plan.Sections.Where(s => Stitches(s) > 0).ToList();
            char Hue(HatPart p) => p.Kind == PartKind.Brim ? 'b' : "rg"[sections.FindIndex(s => Is(s, p)) % 2];
            var looked = Looked.Flat(plan, p => p.Kind == PartKind.Seam ? null : Hue(p));
            var patches = looked.Patches((int)(0.4 * sections.Min(Stitches) * PerStitch(plan))).FindAll(p => !p.IsYarn);
            var brim = patches.Where(p => p.Hue == 'b').ToList();
            var others = patches.Where(p => p.Hue != 'b');
            List<Patch> order = construction == Construction.SideToSide ? [.. others.OrderBy(p => p.X), .. brim] : [.. brim, .. others.OrderByDescending(p => p.Y)];
            Assert.Equal(sections.Count, order.Count);
            for (var i = 0; i < order.Count; i++)
            {
                // The brim is single: the line of a fold is no colour. Its rows of rib stand closer: 1/0.95 as many to the cm.
                var share = order[i].Pixels / (Stitches(sections[i]) * PerStitch(plan) * (sections[i].Kind == SectionKind.Brim ? 0.95 : 1));
                Assert.True(share is > 0.98 and < 1.02, $"{plan.Size}, {plan.Stripes}: {sections[i].Kind} {sections[i].Number} is {share:0.000} of what it should be");
            }
        });
    }

    [Fact]
    public void A_stripe_of_a_side_to_side_hat_runs_from_brim_to_crown_and_one_of_a_brim_up_hat_round()
    {
        foreach (var (plan, upright) in new[] { (Samples.SideToSide.PlanOf("F", 6), true), (Samples.BrimUp.PlanOf("F", 6), false) })
        {
            foreach (var stripe in Enumerable.Range(3, 2))
            {
                char? Hue(HatPart p) => p.Name == PartNames.Stripe(stripe) ? 'r' : p.Kind == PartKind.Brim ? 'b' : 'g';
                var flat = Looked.Flat(plan, Hue).Patches(300).Where(p => p.Hue == 'r').MaxBy(p => p.Pixels)!;
                Assert.Equal(upright, flat.Height > 2 * flat.Width);
                Assert.Equal(!upright, flat.Width > 2 * flat.Height);
                var worn = Looked.Worn(plan, Hue);
                var all = worn.Patches(900).Where(p => p.Hue == 'r').MaxBy(p => p.Pixels)!;
                var body = worn.Patches(900).Where(p => p.Hue == 'g').Max(p => p.Height);
                Assert.True(upright ? all.Height > 0.75 * body : all.Width > 2.5 * all.Height, $"{plan.Construction} {stripe} {all}");
            }
        }
    }

    [Fact]
    public void Both_strands_of_a_braid_are_seen_and_its_chevrons_lean_one_way_and_back()
    {
        foreach (var plan in new[] { Samples.SideToSide.PlanOf("C", 6), Samples.BrimUp.PlanOf("C", 6), Samples.BrimUp.PlanOf("C", 6) with { Construction = Construction.BrimUpFlat } })
        {
            char? Hue(HatPart p) => p.Number == 2 && p.Kind == PartKind.Strand ? (p.Strand == 'a' ? 'r' : 'g') : null;
            var upright = plan.Construction == Construction.SideToSide;
            var looked = Looked.Flat(plan, Hue);
            var bits = looked.Patches(30);
            Assert.All("rg", hue => Assert.True(bits.Count(b => b.Hue == hue) > 15, $"{hue}: {bits.Count(b => b.Hue == hue)}"));
            double red = bits.Where(b => b.Hue == 'r').Sum(b => b.Pixels), green = bits.Where(b => b.Hue == 'g').Sum(b => b.Pixels);
            Assert.InRange(red / green, 0.9, 1.1);

            // From its first row to its middle a chevron leads, from there on it falls back: upwards on a panel, to the right round a hat.
            var one = bits.Where(b => b.Hue == 'r').OrderBy(b => upright ? b.Y : b.X).ElementAt(8);
            var (first, depth) = upright ? (one.X - (one.Width / 2.0), one.Width) : (one.Y + (one.Height / 2.0), -one.Height);
            double Step(double from, double to)
            {
                var ahead = Runs(looked, (int)(first + (depth * from)), upright).MinBy(r => Math.Abs(r - (upright ? -one.Y : one.X)));
                return Runs(looked, (int)(first + (depth * to)), upright).MinBy(r => Math.Abs(r - ahead)) - ahead;
            }

            Assert.True(Step(1.0 / 12, 5.0 / 12) > 3, $"{plan.Construction} {Step(1.0 / 12, 5.0 / 12)}");
            Assert.True(Step(7.0 / 12, 11.0 / 12) < -3, $"{plan.Construction} {Step(7.0 / 12, 11.0 / 12)}");
        }
    }

    [Fact]
    public void What_is_short_is_open_on_the_picture_for_its_share_and_what_nothing_goes_in_wholly()
    {
        var plan = Samples.SideToSide.PlanOf("C", 6);
        int Red(Action<Dictionary<string, PartPaint>> change)
        {
            var paint = Looked.Paint(plan, p => p.Name == "stripe 3" ? 'r' : p.Kind == PartKind.Stripe ? 'g' : null);
            change(paint);
            return Looked.Flat(plan, paint).Patches(900).Where(p => p.Hue == 'r').Sum(p => p.Pixels);
        }

        var whole = Red(_ => { });
        Assert.InRange(Red(p => p["stripe 3"] = p["stripe 3"] with { Short = true, Lacks = 0.25 }) / (double)whole, 0.73, 0.77);
        Assert.Equal(0, Red(p => p.Remove("stripe 3")));
    }

    // The middles of the red along a line; on a panel upwards counts up.
    private static List<double> Runs(Looked looked, int line, bool upright)
    {
        var (runs, from) = (new List<double>(), -1);
        for (var at = 0; at < (upright ? looked.Height : looked.Width); at++)
        {
            var red = (upright ? looked[line, at] : looked[at, line]) == 'r';
            if (red && from < 0)
            {
                from = at;
            }
            else if (!red && from >= 0)
            {
                runs.Add((upright ? -1 : 1) * (from + at - 1) / 2.0);
                from = -1;
            }
        }

        return runs;
    }

    private static double PerStitch(RowPlan plan) =>
        (plan.Construction == Construction.BrimUpRound ? 0.5 : 1) * Math.Pow(Flat.PerCm * Looked.Scale, 2) / (double)(plan.Gauge.StitchesPerCm * plan.Gauge.RowsPerCm);

    private static int Stitches(PlanSection section) =>
        section.Runs.Where(r => r.Pattern is not (StitchPattern.PickUp or StitchPattern.TubularEdge)).Sum(r => r.Rows * r.Stitches);

    private static bool Is(PlanSection section, HatPart part) => section.Kind switch
    {
        SectionKind.Brim => part.Kind == PartKind.Brim,
        SectionKind.Crown => part.Kind == PartKind.Crown,
        SectionKind.Braid => part.Kind == PartKind.Strand && part.Number == section.Number,
        _ => part.Kind == PartKind.Stripe && part.Number == section.Number,
    };
}
