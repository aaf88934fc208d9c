using System.IO.Compression;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;

namespace StashMatch.Pictures;

/// <summary>
/// Brings a painted hat down to at most 256 tones, so that its file stays small: each colour of yarn in even steps from dark to light, wider
/// where the picture would grow too large; the soft edge in few tones, at four opacities.
/// </summary>
internal sealed class WoolTones
{
    // Bytes to a pixel that is wool, packed: the file then comes to under 40 KB at 440 pixels, its edge included.
    private const double Room = 0.238;
    private const double UsualPixels = 155_000;
    private const double FirstStep = 12;
    private const int MostTones = 190;
    private const int Lightest = 256;
    private static readonly byte[] Opacities = [77, 136, 196, 255];

    private readonly WoolSheet sheet;
    private readonly int dyes;
    private readonly byte[] levels;
    private readonly byte[] light;
    private readonly double step;

    private WoolTones(WoolSheet sheet, int dyes)
    {
        (this.sheet, this.dyes) = (sheet, dyes);
        (levels, light) = (new byte[sheet.Areas.Length], new byte[sheet.Areas.Length]);
        for (var i = 0; i < levels.Length; i++)
        {
            var o = i * 4;
            var (p, alpha) = (sheet.Pixels, sheet.Pixels[o + 3]);
            levels[i] = (byte)(alpha < 38 ? 255 : alpha < 106 ? 0 : alpha < 166 ? 1 : alpha < 226 ? 2 : 3);
            light[i] = (byte)(((77 * p[o]) + (150 * p[o + 1]) + (29 * p[o + 2])) >> 8);
        }

        // One trial tells how far off the step is; a second trial is seldom needed.
        step = FirstStep;
        for (var i = 0; i < 4 && Packed(step) is var size && size > Room && step < 40; i++)
        {
            step *= double.IsFinite(size) ? Math.Clamp(Math.Pow(size / Room, 1.3), 1.03, 2) : 1.4;
        }
    }

    /// <summary>The sheet as a PNG with a palette; so many colours of yarn are in it.</summary>
    public static byte[] Png(WoolSheet sheet, int dyes)
    {
        var it = new WoolTones(sheet, dyes);
        var (numbers, palette) = it.Dyed();
        using var picture = Image.LoadPixelData<Rgba32>(RawPixels.Only, numbers, sheet.Width, sheet.Height);
        using var stream = new MemoryStream();
        picture.Save(stream, new PngEncoder
        {
            ColorType = PngColorType.Palette,
            BitDepth = PngBitDepth.Bit8,
            FilterMethod = PngFilterMethod.None,
            CompressionLevel = PngCompressionLevel.Level6,
            Quantizer = new NumberedTones(palette),
            IgnoreMetadata = true,
        });
        return stream.ToArray();
    }

    // How large the wool's tones pack at a step, in bytes to a pixel; without end where they are too many.
    private double Packed(double wide)
    {
        var (tones, all, some) = (new byte[levels.Length], 0, new HashSet<int>());
        for (var i = 0; i < levels.Length; i++)
        {
            if (levels[i] == 3)
            {
                var tone = (sheet.Dyes[i] * Lightest) + (int)(light[i] / wide);
                some.Add(tone);
                tones[i] = (byte)((sheet.Dyes[i] * 41) + (int)(light[i] / wide));
                all++;
            }
        }

        if (some.Count > MostTones)
        {
            return double.PositiveInfinity;
        }

        using var packed = new MemoryStream();
        using (var pack = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            pack.Write(tones);
        }

        // A small picture packs worse and is small anyway: it may have more.
        return all == 0 ? 0 : (double)packed.Length / all / Math.Clamp(Math.Sqrt(UsualPixels / all), 1, 2.2);
    }

    // Every tone is the mean of what it stands for. Each pixel carries its tone's number, in place of red.
    private (Rgba32[] Numbers, Rgba32[] Palette) Dyed()
    {
        var (keys, sums) = (new int[levels.Length], new (long N, long R, long G, long B)[dyes * Lightest * 4]);
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = levels[i] == 255 ? -1 : Key(i);
            if (keys[i] >= 0)
            {
                ref var sum = ref sums[keys[i]];
                sum = (sum.N + 1, sum.R + sheet.Pixels[i * 4], sum.G + sheet.Pixels[(i * 4) + 1], sum.B + sheet.Pixels[(i * 4) + 2]);
            }
        }

        var (numbers, palette) = (new byte[sums.Length], new List<Rgba32> { default });
        for (var key = 0; key < sums.Length; key++)
        {
            if (sums[key] is { N: > 0 } sum)
            {
                palette.Add(new(Mean(sum.R, sum.N), Mean(sum.G, sum.N), Mean(sum.B, sum.N), Opacities[key % 4]));
                numbers[key] = (byte)Math.Min(255, palette.Count - 1);
            }
        }

        return ([.. keys.Select(k => new Rgba32(k < 0 ? (byte)0 : numbers[k], 0, 0, 0))], [.. palette.Take(256)]);
        static byte Mean(long sum, long n) => (byte)((sum + (n / 2)) / n);
    }

    // Colour, tone and opacity in one number. Ghosts are pale and need fewer tones; the edge is a few pixels wide and needs the fewest.
    private int Key(int i)
    {
        var wide = levels[i] switch { 3 => step, 0 => Math.Max(step * 1.6, dyes * 1.6), _ => Math.Max(48, dyes * 6.0) };
        return (((sheet.Dyes[i] * Lightest) + (int)(light[i] / wide)) * 4) + levels[i];
    }
}
