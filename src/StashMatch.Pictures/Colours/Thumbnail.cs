using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;

namespace StashMatch.Pictures;

/// <summary>A small picture of a leftover, written afresh from raw pixels.</summary>
public static class Thumbnail
{
    /// <summary>The most pixels to a side.</summary>
    public const int Side = 64;

    /// <summary>The most bytes it can come to, incompressible pixels included.</summary>
    public const int MostBytes = 16 * 1024;

    /// <summary>The middle square of a block as a PNG, at most 64 pixels a side, each the mean of those it stands for.</summary>
    public static byte[] Of(PixelBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        var square = Math.Min(block.Width, block.Height);
        var (left, top, side) = ((block.Width - square) / 2, (block.Height - square) / 2, Math.Min(Side, square));
        using var picture = new Image<Rgb24>(RawPixels.Only, side, side);
        for (var y = 0; y < side; y++)
        {
            for (var x = 0; x < side; x++)
            {
                picture[x, y] = Mean(block, left + (x * square / side), left + ((x + 1) * square / side), top + (y * square / side), top + ((y + 1) * square / side));
            }
        }

        using var stream = new MemoryStream();
        picture.Save(stream, new PngEncoder { ColorType = PngColorType.Rgb, BitDepth = PngBitDepth.Bit8, IgnoreMetadata = true });
        return stream.ToArray();
    }

    private static Rgb24 Mean(PixelBlock block, int left, int right, int top, int foot)
    {
        var (r, g, b, n) = (0, 0, 0, (right - left) * (foot - top));
        for (var y = top; y < foot; y++)
        {
            for (var x = left; x < right; x++)
            {
                var pixel = block[x, y];
                (r, g, b) = (r + pixel.Red, g + pixel.Green, b + pixel.Blue);
            }
        }

        return new Rgb24((byte)(r / n), (byte)(g / n), (byte)(b / n));
    }
}
