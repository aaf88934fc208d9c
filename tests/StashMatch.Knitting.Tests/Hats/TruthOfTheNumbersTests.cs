using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Hats;

public sealed class TruthOfTheNumbersTests
{
    [Fact]
    public void Bare_metres_lie_where_they_should_against_published_yardages()
    {
        // A regression guard, not a validation: each within 0.55-1.20 of what is stated, the median of the 13 within 0.85-1.00.
        var ratios = PublishedHats.All().Select(h => h.Hat.Needs("X", 1).Parts.Sum(p => p.BareMetres + p.EndsMetres) / h.StatedMetres).Order().ToList();
        Assert.Equal(PublishedHats.Rows, ratios.Count);
        Assert.All(ratios, r => Assert.InRange(r, 0.55, 1.20));
        Assert.InRange(ratios[6], 0.85, 1.00);
    }

    [Fact]
    public void Head_sizes_of_children_and_adults_fall_into_the_sizes_meant_for_them()
    {
        // WHO Child Growth Standards, head circumference for age (hcanthro table); L = 1, value = M(1 + S z).
        string? Of(double cm) => HatSizes.LetterFor(Centimetres.From((decimal)cm));
        var who = CheckTable.Read("who-head-circumference", 10).Rows;
        foreach (var row in who.Where(r => r.Number("day") <= 274))
        {
            Assert.Null(Of(row.Real("boys_M")));
            Assert.Null(Of(row.Real("girls_M")));
        }

        foreach (var row in who.Where(r => r.Number("day") is >= 548 and <= 731))
        {
            Assert.Equal("A", Of(row.Real("boys_M")));
            Assert.Equal("A", Of(row.Real("girls_M")));
        }

        var five = who.Single(r => r["age"] == "60 mo");
        Assert.Equal(("B", "B"), (Of(five.Real("boys_M")), Of(five.Real("girls_M"))));
        Assert.Equal("C", Of(five.Real("boys_M") * (1 + five.Real("boys_S"))));

        // ANSUR II, US Army 2012 (NATICK/TR-15/007), computed from the public raw files.
        var adults = CheckTable.Read("adult-head", 2).Rows;
        var (men, women) = (adults.Single(r => r["group"] == "men"), adults.Single(r => r["group"] == "women"));
        Assert.Equal(("E", "F", "F", "G", "H"), (Of(men.Real("p5")), Of(men.Real("p25")), Of(men.Real("p50")), Of(men.Real("p75")), Of(men.Real("p95"))));
        Assert.Equal(("D", "E", "F", "F", "G"), (Of(women.Real("p5")), Of(women.Real("p25")), Of(women.Real("p50")), Of(women.Real("p75")), Of(women.Real("p95"))));
    }

    [Fact]
    public void The_stated_intervals_of_a_need_against_published_hats_are_told_whatever_they_are()
    {
        // How many of the 13 stated yardages lie in 80 and in 90 % of what we say: normal in the logarithm, 1.2816 and 1.6449 standard
        // deviations of 12 % either way. A figure to look at; where it changes, look why.
        var apart = PublishedHats.All().Select(h =>
        {
            var needs = h.Hat.Needs("X", 1);
            return Math.Log(h.StatedMetres / (double)needs.Parts.Sum(p => p.Need(needs.Usage).Value)) / needs.Usage.Spread;
        }).ToList();
        var (eighty, ninety) = (apart.Count(a => Math.Abs(a) < 1.2816), apart.Count(a => Math.Abs(a) < 1.6449));
        TestContext.Current.TestOutputHelper!.WriteLine($"of {apart.Count} published hats {eighty} lie in the 80 % interval, {ninety} in the 90 % interval");
        Assert.Equal((9, 9), (eighty, ninety));
    }

    [Fact]
    public void A_knitter_nobody_has_weighed_takes_1_10_of_the_bare_metres_give_or_take_12_per_cent_and_a_known_one_5()
    {
        Assert.Equal((1.10, 0.12, false), (Usage.Uncalibrated.Factor, Usage.Uncalibrated.Spread, Usage.Uncalibrated.Calibrated));
        Assert.Equal((1.00, 0.06), (Usage.PrintedBare.Factor, Usage.PrintedBare.Spread));
        Assert.Equal((0.90, 0.06), (Usage.PrintedWithAllowance.Factor, Usage.PrintedWithAllowance.Spread));
        Assert.Equal(0.05, Usage.CalibratedSpread);
    }

    [Fact]
    public void One_swatch_and_what_is_known_of_knitters_at_large_meet_by_their_precision()
    {
        // By hand: at large ln 1.10 = 0.09531 with 1 / 0.12² = 69.44; the swatch ln 1.21 = 0.19062 with 1 / (0.02² + 0.032²) = 702.25.
        // Together 0.18204, factor 1.1997; spread √(1 / 771.69 + 0.032²) = 0.0482, the 5 % of a calibrated knitter.
        var known = Calibration.Combine([new Calibration(1.21, 0.02)]);
        Assert.Equal((1.1997, 0.0482, true), (Math.Round(known.Factor, 4), Math.Round(known.Spread, 4), known.Calibrated));
        Assert.Equal(Usage.Uncalibrated, Calibration.Combine([]));
    }

    [Theory]
    [InlineData(0.85)]
    [InlineData(1.00)]
    [InlineData(1.10)]
    [InlineData(1.25)]
    [InlineData(1.45)]
    public void A_knitter_of_any_kind_weighed_on_one_hat_finds_the_next_in_the_stated_interval_at_least_17_times_in_20(double own)
    {
        // Nothing here is drawn from what the program believes of knitters: each takes one and the same factor, and all that differs from piece
        // to piece, label to label and reading to reading is spread evenly: ± 5.5 %, ± 3.5 %, half a step.
        var random = new Random(20);
        double Evenly(double within) => within * ((2 * random.NextDouble()) - 1);
        var ratio = new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed);
        var bare = Samples.SideToSide.Needs("C", 6).Parts.Sum(p => p.BareMetres);
        var within = 0;
        const int Hats = 2_000;
        for (var i = 0; i < Hats; i++)
        {
            var grams = Math.Round((decimal)(own * (1 + Evenly(0.055)) * bare / 4 / (1 + Evenly(0.035))), 1);
            var usage = Calibration.Combine([Calibration.FromUse(bare, new Weighing(Grams.From(grams), default, Grams.From(0.1m)), ratio)]);
            within += Math.Abs(Math.Log(own * (1 + Evenly(0.055)) / usage.Factor)) <= 1.645 * usage.Spread ? 1 : 0;
        }

        Assert.InRange(within / (double)Hats, 0.85, 0.99);
    }

    [Fact]
    public void A_swatch_on_a_coarse_scale_says_less_and_two_swatches_say_more()
    {
        // 40 stitches × 50 rows at 28 × 40: 2,000 × 13.887 mm = 27.8 m bare, 6.9 g at 4 m/g; 7.6 g are 10 % more.
        var ratio = new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed);
        Calibration Swatch(decimal step) => Calibration.FromSwatch(40, 50, Gauge.Of(28, 40), new Weighing(Grams.From(7.6m), default, Grams.From(step)), ratio);
        Assert.InRange(Swatch(0.1m).Factor, 1.094, 1.095);
        var (fine, coarse, two) = (Calibration.Combine([Swatch(0.1m)]), Calibration.Combine([Swatch(1)]), Calibration.Combine([Swatch(0.1m), Swatch(0.1m)]));
        Assert.True(coarse.Spread > fine.Spread && fine.Spread > two.Spread);
        Assert.True(fine.Spread < Usage.Uncalibrated.Spread && fine.Calibrated);
    }

    [Fact]
    public void At_another_gauge_the_same_counts_make_another_size_and_take_other_yarn()
    {
        foreach (var construction in Enum.GetValues<Construction>())
        {
            var hat = Samples.BrimUp with { Construction = construction };
            var pattern = hat.PlanOf("C", 6);
            var mine = OwnGauge.At(hat, pattern, Gauge.Of(26, 38));
            Assert.Equal((pattern.BodyStitches, pattern.BodyRows, pattern.BrimRounds), (mine.BodyStitches, mine.BodyRows, mine.BrimRounds));
            Assert.Equal(pattern.Parts.Select(p => (p.Name, p.Rows)), mine.Parts.Select(p => (p.Name, p.Rows)));
            Assert.True(mine.Circumference > pattern.Circumference);

            // Same counts, so yarn goes with l: √(28 · 40 / (26 · 38)), edges and seams a little apart.
            var stripes = (RowPlan p) => p.Parts.Where(x => x.Kind == PartKind.Stripe && x.Number == 2).Sum(x => x.BareMetres);
            Assert.Equal(Math.Sqrt(28.0 * 40 / (26 * 38)), stripes(mine) / stripes(pattern), 9);
        }
    }
}
