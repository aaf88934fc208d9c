using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;

namespace StashMatch.Pictures;

/// <summary>What lies at a place: a colour, and how much of it, 0 to 1.</summary>
internal readonly record struct Ink(byte Red, byte Green, byte Blue, double Opacity)
{
    public static Ink Of(string hex, double opacity = 1)
    {
        byte At(int i) => hex.Length == 4
            ? (byte)(17 * Convert.ToInt32(hex[i..(i + 1)], 16))
            : Convert.ToByte(hex[((2 * i) - 1)..((2 * i) + 1)], 16);
        return new(At(1), At(2), At(3), opacity);
    }
}

/// <summary>A sheet of pixels to draw on; x and y are in pixels, y downwards. Colours are mixed as a browser mixes them.</summary>
internal sealed class Canvas
{
    /// <summary>The most pixels to a side.</summary>
    public const int MostSide = 6000;

    private readonly byte[] pixels;

    public Canvas(int width, int height, Ink paper)
    {
        if (width is < 1 or > MostSide || height is < 1 or > MostSide)
        {
            throw new ArgumentOutOfRangeException(nameof(width), $"{width} × {height} is no sheet.");
        }

        (Width, Height, pixels) = (width, height, new byte[width * height * 3]);
        for (var i = 0; i < pixels.Length; i += 3)
        {
            (pixels[i], pixels[i + 1], pixels[i + 2]) = (paper.Red, paper.Green, paper.Blue);
        }
    }

    public int Width { get; }

    public int Height { get; }

    public (byte Red, byte Green, byte Blue) this[int x, int y]
    {
        get
        {
            var at = 3 * ((y * Width) + x);
            return (pixels[at], pixels[at + 1], pixels[at + 2]);
        }
    }

    /// <summary>Fills outlines with what <paramref name="ink"/> says lies at each pixel's middle; edges are smoothed, nothing outside the box is touched.</summary>
    public void Fill(IReadOnlyList<IReadOnlyList<Point>> outlines, Func<double, double, Ink> ink, Box? within = null)
    {
        var box = within ?? new(0, 0, Width, Height);
        Scanlines.Cover(outlines, Width, Height, (y, from, cover) =>
        {
            var down = Overlap(y, box.Top, box.Bottom);
            for (var i = 0; i < cover.Length && down > 0; i++)
            {
                var share = cover[i] * down * Overlap(from + i, box.Left, box.Right);
                if (share > 0.002)
                {
                    Lay(from + i, y, ink(from + i + 0.5, y + 0.5), share);
                }
            }
        });
    }

    /// <summary>Lays a painted hat over what is there, its upper left corner at a place.</summary>
    public void Lay(WoolSheet hat, int left, int top)
    {
        for (var y = Math.Max(0, -top); y < hat.Height && y + top < Height; y++)
        {
            for (var x = Math.Max(0, -left); x < hat.Width && x + left < Width; x++)
            {
                var o = ((y * hat.Width) + x) * 4;
                Lay(x + left, y + top, new(hat.Pixels[o], hat.Pixels[o + 1], hat.Pixels[o + 2], hat.Pixels[o + 3] / 255.0), 1);
            }
        }
    }

    /// <summary>The sheet as a PNG.</summary>
    public byte[] Png()
    {
        using var picture = new Image<Rgb24>(RawPixels.Only, Width, Height);
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var (red, green, blue) = this[x, y];
                picture[x, y] = new(red, green, blue);
            }
        }

        using var stream = new MemoryStream();
        picture.Save(stream, new PngEncoder { ColorType = PngColorType.Rgb, BitDepth = PngBitDepth.Bit8, IgnoreMetadata = true });
        return stream.ToArray();
    }

    private static double Overlap(int pixel, double from, double to) => Math.Clamp(Math.Min(pixel + 1, to) - Math.Max(pixel, from), 0, 1);

    private void Lay(int x, int y, Ink ink, double share)
    {
        var (at, a) = (3 * ((y * Width) + x), ink.Opacity * share);
        pixels[at] = Mix(pixels[at], ink.Red, a);
        pixels[at + 1] = Mix(pixels[at + 1], ink.Green, a);
        pixels[at + 2] = Mix(pixels[at + 2], ink.Blue, a);
        static byte Mix(byte below, byte above, double a) => (byte)(below + ((above - below) * a) + 0.5);
    }
}
