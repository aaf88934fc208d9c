using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class CanvasTests
{
    private static readonly Ink Black = Ink.Of("#000");

    [Fact]
    public void An_edge_between_pixels_is_smoothed_by_the_share_it_covers()
    {
        var canvas = Filled([[new(1.5, 1), new(4.25, 1), new(4.25, 2.5), new(1.5, 2.5)]]);
        Assert.Equal(255, canvas[0, 1].Red);
        Assert.Equal(128, canvas[1, 1].Red, 1.0);
        Assert.Equal(0, canvas[2, 1].Red);
        Assert.Equal(191, canvas[4, 1].Red, 1.0);
        Assert.Equal(128, canvas[2, 2].Red, 1.0);
        Assert.Equal(255, canvas[2, 3].Red);
    }

    [Fact]
    public void A_disc_is_as_large_as_it_should_be_and_a_hole_that_winds_back_stays_open()
    {
        var ring = Nib.Round(new(50, 50), 40).ToList();
        Assert.Equal(Math.PI * 40 * 40, Dark(Filled([ring], 100)), 20.0);
        List<Point> hole = [.. Nib.Round(new(50, 50), 20).Reverse()];
        Assert.Equal(Math.PI * ((40 * 40) - (20 * 20)), Dark(Filled([ring, hole], 100)), 25.0);
    }

    [Fact]
    public void A_line_that_crosses_itself_is_no_darker_there_and_a_dashed_one_covers_its_share()
    {
        Point[] cross = [new(10, 10), new(90, 90), new(90, 10), new(10, 90)];
        var canvas = new Canvas(100, 100, Ink.Of("#fff"));
        canvas.Fill([.. Nib.Draw(cross, close: false, 6, null, roundEnds: false)], (_, _) => Ink.Of("#000", 0.5));
        Assert.Equal(128, canvas[50, 50].Red, 1.0);
        Assert.Equal(128, canvas[30, 30].Red, 1.0);
        Point[] line = [new(0, 50), new(100, 50)];
        Assert.Equal(2.0 / 3, Dark(Filled([.. Nib.Draw(line, false, 4, new(6, 3), false)], 100)) / Dark(Filled([.. Nib.Draw(line, false, 4, null, false)], 100)), 0.04);
    }

    [Fact]
    public void Nothing_is_drawn_outside_the_box_or_off_the_sheet()
    {
        var canvas = new Canvas(20, 20, Ink.Of("#fff"));
        canvas.Fill([[new(-50, -50), new(70, -50), new(70, 70), new(-50, 70)]], (_, _) => Black, new Box(5, 5, 10, 10.5));
        Assert.Equal(255, canvas[4, 7].Red);
        Assert.Equal(0, canvas[5, 7].Red);
        Assert.Equal(128, canvas[7, 10].Red, 1.0);
        Assert.Equal(255, canvas[10, 7].Red);
        canvas.Fill([[new(-50, 300), new(-20, 300), new(-20, 320)], [], [new(1, 1)]], (_, _) => Black);
    }

    [Fact]
    public void The_png_holds_the_pixels()
    {
        using var picture = Image.Load<Rgb24>(Filled([[new(3, 2), new(6, 2), new(6, 5), new(3, 5)]]).Png());
        Assert.Equal((10, 10), (picture.Width, picture.Height));
        Assert.Equal(new Rgb24(0, 0, 0), picture[4, 3]);
        Assert.Equal(new Rgb24(255, 255, 255), picture[7, 3]);
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(10, Canvas.MostSide + 1)]
    public void A_sheet_of_no_size_or_past_all_bounds_is_refused(int width, int height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Canvas(width, height, Black));

    private static Canvas Filled(IReadOnlyList<IReadOnlyList<Point>> outlines, int side = 10)
    {
        var canvas = new Canvas(side, side, Ink.Of("#ffffff"));
        canvas.Fill(outlines, (_, _) => Black);
        return canvas;
    }

    private static double Dark(Canvas canvas)
    {
        var sum = 0.0;
        for (var y = 0; y < canvas.Height; y++)
        {
            for (var x = 0; x < canvas.Width; x++)
            {
                sum += (255 - canvas[x, y].Red) / 255.0;
            }
        }

        return sum;
    }
}
