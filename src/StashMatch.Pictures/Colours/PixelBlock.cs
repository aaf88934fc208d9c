using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Colours;

namespace StashMatch.Pictures;

/// <summary>A small block of raw pixels as the browser drew them: three bytes each, red, green, blue, row by row. Nothing is decoded here.</summary>
public sealed class PixelBlock
{
    /// <summary>The most pixels to a side.</summary>
    public const int MostSide = 160;

    /// <summary>The fewest pixels to a side.</summary>
    public const int LeastSide = 8;

    /// <summary>Width and height before the pixels, two bytes each, the small end first.</summary>
    public const int HeadBytes = 4;

    /// <summary>The most bytes a block may have, its width and height included.</summary>
    public const int MostBytes = HeadBytes + (MostSide * MostSide * 3);

    private readonly byte[] _pixels;

    private PixelBlock(int width, int height, byte[] pixels) => (Width, Height, _pixels) = (width, height, pixels);

    /// <summary>8 to 160.</summary>
    public int Width { get; }

    /// <summary>8 to 160.</summary>
    public int Height { get; }

    /// <summary>The bytes, three a pixel.</summary>
    internal ReadOnlySpan<byte> Bytes => _pixels;

    /// <summary>The pixel so far from the left and from the top.</summary>
    public YarnColour this[int x, int y]
    {
        get
        {
            var at = 3 * ((y * Width) + x);
            return YarnColour.FromRgb(_pixels[at], _pixels[at + 1], _pixels[at + 2]);
        }
    }

    /// <summary>Reads a block: width and height in the first four bytes, then exactly so many pixels.</summary>
    public static bool TryRead(ReadOnlySpan<byte> bytes, [NotNullWhen(true)] out PixelBlock? block, [NotNullWhen(false)] out string? message)
    {
        (block, message) = (null, null);
        if (bytes.Length is < HeadBytes or > MostBytes)
        {
            message = "the photo has a size that cannot be read";
            return false;
        }

        var (width, height) = (bytes[0] | (bytes[1] << 8), bytes[2] | (bytes[3] << 8));
        if (width is < LeastSide or > MostSide || height is < LeastSide or > MostSide)
        {
            message = $"the photo must be at least {LeastSide} and at most {MostSide} pixels each way";
            return false;
        }

        if (bytes.Length != HeadBytes + (width * height * 3))
        {
            message = "the photo arrived incomplete";
            return false;
        }

        block = new PixelBlock(width, height, bytes[HeadBytes..].ToArray());
        return true;
    }
}
