using CsCheck;
using StashMatch.Knitting.Quantities;
using Xunit;

namespace StashMatch.Knitting.Tests.Quantities;

public sealed class TypedNumberTests
{
    [Theory]
    [InlineData("1,5", 1.5)]
    [InlineData("1.5", 1.5)]
    [InlineData("½", 0.5)]
    [InlineData("1½", 1.5)]
    [InlineData("1 ¾", 1.75)]
    [InlineData("1 1/2", 1.5)]
    [InlineData("3/4", 0.75)]
    [InlineData("１２．５", 12.5)]
    [InlineData("１１，５", 11.5)]
    [InlineData(" +7 ", 7)]
    [InlineData(".5", 0.5)]
    [InlineData("1.234", 1.234)]
    [InlineData("1,234", 1.234)]
    [InlineData("0", 0)]
    public void A_number_is_read_as_people_type_it(string typed, double number)
    {
        Assert.True(TypedNumber.TryRead(typed, out var value, out var message), message);
        Assert.Equal((decimal)number, value);
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("   ", "is empty")]
    [InlineData("NaN", "must be a number")]
    [InlineData("inf", "must be a number")]
    [InlineData("∞", "must be a number")]
    [InlineData("1e308", "must be a number")]
    [InlineData("1/0", "must be a number")]
    [InlineData("1 234", "must be a number")]
    [InlineData("1'234", "must be a number")]
    [InlineData("12 g", "must be a number")]
    [InlineData("1,5½", "must be a number")]
    [InlineData(".", "must be a number")]
    [InlineData("-3", "must not be below 0")]
    [InlineData("\u22123", "must not be below 0")]
    [InlineData("1,234.5", "more than one decimal sign")]
    [InlineData("1.234.5", "more than one decimal sign")]
    [InlineData("1,,5", "more than one decimal sign")]
    [InlineData("1000000000.5", "is too large")]
    [InlineData("79228162514264337593543950335½", "is too large")]
    [InlineData("0000000000000000000000000000001", "is too long")]
    public void A_number_that_could_be_misread_is_refused_and_says_why(string typed, string says)
    {
        Assert.False(TypedNumber.TryRead(typed, out var value, out var message));
        Assert.Contains(says, message, StringComparison.Ordinal);
        Assert.Equal(0, value);
    }

    [Fact]
    public void Nothing_at_all_is_empty() => Assert.False(TypedNumber.TryRead(null, out _, out _));

    [Fact]
    public void A_number_written_out_reads_back_with_either_decimal_sign() =>
        Gen.Int[0, 1_000_000_000].Select(n => n / 1000m).Sample(
            number =>
            {
                var typed = number.ToString(System.Globalization.CultureInfo.InvariantCulture);
                return TypedNumber.TryRead(typed, out var point, out _) && point == number
                    && TypedNumber.TryRead(typed.Replace('.', ','), out var comma, out _) && comma == number;
            },
            iter: 10_000);

    [Fact]
    public void No_text_ever_throws_or_reads_below_nought() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789999.,/ ½⅞+-\u2212１５．eNa"], 0, 34]).Sample(
            text => TypedNumber.TryRead(text, out var value, out var message)
                ? value is >= 0 and <= 1_000_000_000m && message is null
                : value == 0 && message is not null,
            iter: 20_000);
}
