using CsCheck;
using StashMatch.Knitting.Colours;
using Xunit;

namespace StashMatch.Knitting.Tests.Colours;

public sealed class ColourTableTests
{
    [Fact]
    public void CIEDE2000_agrees_with_its_published_test_pairs()
    {
        // Sharma, Wu & Dalal 2005, table 1: 34 pairs; 10 and 14 sit on a 180 degree hue edge (0.06 there, 1e-4 elsewhere).
        foreach (var row in CheckTable.Read("ciede2000", 34).Rows)
        {
            var (a, b) = (new Lab(row.Real("L1"), row.Real("a1"), row.Real("b1")), new Lab(row.Real("L2"), row.Real("a2"), row.Real("b2")));
            var within = row["pair"] is "10" or "14" ? 0.06 : 1e-4;
            Assert.InRange(ColourDifference.Ciede2000(a, b) - row.Real("dE00"), -within, within);
            Assert.InRange(ColourDifference.Ciede2000(b, a) - row.Real("dE00"), -within, within);
        }
    }

    [Fact]
    public void Conversions_agree_with_the_table()
    {
        // sRGB to CIELAB (D65) and OKLab (Ottosson), WCAG 2 luminance and contrast; recomputed for the table.
        foreach (var row in CheckTable.Read("colour-conversions", 9).Rows)
        {
            Assert.True(YarnColour.TryParse(row["hex"], out var colour, out _));
            Assert.InRange(colour.Lab.L - row.Real("L"), -0.011, 0.011);
            Assert.InRange(colour.Lab.A - row.Real("a"), -0.011, 0.011);
            Assert.InRange(colour.Lab.B - row.Real("b"), -0.011, 0.011);
            Assert.InRange(colour.OkLab.L - row.Real("oklab_L"), -1.1e-4, 1.1e-4);
            Assert.InRange(colour.OkLab.A - row.Real("oklab_a"), -1.1e-4, 1.1e-4);
            Assert.InRange(colour.OkLab.B - row.Real("oklab_b"), -1.1e-4, 1.1e-4);
            Assert.InRange(colour.RelativeLuminance - row.Real("wcag_Y"), -1e-4, 1e-4);
            Assert.InRange(YarnColour.Contrast(colour, YarnColour.FromRgb(255, 255, 255)) - row.Real("contrast_to_white"), -6e-3, 6e-3);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("#12345")]
    [InlineData("red")]
    [InlineData("#GGGGGG")]
    [InlineData("#1234567")]
    [InlineData("##123456")]
    [InlineData("#12 456")]
    [InlineData(null)]
    public void What_is_no_colour_is_refused(string? text)
    {
        Assert.False(YarnColour.TryParse(text, out _, out var message));
        Assert.NotEmpty(message);
    }

    [Theory]
    [InlineData("#5b7a3a")]
    [InlineData("5B7A3A")]
    [InlineData(" #5B7A3A ")]
    public void A_colour_is_read_with_or_without_its_sign(string text)
    {
        Assert.True(YarnColour.TryParse(text, out var colour, out _));
        Assert.Equal(YarnColour.FromRgb(0x5B, 0x7A, 0x3A), colour);
        Assert.True(YarnColour.TryParse("#fa0", out var brief, out _));
        Assert.Equal("#FFAA00", brief.Hex);
    }

    [Fact]
    public void Every_colour_reads_back_and_difference_is_a_distance_of_a_kind() =>
        Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte, Gen.Byte, Gen.Byte, Gen.Byte).Sample((r, g, b, x, y, z) =>
        {
            var (one, other) = (YarnColour.FromRgb(r, g, b), YarnColour.FromRgb(x, y, z));
            var (there, back) = (ColourDifference.Ciede2000(one.Lab, other.Lab), ColourDifference.Ciede2000(other.Lab, one.Lab));
            return YarnColour.TryParse(one.Hex, out var again, out _) && again == one
                && Math.Abs(there - back) < 1e-9 && there >= 0 && ColourDifference.Ciede2000(one.Lab, one.Lab) == 0
                && YarnColour.Contrast(one, other) is >= 1 and <= 21.0001;
        });

    [Fact]
    public void No_text_for_a_colour_ever_throws() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["#0123456789abcdefABCDEF +-xh"], 0, 8]).Sample(
            text => YarnColour.TryParse(text, out _, out var message) == (message is null),
            iter: 10_000);
}
