using CsCheck;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

/// <summary>What people type: labels, fibres, numbers.</summary>
public sealed class ReadingTests
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
    }

    [Theory]
    [InlineData("100 g/400 m", "100 g / 400 m")]
    [InlineData("50g 175yd", "50 g / 175 yd")]
    [InlineData("4 oz / 205 yd", "4 oz / 205 yd")]
    [InlineData("210 yards per 100 grams", "100 g / 210 yd")]
    [InlineData("1 3/4 oz - 160 m", "1.75 oz / 160 m")]
    [InlineData("50 g / 112,5 m", "50 g / 112.5 m")]
    public void A_label_is_kept_as_printed(string typed, string kept)
    {
        Assert.True(LabelText.TryParse(typed, RatioSource.Printed, out var ratio, out var message), message);
        Assert.Equal(kept, ratio.ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("100/400")]
    [InlineData("100 g")]
    [InlineData("100 g / 50 g")]
    [InlineData("100 g / 400 m / 437 yd")]
    [InlineData("0 g / 400 m")]
    [InlineData("100 g / 1 m")]
    [InlineData("1 g / 400 m")]
    [InlineData("-100 g / 400 m")]
    public void A_label_that_is_none_is_refused(string typed) =>
        Assert.False(LabelText.TryParse(typed, RatioSource.Printed, out _, out _));

    [Theory]
    [InlineData("1,5", 1.5)]
    [InlineData("1.5", 1.5)]
    [InlineData("½", 0.5)]
    [InlineData("1½", 1.5)]
    [InlineData("1 1/2", 1.5)]
    [InlineData("１２．５", 12.5)]
    [InlineData(" +7 ", 7)]
    [InlineData(".5", 0.5)]
    public void A_number_is_read_as_people_type_it(string typed, double number)
    {
        Assert.True(TypedNumber.TryRead(typed, out var value, out var message), message);
        Assert.Equal((decimal)number, value);
    }

    [Theory]
    [InlineData("")]
    [InlineData("NaN")]
    [InlineData("1e308")]
    [InlineData("-3")]
    [InlineData("1,234.5")]
    [InlineData("1.234.5")]
    [InlineData("1 234")]
    [InlineData("∞")]
    [InlineData("12 g")]
    public void A_number_that_could_be_misread_is_refused(string typed) => Assert.False(TypedNumber.TryRead(typed, out _, out _));

    [Theory]
    [InlineData("80% merino, 20% nylon", "80% merino, 20% nylon")]
    [InlineData("75 Superwash Merino / 25 Polyamide", "75% superwash merino, 25% polyamide")]
    [InlineData("wool 60 %, silk 40 %", "60% wool, 40% silk")]
    [InlineData("alpaca", "100% alpaca")]
    [InlineData("62,5% wool, 37,5% bamboo", "62.5% wool, 37.5% bamboo")]
    [InlineData("unknown", "unknown")]
    [InlineData("", "unknown")]
    public void A_fibre_text_is_read(string typed, string kept)
    {
        Assert.True(FibreBlend.TryParse(typed, out var blend, out var message), message);
        Assert.Equal(kept, blend.ToString());
        Assert.True(FibreBlend.TryParse(blend.ToString(), out var again, out _));
        Assert.Equal(blend, again);
    }

    [Theory]
    [InlineData("80% merino, 10% nylon", "90")]
    [InlineData("80% merino, 30% nylon", "110")]
    [InlineData("80% moonbeam, 20% nylon", "moonbeam")]
    [InlineData("merino, nylon", "share of merino is missing")]
    [InlineData("50% wool, 50% wool", "twice")]
    [InlineData("-20% wool, 120% silk", "below 0")]
    public void A_fibre_text_that_is_none_is_refused_and_says_why(string typed, string says)
    {
        Assert.False(FibreBlend.TryParse(typed, out _, out var message));
        Assert.Contains(says, message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_typed_ever_throws() => Gen.String.Sample(
        text =>
        {
            _ = TypedNumber.TryRead(text, out _, out _);
            _ = LabelText.TryParse(text, RatioSource.Printed, out _, out _);
            _ = FibreBlend.TryParse(text, out _, out _);
        },
        iter: 10_000);
}
