using StashMatch.Knitting.Colours;

namespace StashMatch.Pictures.Tests.Colours;

/// <summary>Invented photos: patches of colour with light, shade and grain.</summary>
internal static class Photos
{
    public static YarnColour Colour(string hex) => YarnColour.TryParse(hex, out var colour, out var wrong) ? colour : throw new ArgumentException(wrong, nameof(hex));

    /// <summary>A photo of so many pixels each way, painted point by point (0 to 1 across and down).</summary>
    public static byte[] Bytes(int width, int height, Func<double, double, YarnColour> paint, int grain = 0)
    {
        var bytes = new byte[PixelBlock.HeadBytes + (width * height * 3)];
        (bytes[0], bytes[1], bytes[2], bytes[3]) = ((byte)width, (byte)(width >> 8), (byte)height, (byte)(height >> 8));
        var noise = new Random(11);
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var colour = paint((x + 0.5) / width, (y + 0.5) / height);
                var at = PixelBlock.HeadBytes + (3 * ((y * width) + x));
                foreach (var (channel, i) in new[] { colour.Red, colour.Green, colour.Blue }.Select((c, i) => (c, i)))
                {
                    bytes[at + i] = (byte)Math.Clamp(channel + noise.Next(-grain, grain + 1), 0, 255);
                }
            }
        }

        return bytes;
    }

    public static PixelBlock Block(int width, int height, Func<double, double, YarnColour> paint, int grain = 0) =>
        PixelBlock.TryRead(Bytes(width, height, paint, grain), out var block, out var wrong) ? block : throw new ArgumentException(wrong, nameof(paint));

    /// <summary>A round ball, lit from above, on a table.</summary>
    public static PixelBlock Ball(string yarn, string table, int grain = 9)
    {
        var (ball, wood) = (Colour(yarn), Colour(table));
        return Block(160, 120, (x, y) => Math.Pow((x - 0.5) * 4 / 3, 2) + Math.Pow(y - 0.5, 2) < 0.16 ? Lit(ball, 0.82 + (0.36 * (1 - y))) : wood, grain);
    }

    private static YarnColour Lit(YarnColour c, double light) => YarnColour.FromRgb(Of(c.Red, light), Of(c.Green, light), Of(c.Blue, light));

    private static byte Of(byte channel, double light) => (byte)Math.Clamp(channel * light, 0, 255);
}
