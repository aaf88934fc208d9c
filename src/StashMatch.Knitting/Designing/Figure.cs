using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>A length to print: kept unrounded to the last, then rounded up once.</summary>
/// <param name="Metres">The planned length, factor, ends and allowance in, unrounded metres, 0 or more.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Figure(double Metres, FigureSource Source)
{
    // Arithmetic noise is not yarn.
    private const double Noise = 1e-6;

    /// <summary>Whole metres, up.</summary>
    public int WholeMetres => (int)Math.Ceiling(Metres - Noise);

    /// <summary>Whole yards, up.</summary>
    public int WholeYards => (int)Math.Ceiling((Metres / (double)Quantities.Metres.PerYard) - Noise);

    /// <summary>Grams at a label ratio, up to the tenth: a strand of a braid weighs under a gram.</summary>
    public decimal GramsAt(LabelRatio ratio)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        return Math.Ceiling(((decimal)Metres / ratio.MetresPerGram * 10) - 0.000001m) / 10;
    }

    /// <summary>The same to the millimetre, up.</summary>
    public Metres ToMillimetre => Quantities.Metres.Needed(Metres);
}
