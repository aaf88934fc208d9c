using StashMatch.Knitting.Colours;
using Xunit;
using static StashMatch.Pictures.Tests.Colours.Photos;

namespace StashMatch.Pictures.Tests.Colours;

public sealed class ColourFinderTests
{
    [Theory]
    [InlineData("#5B7A3A", "#EDE6D6")]
    [InlineData("#523063", "#C9B79A")]
    [InlineData("#B4362C", "#2E2E30")]
    [InlineData("#8896A4", "#F4F2EC")]
    [InlineData("#E2D3B2", "#6A4A30")]
    [InlineData("#1B2747", "#D8D8D4")]
    public void A_ball_on_a_table_is_one_colour_and_the_table_another(string yarn, string table)
    {
        var found = ColourFinder.Find(Ball(yarn, table));
        Assert.Equal(2, found.Count);
        Assert.Equal([1, 2], found.Select(f => f.Number));
        var ball = found.Single(f => InBall(f.Across, f.Down));
        Assert.True(ColourDifference.Ciede2000(ball.Colour.Lab, Colour(yarn).Lab) < 6, ball.Colour.Hex);
        Assert.True(ColourDifference.Ciede2000(found.Single(f => f != ball).Colour.Lab, Colour(table).Lab) < 3);
        Assert.InRange(ball.Share, 0.3, 0.45);
    }

    [Fact]
    public void A_yarn_of_several_colours_gives_each_with_a_ring_where_it_is_widest()
    {
        string[] bands = ["#B4362C", "#EFCA3A", "#2F6CB4", "#F4F2EC"];
        var found = ColourFinder.Find(Block(160, 80, (x, _) => Colour(bands[(int)(x * 4)]), 6));
        Assert.Equal(4, found.Count);
        foreach (var (band, i) in bands.Select((b, i) => (b, i)))
        {
            var one = Assert.Single(found, f => ColourDifference.Ciede2000(f.Colour.Lab, Colour(band).Lab) < 3);
            Assert.InRange(one.Across, (i / 4.0) + 0.06, ((i + 1) / 4.0) - 0.06);
            Assert.InRange(one.Share, 0.23, 0.27);
        }
    }

    [Fact]
    public void Never_more_than_four_however_many_there_are()
    {
        var found = ColourFinder.Find(Block(160, 160, (x, y) => YarnColour.FromRgb((byte)(x * 255), (byte)(y * 255), (byte)((x + y) * 127)), 20));
        Assert.InRange(found.Count, 2, ColourFinder.Most);
        Assert.All(found, f => Assert.InRange(f.Across, 0, 1));
    }

    [Fact]
    public void One_colour_all_over_is_one_colour_in_the_middle()
    {
        var one = Assert.Single(ColourFinder.Find(Block(41, 31, (_, _) => Colour("#5B7A3A"))));
        Assert.Equal("#5B7A3A", one.Colour.Hex);
        Assert.Equal(1, one.Share);
        Assert.InRange(one.Across, 0.3, 0.7);
        Assert.InRange(one.Down, 0.3, 0.7);
    }

    [Fact]
    public void A_speck_is_no_colour_of_the_yarn() =>
        Assert.Single(ColourFinder.Find(Block(100, 100, (x, y) => x < 0.1 && y < 0.1 ? Colour("#FFFFFF") : Colour("#523063"))));

    [Fact]
    public void The_same_photo_gives_the_same_colours_and_turned_over_the_same_shares()
    {
        var upright = ColourFinder.Find(Ball("#5B7A3A", "#EDE6D6"));
        Assert.Equal(upright, ColourFinder.Find(Ball("#5B7A3A", "#EDE6D6")));
        var block = Ball("#5B7A3A", "#EDE6D6");
        var bytes = Bytes(block.Width, block.Height, (x, y) => block[(int)((1 - x) * block.Width), (int)((1 - y) * block.Height)]);
        Assert.True(PixelBlock.TryRead(bytes, out var over, out _));
        Assert.Equal(upright.Select(f => (f.Colour, f.Share)), ColourFinder.Find(over).Select(f => (f.Colour, f.Share)));
    }

    private static bool InBall(double x, double y) => Math.Pow((x - 0.5) * 4 / 3, 2) + Math.Pow(y - 0.5, 2) < 0.16;
}
