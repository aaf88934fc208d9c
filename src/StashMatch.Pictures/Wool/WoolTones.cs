using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing.Processors.Quantization;

namespace StashMatch.Pictures;

/// <summary>
/// Brings a painted hat down to at most 256 tones, so that its file stays small: a few tones for each yarn, fewer for the soft edge, at four
/// opacities. Colours are split where they differ most, always in the same way.
/// </summary>
internal sealed class WoolTones
{
    private const int Fine = 32;
    private static readonly byte[] Opacities = [77, 136, 196, 255];

    private readonly WoolSheet sheet;
    private readonly byte[] levels;
    private readonly List<Rgba32> palette = [default];
    private readonly byte[][] tones = new byte[Opacities.Length][];

    private WoolTones(WoolSheet sheet, int yarns)
    {
        this.sheet = sheet;
        levels = new byte[sheet.Width * sheet.Height];
        for (var i = 0; i < levels.Length; i++)
        {
            var alpha = sheet.Pixels[(i * 4) + 3];
            levels[i] = (byte)(alpha < 38 ? 255 : alpha < 106 ? 0 : alpha < 166 ? 1 : alpha < 226 ? 2 : 3);
        }

        var full = Math.Clamp((8 * yarns) + 6, 20, 180);
        var edge = Math.Clamp(2 * yarns, 6, 24);
        for (var level = 0; level < Opacities.Length; level++)
        {
            Split(level, level == 3 ? full : level == 0 && sheet.HasGhost ? edge + 16 : edge);
        }
    }

    /// <summary>The sheet as a PNG with a palette.</summary>
    public static byte[] Png(WoolSheet sheet, int yarns)
    {
        var it = new WoolTones(sheet, yarns);
        var pixels = new Rgba32[sheet.Width * sheet.Height];
        for (var i = 0; i < pixels.Length; i++)
        {
            pixels[i] = it.levels[i] == 255 ? default : it.palette[it.tones[it.levels[i]][it.Cell(i)]];
        }

        using var picture = Image.LoadPixelData<Rgba32>(RawPixels.Only, pixels, sheet.Width, sheet.Height);
        using var stream = new MemoryStream();
        picture.Save(stream, new PngEncoder
        {
            ColorType = PngColorType.Palette,
            BitDepth = PngBitDepth.Bit8,
            FilterMethod = PngFilterMethod.None,
            CompressionLevel = PngCompressionLevel.BestCompression,
            Quantizer = new PaletteQuantizer(it.palette.Select(c => new Color(c)).ToArray(), new QuantizerOptions { Dither = null }),
            IgnoreMetadata = true,
        });
        return stream.ToArray();
    }

    private int Cell(int pixel)
    {
        var at = pixel * 4;
        return ((sheet.Pixels[at] >> 3) * Fine * Fine) + ((sheet.Pixels[at + 1] >> 3) * Fine) + (sheet.Pixels[at + 2] >> 3);
    }

    // Cells of like colour, split again and again where their colours are furthest apart.
    private void Split(int level, int most)
    {
        var all = new Sum[Fine * Fine * Fine];
        for (var i = 0; i < levels.Length; i++)
        {
            if (levels[i] == level)
            {
                ref var sum = ref all[Cell(i)];
                sum = sum.With(sheet.Pixels[i * 4], sheet.Pixels[(i * 4) + 1], sheet.Pixels[(i * 4) + 2]);
            }
        }

        tones[level] = new byte[Fine * Fine * Fine];
        var boxes = new List<Box>();
        var sums = all.Select((sum, cell) => KeyValuePair.Create(cell, sum)).Where(s => s.Value.N > 0).ToList();
        if (sums.Count > 0)
        {
            boxes.Add(new(sums));
        }

        while (boxes.Count > 0 && boxes.Count < most)
        {
            var widest = boxes.MaxBy(b => b.Spread)!;
            if (widest.Spread <= 0)
            {
                break;
            }

            boxes.Remove(widest);
            boxes.AddRange(widest.Halves());
        }

        foreach (var box in boxes)
        {
            foreach (var (cell, _) in box.Cells)
            {
                tones[level][cell] = (byte)palette.Count;
            }

            palette.Add(new((byte)(box.All.Red + 0.5), (byte)(box.All.Green + 0.5), (byte)(box.All.Blue + 0.5), Opacities[level]));
        }
    }

    private readonly record struct Sum(long N, long R, long G, long B)
    {
        public double Red => (double)R / N;

        public double Green => (double)G / N;

        public double Blue => (double)B / N;

        public Sum With(byte red, byte green, byte blue) => new(N + 1, R + red, G + green, B + blue);

        public Sum With(Sum other) => new(N + other.N, R + other.R, G + other.G, B + other.B);

        public double this[int axis] => axis switch { 0 => Red, 1 => Green, _ => Blue };
    }

    private sealed class Box
    {
        private readonly int axis;

        public Box(List<KeyValuePair<int, Sum>> cells)
        {
            Cells = cells;
            All = cells.Aggregate(default(Sum), (sum, c) => sum.With(c.Value));
            for (var i = 0; i < 3; i++)
            {
                var (mean, spread) = (All[i], 0.0);
                foreach (var (_, sum) in cells)
                {
                    spread += sum.N * (sum[i] - mean) * (sum[i] - mean);
                }

                if (spread > Spread)
                {
                    (Spread, axis) = (spread, i);
                }
            }
        }

        public List<KeyValuePair<int, Sum>> Cells { get; }

        public Sum All { get; }

        public double Spread { get; }

        public IEnumerable<Box> Halves()
        {
            var mean = All[axis];
            yield return new([.. Cells.Where(c => c.Value[axis] <= mean)]);
            yield return new([.. Cells.Where(c => c.Value[axis] > mean)]);
        }
    }
}
