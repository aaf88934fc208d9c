using CsCheck;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

/// <summary>What a label and a scale make of a ball.</summary>
public sealed class LabelTextTests
{
    // An evening of weighing; figures worked by hand, all invented.
    [Theory]
    [InlineData("100 g/210 yd", 34, 0, 71.4, 65.3)]
    [InlineData("20 g / 80 m", 18.6, 0, 81.4, 74.4)]
    [InlineData("50 g/125 m", 27.5, 4.0, 64.2, 58.7)]
    [InlineData("4 oz/190 yd", 15, 0, 25.1, 23.0)]
    public void A_ball_on_the_scale_becomes_metres_and_yards(string label, double gross, double tare, double yards, double metres)
    {
        Assert.True(LabelText.TryParse(label, RatioSource.Printed, out var ratio, out _));
        var leftover = new Leftover("x", "x", new Weighing(Grams.From((decimal)gross), Grams.From((decimal)tare), Grams.From(0.1m)), ratio);
        Assert.InRange((double)leftover.Held.Yards, yards - 0.051, yards + 0.051);
        Assert.InRange((double)leftover.Held.Value, metres - 0.051, metres + 0.051);
    }

    [Fact]
    public void Six_grams_on_a_one_gram_scale_are_metres_within_8_percent()
    {
        Assert.True(LabelText.TryParse("100 g/400 m", RatioSource.Printed, out var ratio, out _));
        var leftover = new Leftover("x", "x", new Weighing(Grams.From(6), default, Grams.From(1)), ratio);
        Assert.Equal((22m, 24m, 26m), (leftover.HeldAtLeast.Value, leftover.Held.Value, leftover.HeldAtMost.Value));
        Assert.Equal(8, Math.Round(100 * (leftover.HeldAtMost.Value / leftover.Held.Value - 1)));
    }

    [Fact]
    public void Ten_metres_measured_off_and_weighed_make_a_ratio()
    {
        Assert.True(LabelText.TryParse("4.1 g / 10 m", RatioSource.Measured, out var ratio, out _));
        Assert.Equal(244, Math.Round(ratio.MetresPer100Grams));
        Assert.Equal(92.7m, Math.Round(ratio.MetresIn(38.0m), 1));
        Assert.Equal(101, Math.Round(ratio.MetresIn(38.0m) / Metres.PerYard));
        Assert.Equal(RatioSource.Measured, ratio.Source);
        Assert.True(LabelText.TryParse("4 g / 10 m", RatioSource.Measured, out var coarse, out _));
        Assert.Equal(250, coarse.MetresPer100Grams);
        var tenMetres = new Weighing(Grams.From(4), default, Grams.From(1));
        Assert.Equal(12.5m, 100 * tenMetres.BandGrams / tenMetres.Net.Value);
    }

    [Fact]
    public void Ounces_are_not_taken_for_hundreds_of_grams()
    {
        Assert.True(LabelText.TryParse("4 oz/190 yd", RatioSource.Printed, out var ratio, out _));
        Assert.Equal(113.4m, Math.Round(ratio.MassInGrams, 1));
        Assert.Equal(25.1m, Math.Round(ratio.MetresIn(15) / Metres.PerYard, 1));
    }

    [Fact]
    public void A_card_core_is_taken_off()
    {
        Assert.True(LabelText.TryParse("50 g/125 m", RatioSource.Printed, out var ratio, out _));
        var leftover = new Leftover("x", "x", new Weighing(Grams.From(27.5m), Grams.From(4), Grams.From(0.1m)), ratio);
        Assert.Equal((23.5m, 58.75m), (leftover.Weighing.Net.Value, leftover.Held.Value));
        Assert.Equal(0.1m, leftover.Weighing.BandGrams);
    }

    [Theory]
    [InlineData("100 g/400 m", "100 g / 400 m")]
    [InlineData("50g 175yd", "50 g / 175 yd")]
    [InlineData("4 oz / 205 yd", "4 oz / 205 yd")]
    [InlineData("210 yards per 100 grams", "100 g / 210 yd")]
    [InlineData("1 3/4 oz - 160 m", "1.75 oz / 160 m")]
    [InlineData("50 g / 112,5 m", "50 g / 112.5 m")]
    [InlineData("400m/100g", "100 g / 400 m")]
    [InlineData("400 metres to 100 grams", "100 g / 400 m")]
    [InlineData("400 meters = 3.5 ounces", "3.5 oz / 400 m")]
    [InlineData("2oz. - 100yds.", "2 oz / 100 yd")]
    [InlineData("100g-400m", "100 g / 400 m")]
    [InlineData("  100 G, 437 Yards ", "100 g / 437 yd")]
    [InlineData("½ oz / 50 m", "0.5 oz / 50 m")]
    public void A_label_is_kept_as_printed(string typed, string kept)
    {
        Assert.True(LabelText.TryParse(typed, RatioSource.Printed, out var ratio, out var message), message);
        Assert.Equal(kept, ratio.ToString());
    }

    [Theory]
    [InlineData("", "type grams and length")]
    [InlineData("100/400", "with their units")]
    [InlineData("100 g", "with their units")]
    [InlineData("4 oz / 190", "with their units")]
    [InlineData("100 g / 50 g", "length is missing")]
    [InlineData("100 yd / 50 m", "weight is missing")]
    [InlineData("100 g / 400 m / 437 yd", "with their units")]
    [InlineData("1 000 m / 100 g", "with their units")]
    [InlineData("1.000,5 m / 100 g", "more than one decimal sign")]
    [InlineData("0 g / 400 m", "5 to 5000 m per 100 g")]
    [InlineData("100 g / 1 m", "5 to 5000 m per 100 g")]
    [InlineData("1 g / 400 m", "5 to 5000 m per 100 g")]
    [InlineData("0.00000000000000000000000001 g / 100000 m", "5 to 5000 m per 100 g")]
    [InlineData("-100 g / 400 m", "must not be below 0")]
    [InlineData("-100 g 400 m", "must not be below 0")]
    [InlineData("100 g -400 m", "must not be below 0")]
    [InlineData("100 g 400 m /", "with their units")]
    public void A_label_that_is_none_is_refused_and_says_why(string typed, string says)
    {
        Assert.False(LabelText.TryParse(typed, RatioSource.Printed, out _, out var message));
        Assert.Contains(says, message, StringComparison.Ordinal);
    }

    [Fact]
    public void No_label_text_ever_throws_and_what_is_read_reads_back() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.,/ ½gozmyd-"], 0, 60]).Sample(
            text =>
            {
                if (LabelText.TryParse(text, RatioSource.Printed, out var ratio, out var message))
                {
                    return ratio.MetresPer100Grams is >= 5 and <= 5_000
                        && LabelText.TryParse(ratio.ToString(), RatioSource.Printed, out var again, out _) && again == ratio;
                }

                return message is not null;
            },
            iter: 20_000);
}
