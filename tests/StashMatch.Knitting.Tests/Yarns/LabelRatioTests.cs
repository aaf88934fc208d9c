using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

public sealed class LabelRatioTests
{
    [Fact]
    public void A_ratio_keeps_its_numbers_and_says_what_a_length_weighs()
    {
        var ratio = new LabelRatio(4, MassUnit.Ounces, 190, LengthUnit.Yards, RatioSource.Printed);
        Assert.Equal("4 oz / 190 yd", ratio.ToString());
        Assert.Equal((4m, 190m), (ratio.Mass, ratio.Length));
        Assert.Equal(113.398m, Math.Round(ratio.GramsOf(Metres.FromMillimetres(173_736)), 3));
    }

    [Theory]
    [InlineData("0", "400")]
    [InlineData("100", "0")]
    [InlineData("-100", "400")]
    [InlineData("100001", "100000")]
    [InlineData("100", "4.9")]
    [InlineData("100", "5001")]
    [InlineData("0.00000000000000000000000001", "100000")]
    public void Numbers_that_make_no_ratio_are_a_mistake_in_the_program(string mass, string length)
    {
        var (grams, metres) = (Of(mass), Of(length));
        Assert.False(LabelRatio.CanBe(grams, MassUnit.Grams, metres, LengthUnit.Metres));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LabelRatio(grams, MassUnit.Grams, metres, LengthUnit.Metres, RatioSource.Printed));
    }

    [Theory]
    [InlineData("100", "5")]
    [InlineData("100", "5000")]
    [InlineData("0.001", "0.05")]
    public void Numbers_at_the_edge_are_taken(string mass, string length)
    {
        Assert.True(LabelRatio.CanBe(Of(mass), MassUnit.Grams, Of(length), LengthUnit.Metres));
        _ = new LabelRatio(Of(mass), MassUnit.Grams, Of(length), LengthUnit.Metres, RatioSource.Printed);
    }

    [Fact]
    public void The_coarsest_yarn_held_double_still_has_a_weight_class()
    {
        var ratio = new LabelRatio(100, MassUnit.Grams, 5, LengthUnit.Metres, RatioSource.Printed);
        var rope = new Leftover("x", "x", new Weighing(Grams.From(100), default, Grams.From(1)), ratio);
        Assert.Equal(WeightClass.Jumbo, HeldTogether.Doubled(rope).Class);
    }

    private static decimal Of(string number) => decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);

    [Theory]
    [InlineData(RatioSource.Printed, 1, 0)]
    [InlineData(RatioSource.Measured, 1, 0.2)]
    [InlineData(RatioSource.Measured, 0.1, 0.02)]
    [InlineData(RatioSource.Guessed, 0.1, 0.25)]
    public void A_measured_ratio_may_be_off_by_half_a_step_and_two_per_cent_at_least_a_guess_by_a_quarter(RatioSource from, double step, double share) =>
        Assert.Equal((decimal)share, new LabelRatio(2.5m, MassUnit.Grams, 10, LengthUnit.Metres, from).MayBeOff(Grams.From((decimal)step)));

    [Fact]
    public void What_the_scale_and_the_ratio_may_be_off_meet_in_what_is_held()
    {
        // 10 g on a 1 g scale: 5 %; 2.5 g measured off on it: 20 %; together √(0.05² + 0.2²) = 20.6 % of 40 m.
        var ratio = new LabelRatio(2.5m, MassUnit.Grams, 10, LengthUnit.Metres, RatioSource.Measured);
        var leftover = new Leftover("a", "A", new Weighing(Grams.From(10), default, Grams.From(1)), ratio);
        Assert.Equal(8.246m, leftover.Doubt.Value);
        Assert.Equal(2m, (leftover with { Ratio = new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed) }).Doubt.Value);
    }
}
