using CsCheck;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Hats;

/// <summary>Laws every hat keeps, whatever its construction and options.</summary>
public sealed class EveryHatTests
{
    private static readonly Gen<(HatDesign Hat, int Stripes)> Hats =
        from construction in Gen.Enum<Construction>()
        from stitches in Gen.Int[8, 40]
        from taller in Gen.Int[0, 14]
        from brimTenths in Gen.Int[0, 80]
        from folded in Gen.Bool
        from fit in Gen.Enum<BrimFit>()
        from four in Gen.Bool
        from edge in Gen.Enum<EdgeKind>()
        from braidsWhere in Gen.Enum<BraidPlaces>()
        from strands in Gen.Enum<StrandSource>()
        from single in Gen.Bool
        from lines in Gen.Int[4, 16]
        from own in Gen.Bool
        from head in Gen.Int[300, 700]
        from count in Gen.Int[1, 24]
        from kind in Gen.Int[0, 3]
        from weights in Gen.Int[1, 40].Array[24]
        let brim = brimTenths < 10 ? null : new Brim(Centimetres.From(brimTenths / 10m), folded, fit, four ? 4 : 2, edge)
        let places = braidsWhere == BraidPlaces.BesideBrimToo && (brim is null || construction == Construction.SideToSide) ? BraidPlaces.BetweenStripes : braidsWhere
        select (new HatDesign
        {
            Name = "any",
            Construction = construction,
            Gauge = Gauge.Of(stitches, stitches + taller),
            WeightClass = WeightClass.Light,
            Brim = brim,
            Braids = new Braids(places, strands, single ? 1 : 2),
            Crown = new Crown(lines, own ? CrownYarn.Own : CrownYarn.Stripes),
            Stripes = kind < 2 ? null : new StripeDepths([.. weights.Take(count).Select(w => w / 10m)], kind == 2),
            Sizes = [HatSize.ForHead("X", Centimetres.From(head / 10m))],
        }, count);

    [Fact]
    public void Every_hat_can_be_knitted_or_is_refused_with_a_field_and_a_reason()
    {
        var (knitted, refused) = (0, 0);
        Hats.Sample(
            h =>
            {
                if (!h.Hat.TryNeeds("X", h.Stripes, out var needs, out var why))
                {
                    Assert.False(string.IsNullOrEmpty(why.Field) || string.IsNullOrEmpty(why.Reason));
                    Interlocked.Increment(ref refused);
                    return;
                }

                Interlocked.Increment(ref knitted);
                Check(h.Hat, needs.Plan!, h.Stripes);
            },
            iter: 10_000);
        Assert.True(knitted > 3_000 && refused > 500, $"{knitted} knitted, {refused} refused");
    }

    [Fact]
    public void Needs_grow_with_the_size() => Hats.Sample(
        h =>
        {
            var head = h.Hat.Sizes[0].Head!.Value.Value;
            var larger = h.Hat with { Sizes = [HatSize.ForHead("X", Centimetres.From(head + 4))] };
            if (h.Hat.Stripes is null && h.Hat.TryNeeds("X", h.Stripes, out var small, out _) && larger.TryNeeds("X", h.Stripes, out var large, out _))
            {
                // A braid more may cost or spare a little; the body's own stitches never get fewer.
                Assert.True(large.Parts.Sum(p => p.BareMetres) > 0.97 * small.Parts.Sum(p => p.BareMetres));
            }
        },
        iter: 2_000);

    [Theory]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(10)]
    public void A_crown_of_any_number_of_lines_adds_up_to_a_count_round_by_round(int lines)
    {
        var hat = Samples.BrimUp with { Crown = new Crown(lines, CrownYarn.Own), Braids = new Braids() };
        var plan = hat.PlanOf("C", 4);
        var (left, sum, rounds) = (132, 0, 0);
        if (132 % lines != 0)
        {
            left = 132 - (132 % lines);
            (sum, rounds) = (2 * left, 2);
        }

        for (left -= lines; left >= lines; left -= lines)
        {
            sum += left > lines ? 2 * left : left;
            rounds += left > lines ? 2 : 1;
        }

        var crown = plan.Sections.Single(s => s.Kind == SectionKind.Crown);
        Assert.Equal((rounds, sum), (crown.Rows, crown.Runs.Sum(r => r.Rows * r.Stitches)));
    }

    [Fact]
    public void Yarn_goes_with_the_square_root_of_the_stitches_when_the_gauge_is_scaled_at_a_fixed_count()
    {
        // l is proportional to 1 / √(w·c): twice the stitches and rows to 10 cm, half the yarn in a stitch.
        var (coarse, fine) = (LoopLength.MetresPerStitch(Gauge.Of(14, 20)), LoopLength.MetresPerStitch(Gauge.Of(28, 40)));
        Assert.Equal(2, coarse / fine, 12);
    }

    [Fact]
    public void At_a_fixed_size_yarn_grows_with_the_gauge_by_the_square_root_rule()
    {
        // Yarn in an area is stitches × rows × l, so √(ks·w·c): twice the stitches and rows to 10 cm take twice the yarn.
        HatDesign At(decimal stitches, decimal rows) => Samples.BrimUp with
        {
            Gauge = Gauge.Of(stitches, rows),
            Braids = new Braids(),
            Crown = new Crown(8, CrownYarn.Own),
        };
        double Stripes(HatDesign hat) => hat.Needs("C", 4).Parts.Where(p => p.Kind == PartKind.Stripe).Sum(p => p.BareMetres / p.Rows * (double)hat.Gauge.RowsPerCm);
        Assert.InRange(Stripes(At(40, 56)) / Stripes(At(20, 28)), 1.96, 2.04);
    }

    [Fact]
    public void Needs_grow_with_brim_depth_and_with_braided_stripes()
    {
        double Total(HatDesign hat, int stripes) => hat.Needs("C", stripes).Parts.Sum(p => p.BareMetres + p.EndsMetres);
        for (var stripes = 4; stripes < 12; stripes++)
        {
            Assert.True(Total(Samples.SideToSide, stripes + 1) > Total(Samples.SideToSide, stripes));
        }

        HatDesign Deep(decimal cm) => Samples.SideToSide with { Brim = Samples.SideToSide.Brim! with { Depth = Centimetres.From(cm) } };
        Assert.True(Total(Deep(6), 6) > Total(Deep(5), 6));
    }

    [Fact]
    public void Flat_and_seamed_has_two_seam_stitches_even_rows_and_a_seam()
    {
        var hat = Samples.BrimUp with { Construction = Construction.BrimUpFlat };
        var (flat, round) = (hat.PlanOf("C", 6), Samples.BrimUp.PlanOf("C", 6));
        Assert.Equal(round.BodyStitches + 2, flat.BodyStitches);
        Assert.Contains(flat.Parts, p => p.Kind == PartKind.Seam);
        Assert.Equal(0, (flat.BodyRows - flat.CrownRounds) % 2);
        Assert.Equal(0, flat.BrimRounds % 2);
    }

    [Fact]
    public void Stripes_in_proportions_and_with_depths_of_their_own_come_out_so()
    {
        var thirds = Samples.SideToSide with { StripeCounts = null, Braids = new Braids(), Stripes = new StripeDepths([2, 1, 1], false) };
        var rows = thirds.PlanOf("C", 3).Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows).ToList();
        Assert.Equal([94, 48, 46], rows);
        var own = Samples.BrimUp with { StripeCounts = null, Braids = new Braids(), Crown = new Crown(8, CrownYarn.Own), Stripes = new StripeDepths([3, 1.5m, 2.25m], true) };
        Assert.Equal([12, 6, 9], own.PlanOf("C", 3).Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows));
    }

    private static void Check(HatDesign hat, RowPlan plan, int stripes)
    {
        var striped = plan.Parts.Where(p => p.Kind == PartKind.Stripe).ToList();
        Assert.Equal(stripes, striped.Count);
        Assert.All(striped, s => Assert.True(s.Rows >= 2));
        Assert.All(plan.Parts, p => Assert.True(p.BareMetres > 0 && double.IsFinite(p.BareMetres)));
        var own = plan.Sections.Where(s => s.Kind == SectionKind.Crown).Sum(s => s.Rows);
        Assert.Equal(plan.BodyRows, striped.Sum(s => s.Rows) + (3 * plan.Braids) + own);
        Assert.Equal(plan.BodyRows, plan.Sections.Where(s => s.Kind != SectionKind.Brim).Sum(s => s.Rows));
        Assert.Equal(0, BraidCountLeft(plan));
        if (plan.Braids > 0 && hat.Braids.StrandCount == 2)
        {
            Assert.Equal(0, plan.BodyStitches % 2);
        }

        // In flat work every colour change and every braid's set-up lies on a right-side row: an even number of rows below it.
        if (hat.Construction != Construction.BrimUpRound)
        {
            var below = 0;
            var before = SectionKind.Brim;
            foreach (var section in plan.Sections.Where(s => s.Kind != SectionKind.Brim))
            {
                Assert.True(below % 2 == 0 || before == SectionKind.Braid || section.Kind == SectionKind.Crown, $"{section.Kind} {section.Number} after {below} rows");
                (below, before) = (below + section.Rows, section.Kind);
            }
        }

        var straight = plan.BodyRows - plan.CrownRounds;
        var round = 0;
        foreach (var section in plan.Sections.Where(s => s.Kind != SectionKind.Brim))
        {
            round += section.Rows;
            Assert.True(section.Kind != SectionKind.Braid || hat.Construction == Construction.SideToSide || round <= straight);
        }
    }

    private static int BraidCountLeft(RowPlan plan) => plan.Braids - plan.Sections.Count(s => s.Kind == SectionKind.Braid);
}
