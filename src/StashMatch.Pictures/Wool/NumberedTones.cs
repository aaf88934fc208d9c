using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing.Processors.Quantization;

namespace StashMatch.Pictures;

/// <summary>Tells the PNG writer a palette we have chosen already: each pixel carries its tone's number in place of red.</summary>
internal sealed class NumberedTones(Rgba32[] palette) : IQuantizer
{
    public QuantizerOptions Options { get; } = new() { Dither = null, MaxColors = Math.Max(1, palette.Length) };

    public IQuantizer<TPixel> CreatePixelSpecificQuantizer<TPixel>(Configuration configuration)
        where TPixel : unmanaged, IPixel<TPixel> => CreatePixelSpecificQuantizer<TPixel>(configuration, Options);

    public IQuantizer<TPixel> CreatePixelSpecificQuantizer<TPixel>(Configuration configuration, QuantizerOptions options)
        where TPixel : unmanaged, IPixel<TPixel> => new Numbers<TPixel>(configuration, options, palette);

    private readonly struct Numbers<TPixel> : IQuantizer<TPixel>
        where TPixel : unmanaged, IPixel<TPixel>
    {
        public Numbers(Configuration configuration, QuantizerOptions options, Rgba32[] palette)
        {
            (Configuration, Options) = (configuration, options);
            Palette = palette.Select(c =>
            {
                var pixel = default(TPixel);
                pixel.FromRgba32(c);
                return pixel;
            }).ToArray();
        }

        public Configuration Configuration { get; }

        public QuantizerOptions Options { get; }

        public ReadOnlyMemory<TPixel> Palette { get; }

        public void AddPaletteColors(SixLabors.ImageSharp.Memory.Buffer2DRegion<TPixel> pixelRegion)
        {
        }

        public IndexedImageFrame<TPixel> QuantizeFrame(ImageFrame<TPixel> source, Rectangle bounds)
        {
            var it = this;
            return QuantizerUtilities.QuantizeFrame(ref it, source, bounds);
        }

        public byte GetQuantizedColor(TPixel color, out TPixel match)
        {
            Rgba32 pixel = default;
            color.ToRgba32(ref pixel);
            match = Palette.Span[pixel.R];
            return pixel.R;
        }

        public void Dispose()
        {
        }
    }
}
