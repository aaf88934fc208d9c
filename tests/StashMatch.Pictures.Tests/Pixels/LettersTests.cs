using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class LettersTests
{
    [Theory]
    [InlineData("Moss")]
    [InlineData("10.5 m – 11.5 yd, 87 % …")]
    [InlineData("Blåbær, Šípek, Łąka, Gümüş")]
    public void Every_letter_has_an_outline_of_its_own(string words)
    {
        foreach (var letter in words.Where(c => c != ' ').Select(c => $"{c}"))
        {
            Assert.NotEmpty(Letters.Outlines(letter, 20));
            Assert.NotEqual(Frame(), Letters.Outlines(letter, 20).SelectMany(o => o).ToList());
            Assert.True(Letters.Width(letter, 20, bold: true) > 3);
        }
    }

    [Fact]
    public void What_it_has_no_outline_of_is_an_empty_frame()
    {
        Assert.Equal(Frame(), Letters.Outlines("\ud800", 20).SelectMany(o => o).ToList());
        Assert.Empty(Letters.Outlines("\u200d\u0007\u0301", 20));
    }

    [Fact]
    public void Words_are_as_wide_as_their_letters_together_and_grow_with_the_size()
    {
        Assert.Equal(Letters.Width("Mo", 20) + Letters.Width("ss", 20), Letters.Width("Moss", 20), 1e-9);
        Assert.Equal(2 * Letters.Width("Moss", 20), Letters.Width("Moss", 40), 1e-9);
        Assert.True(Letters.Width("Moss", 20, bold: true) > Letters.Width("Moss", 20));
    }

    [Fact]
    public void What_has_no_room_is_cut_with_an_ellipsis()
    {
        Assert.Equal("Hearth rug", Letters.Cut("Hearth rug", 20, 200));
        var cut = Letters.Cut("Hearth rug from the second shelf", 20, 120);
        Assert.EndsWith("…", cut, StringComparison.Ordinal);
        Assert.StartsWith("Hearth", cut, StringComparison.Ordinal);
        Assert.True(Letters.Width(cut, 20) <= 120);
        Assert.Equal("…", Letters.Cut("Hearth", 20, 5));
    }

    private static List<Point> Frame() => [.. Letters.Outlines("\u4e00", 20).SelectMany(o => o)];
}
