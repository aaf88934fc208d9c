using System.Globalization;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using StashMatch.Web.Pages.WeighLeftovers;
using Xunit;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

/// <summary>Grams and labels typed as people of six countries type them: the one separator is the decimal sign, whichever it is.</summary>
public sealed class TypedInCulturesTests
{
    // Decimal sign and digits of: the United States, Germany, France, Switzerland, Egypt (its own digits), Japan (full width).
    public static TheoryData<string, string, string> Typed => new()
    {
        { "23.5", "0.1", "50 g / 125.5 m" },
        { "23,5", "0,1", "50 g / 125,5 m" },
        { "23,5", "0,1", "50\u00A0g / 125,5\u00A0m" },
        { "23.5", "0.1", "50g/125.5m" },
        { "٢٣٫٥", "٠٫١", "٥٠ g / ١٢٥٫٥ m" },
        { "２３．５", "０．１", "５０ g / １２５．５ m" },
    };

    [Theory]
    [MemberData(nameof(Typed))]
    public void The_same_ball_is_understood_however_its_numbers_are_typed(string grams, string step, string label)
    {
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (comma.NumberFormat.NumberDecimalSeparator, comma.NumberFormat.NumberGroupSeparator) = (",", ".");
        foreach (var culture in new[] { CultureInfo.InvariantCulture, comma })
        {
            CultureInfo.CurrentCulture = culture;
            var form = new WeighForm { Name = "Ball", Grams = grams, Step = step, Label = label };
            Assert.Equal("59.0 m / 64.5 yd", form.Live());
            var leftover = form.Read(new FieldErrors())!;
            Assert.Equal((Grams.From(23.5m), Grams.From(0.1m), 125.5m), (leftover.Weighing.Net, leftover.Weighing.ScaleStep, leftover.Ratio!.Length));
        }

        CultureInfo.CurrentCulture = before;
    }

    [Theory]
    [InlineData("1,234.5")]
    [InlineData("1.234,5")]
    [InlineData("1'234.5")]
    [InlineData("1 234,5")]
    public void A_sign_between_thousands_is_a_message_never_a_wrong_gram(string grams)
    {
        var errors = new FieldErrors();
        Assert.Null(new WeighForm { Name = "Ball", Grams = grams }.Read(errors));
        Assert.Equal(["grams"], errors.ByField.Keys);
    }
}
