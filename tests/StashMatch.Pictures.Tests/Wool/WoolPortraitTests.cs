using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class WoolPortraitTests
{
    private static readonly WoolHat Hat = Samples.SideToSide.PlanOf("F", 4).Hat();

    [Fact]
    public void A_tall_one_grows_with_its_yarns_and_a_square_one_stays_square()
    {
        Assert.Equal((1200, 1200), Size(Words(3), PortraitShape.Square));
        Assert.Equal((1200, 1200), Size(Words(60), PortraitShape.Square));
        var (few, many) = (Size(Words(4), PortraitShape.Tall), Size(Words(12), PortraitShape.Tall));
        Assert.Equal((1200, 1200), (few.Width, many.Width));
        Assert.InRange(many.Height - few.Height, 100, 400);
    }

    [Fact]
    public void Each_yarn_stands_below_the_hat_in_its_own_colour()
    {
        var words = new PortraitWords("A hat", [new("Te", "Teal", "3 g", Wools.Yarn("#0E8C86")), new("Pk", "Pink", "4 g", Wools.Yarn("#E05590"))]);
        var canvas = WoolPortrait.Draw(Hat, words, PortraitShape.Square, 0, 1);
        int Count(Func<(byte Red, byte Green, byte Blue), bool> which) =>
            Enumerable.Range(canvas.Height / 2, canvas.Height / 2).Sum(y => Enumerable.Range(0, 300).Count(x => which(canvas[x, y])));
        Assert.InRange(Count(c => c.Green > c.Red + 60 && c.Blue > c.Red + 60), 400, 3000);
        Assert.InRange(Count(c => c.Red > c.Green + 80 && c.Blue > c.Green + 25), 400, 3000);
    }

    [Fact]
    public void Hostile_words_leave_it_bounded()
    {
        var words = new PortraitWords(new string('w', 4000), [new("<>", new string('\ud800', 300), new string('m', 500), YarnLook.Undyed)],
            new string('x', 4000));
        Assert.InRange(Size(words, PortraitShape.Tall).Height, 1000, 2000);
    }

    private static PortraitWords Words(int yarns) =>
        new("Side to side, size F", [.. Enumerable.Range(0, yarns).Select(i => new PortraitYarn("Ro", $"Rosehip {i}", "7.1 g, 25 m", Wools.Yarn("#B4362C")))]);

    private static (int Width, int Height) Size(PortraitWords words, PortraitShape shape)
    {
        using var picture = Image.Load<Rgb24>(WoolPortrait.Png(Hat, words, shape));
        return (picture.Width, picture.Height);
    }
}
