using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class FlatTests
{
    [Fact]
    public void Every_band_is_as_large_as_its_stitches_are_many()
    {
        var plans = Paints.Plans(1, 4, 6, 9, 12, 24).ToList();
        Assert.True(plans.Count > 100);
        Assert.All(plans, plan =>
        {
            var hat = Flat.Lay(plan);
            var share = plan.Construction == Construction.BrimUpRound ? 0.5 : 1;
            var perStitch = share * Flat.PerCm * Flat.PerCm / (double)(plan.Gauge.StitchesPerCm * plan.Gauge.RowsPerCm);
            foreach (var section in plan.Sections)
            {
                var drawn = hat.Pieces.Where(p => Belongs(p.Part, section)).Sum(p => p.Area);
                var stitches = section.Runs.Where(r => r.Pattern is not (StitchPattern.PickUp or StitchPattern.TubularEdge)).Sum(r => r.Rows * r.Stitches);

                // Rows of rib stand closer: 1/0.95 as many to the cm.
                Assert.InRange(drawn / (stitches * perStitch * (section.Kind == SectionKind.Brim ? 0.95 : 1)), 0.98, 1.02);
            }
        });
    }

    [Fact]
    public void Both_strands_of_a_braid_take_like_room()
    {
        var hat = Flat.Lay(Samples.SideToSide.PlanOf("C", 6));
        var (a, b) = (hat.Pieces.Single(p => p.Part == "braid 2 strand a").Area, hat.Pieces.Single(p => p.Part == "braid 2 strand b").Area);
        Assert.InRange(a / b, 0.9, 1.1);
    }

    [Fact]
    public void Tags_do_not_overlap_and_stay_on_the_drawing()
    {
        Assert.All(Paints.Plans(1, 6, 12, 24), plan =>
        {
            var hat = Flat.Lay(plan);
            for (var i = 0; i < hat.Tags.Count; i++)
            {
                var tag = hat.Tags[i];
                Assert.InRange(tag.X, tag.Width / 2, hat.Width - (tag.Width / 2));
                Assert.InRange(tag.Y, tag.Height / 2, hat.Height - (tag.Height / 2));
                Assert.DoesNotContain(hat.Tags.Skip(i + 1), tag.Overlaps);
            }
        });
    }

    [Fact]
    public void Every_stripe_of_the_panel_is_numbered() =>
        Assert.All(Paints.Plans(6, 24).Where(p => p.Construction == Construction.SideToSide), plan =>
            Assert.Equal(plan.Stripes, Flat.Lay(plan).Tags.Count(t => t.Part.StartsWith("stripe", StringComparison.Ordinal))));

    [Fact]
    public void A_knot_stands_only_where_a_new_leftover_joins()
    {
        var plan = Samples.BrimUp.PlanOf("C", 6);
        var one = plan.Parts.ToDictionary(p => p.Name, p => new PartPaint("#123456", "On", p.Name, false), StringComparer.Ordinal);
        var yarn = Flat.Lay(plan).Yarn;
        Assert.Equal(["brim"], FlatDrawing.Joins(yarn, new Palette(one)).Select(r => r.Part));
        one["stripe 2"] = new("#654321", "Tw", "stripe 2", false);
        Assert.Equal(["brim", "stripe 2"], FlatDrawing.Joins(yarn, new Palette(one)).Select(r => r.Part).Take(2));
    }

    private static bool Belongs(string part, PlanSection section) => section.Kind switch
    {
        SectionKind.Brim => part == "brim",
        SectionKind.Crown => part == "crown",
        SectionKind.Braid => part.StartsWith($"braid {section.Number} ", StringComparison.Ordinal),
        _ => part == $"stripe {section.Number}",
    };
}
