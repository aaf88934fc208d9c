namespace StashMatch.Pictures;

/// <summary>A painted hat: bytes of red, green, blue and opacity, and the area each pixel belongs to.</summary>
internal sealed class WoolSheet(int width, int height)
{
    /// <summary>Where no wool is.</summary>
    public const byte Nothing = 255;

    // What there is no yarn for is only hinted at.
    private const double GhostOpacity = 0.30;

    public int Width { get; } = width;

    public int Height { get; } = height;

    public byte[] Pixels { get; } = new byte[width * height * 4];

    public byte[] Areas { get; } = new byte[width * height];

    /// <summary>Which of the hat's colours each pixel is of.</summary>
    public byte[] Dyes { get; } = new byte[width * height];

    /// <summary>Paints all rows of pixels from samples, two or more to a pixel each way, on so many threads.</summary>
    public void Paint(WoolHat hat, WoolForm form, WoolView view, WoolFrame frame, WoolSamples samples, int fine, int threads)
    {
        Array.Fill(Areas, Nothing);
        if (threads <= 1)
        {
            var light = new WoolLight(hat, form, view, frame);
            for (var y = 0; y < Height; y++)
            {
                Row(light, samples, fine, y);
            }

            return;
        }

        Parallel.For(0, Height, new() { MaxDegreeOfParallelism = threads }, () => new WoolLight(hat, form, view, frame), (y, _, light) =>
        {
            Row(light, samples, fine, y);
            return light;
        }, _ => { });
    }

    private void Row(WoolLight light, WoolSamples samples, int fine, int y)
    {
        for (var x = 0; x < Width; x++)
        {
            var (red, green, blue, hits, ghosts, area, dye) = (0.0, 0.0, 0.0, 0, 0, Nothing, (byte)0);
            for (var k = 0; k < fine * fine; k++)
            {
                var at = ((((y * fine) + (k / fine)) * samples.Width) + (x * fine) + (k % fine));
                if (samples.Surface[at] == 0 || !light.Fall(samples, at))
                {
                    continue;
                }

                (red, green, blue, hits) = (red + light.Red, green + light.Green, blue + light.Blue, hits + 1);
                (area, dye) = ((byte)light.Spot.Area, (byte)light.Spot.Dyed);
                ghosts += light.Spot.Ghost ? 1 : 0;
            }

            if (hits == 0)
            {
                continue;
            }

            var o = ((y * Width) + x) * 4;
            (Pixels[o], Pixels[o + 1], Pixels[o + 2]) = (Grain.Byte(red / hits), Grain.Byte(green / hits), Grain.Byte(blue / hits));
            var share = (hits - ghosts + (ghosts * GhostOpacity)) / (fine * fine);
            Pixels[o + 3] = (byte)((255 * share) + 0.5);
            (Areas[(y * Width) + x], Dyes[(y * Width) + x]) = (area, dye);
        }
    }
}
