using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using Xunit;

namespace StashMatch.Knitting.Tests.Hats;

public sealed class RowPlannerTests
{
    [Fact]
    public void Size_C_in_six_stripes_is_28_29_29_29_29_29_and_five_braids()
    {
        // Worked by hand: 0.90 × 52 = 46.8 cm × 4 rows = 187.2, nearest even 188 = 28 + 5 × 29 + 5 × 3.
        var plan = Samples.SideToSide.PlanOf("C", 6);
        Assert.Equal(188, plan.BodyRows);
        Assert.Equal([28, 29, 29, 29, 29, 29], plan.Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows));
        Assert.Equal(44, plan.BodyStitches);
        Assert.Equal(122, plan.BrimStitches);
        Assert.Equal(40, plan.BrimRounds);
        Assert.Equal(5, plan.Braids);
    }

    // Sanity figures of our own design notes (28 × 40, folded 5 cm brim, tubular, braids from scraps, ends in), yards to the nearest.
    [Theory]
    [InlineData("A", BrimFit.Snug, 183, 196)]
    [InlineData("G", BrimFit.Snug, 264, 279)]
    [InlineData("A", BrimFit.Easy, 189, 203)]
    [InlineData("G", BrimFit.Easy, 271, 286)]
    public void A_side_to_side_hat_takes_the_yards_it_should(string size, BrimFit fit, int fourStripes, int twelveStripes)
    {
        var hat = Samples.SideToSide with { Brim = Samples.SideToSide.Brim! with { Fit = fit } };
        Assert.Equal(fourStripes, Math.Round(BareYards(hat, size, 4)));
        Assert.Equal(twelveStripes, Math.Round(BareYards(hat, size, 12)));
    }

    // The same notes: a single brim, brim up, 117-128 yd in A to 175-187 yd in G; within a yard and a half.
    [Theory]
    [InlineData("A", 117, 128)]
    [InlineData("G", 175, 187)]
    public void A_brim_up_hat_takes_the_yards_it_should(string size, int fourStripes, int twelveStripes)
    {
        Assert.InRange(BareYards(Samples.BrimUp, size, 4), fourStripes - 1.5, fourStripes + 1.5);
        Assert.InRange(BareYards(Samples.BrimUp, size, 12), twelveStripes - 1.5, twelveStripes + 1.5);
    }

    [Theory]
    [InlineData("A")]
    [InlineData("H")]
    public void A_braid_strand_takes_under_3_yards_along_the_panel_and_4_to_5_round_the_head(string size)
    {
        // Under 3 yd [practice, no source]; 4.1-5.2 yd round the head [our own design notes].
        foreach (var part in Samples.SideToSide.Needs(size, 8).Parts.Where(p => p.Kind == PartKind.Strand))
        {
            Assert.InRange((part.BareMetres + part.EndsMetres) / 0.9144, 1.55, 2.05);
        }

        foreach (var part in Samples.BrimUp.Needs(size, 4).Parts.Where(p => p.Kind == PartKind.Strand))
        {
            Assert.InRange((part.BareMetres + part.EndsMetres) / 0.9144, 4.05, 5.2);
        }
    }

    [Fact]
    public void Without_braids_every_stripe_of_a_flat_panel_has_an_even_number_of_rows()
    {
        var hat = Samples.SideToSide with { Braids = new Braids() };
        var rows = hat.PlanOf("C", 7).Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows).ToList();
        Assert.All(rows, r => Assert.Equal(0, r % 2));
        Assert.Equal(188, rows.Sum());
    }

    [Fact]
    public void A_brim_up_body_and_crown_add_up_to_a_count_round_by_round()
    {
        // Counted independently, round by round: 132 stitches, 63 rounds above the brim, 8 lines, 4 stitches taken off first.
        var plan = Samples.BrimUp.PlanOf("C", 4);
        var left = 132;
        var crown = new List<int>();
        left -= 4;
        crown.AddRange([left, left]);
        while (left > 8)
        {
            left -= 8;
            crown.Add(left);
            if (left != 8)
            {
                crown.Add(left);
            }
        }

        var stripes = plan.Sections.Where(s => s.Kind == SectionKind.Stripe).SelectMany(s => s.Runs).Sum(r => r.Rows * r.Stitches);
        Assert.Equal(31, crown.Count);
        Assert.Equal(crown.Count, plan.CrownRounds);
        Assert.Equal(((63 - 31 - (3 * plan.Braids)) * 132) + crown.Sum(), stripes);
        Assert.Equal(63, plan.Sections.Where(s => s.Kind is SectionKind.Stripe or SectionKind.Braid).Sum(s => s.Rows));
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(12)]
    public void No_braid_lies_in_the_crown(int stripes)
    {
        var plan = Samples.BrimUp.PlanOf("C", stripes);
        var round = 0;
        var straight = plan.BodyRows - plan.CrownRounds;
        foreach (var section in plan.Sections.Where(s => s.Kind is not SectionKind.Brim))
        {
            round += section.Rows;
            Assert.True(section.Kind != SectionKind.Braid || round <= straight);
        }

        Assert.InRange(plan.Braids, 1, stripes - 1);
    }

    [Fact]
    public void Too_many_stripes_for_the_rows_are_refused_with_the_most_there_can_be()
    {
        var hat = Samples.SideToSide with
        {
            Gauge = Gauge.Of(8, 10),
            Brim = null,
            StripeCounts = new StripeCounts(1, 24),
        };
        Assert.False(hat.TryNeeds("A", 24, out _, out var why));
        Assert.Equal("stripes", why.Field);
        Assert.True(hat.TryNeeds("A", why.MostStripes!.Value, out var most, out _));
        Assert.All(most.Parts.Where(p => p.Kind == PartKind.Stripe), p => Assert.True(p.Rows >= 2));
        Assert.False(hat.TryNeeds("A", why.MostStripes.Value + 1, out _, out _));
    }

    [Fact]
    public void A_count_outside_the_range_an_unknown_size_and_a_brim_deeper_than_the_hat_are_refused_by_name()
    {
        Assert.False(Samples.SideToSide.TryNeeds("C", 3, out _, out var count));
        Assert.Equal("stripes", count.Field);
        Assert.False(Samples.SideToSide.TryNeeds("Z", 6, out _, out var size));
        Assert.Equal("size", size.Field);
        var deep = Samples.SideToSide with { Brim = new Brim(Centimetres.From(21)) };
        Assert.False(deep.TryNeeds("C", 6, out _, out var brim));
        Assert.Equal("brim.depthCm", brim.Field);
    }

    [Fact]
    public void Loops_to_a_square_centimetre_agree_with_a_published_examination_question()
    {
        // GATE Textile 2015, question 54: fully relaxed plain knit, l = 0.5 cm, 92.4 loops/cm². The default beside it: 86.4.
        Assert.Equal(92.4, LoopLength.LoopsPerSquareCm(0.5, LoopLength.FullyRelaxed), 9);
        Assert.Equal(86.4, LoopLength.LoopsPerSquareCm(0.5), 9);
        Assert.Equal(0.0139, LoopLength.MetresPerStitch(Gauge.Of(28, 40)), 4);
    }

    // Needle rule [source: a designer's blog rule]: l is about 1.5 π × needle diameter, within 9 %.
    [Theory]
    [InlineData(28, 40, 2.75)]
    [InlineData(22, 30, 4.0)]
    [InlineData(20, 28, 4.5)]
    public void Yarn_in_a_stitch_agrees_with_the_needle_rule(int stitches, int rows, double needleMm)
    {
        var rule = 1.5 * Math.PI * needleMm / 1000;
        Assert.InRange(LoopLength.MetresPerStitch(Gauge.Of(stitches, rows)) / rule, 0.91, 1.09);
    }

    private static double BareYards(HatDesign hat, string size, int stripes) =>
        hat.Needs(size, stripes).Parts.Sum(p => p.BareMetres + p.EndsMetres) / 0.9144;
}
