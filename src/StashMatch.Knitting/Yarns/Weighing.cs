using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>One reading of the scale: gross with whatever the yarn is wound on, the tare, and the step the scale counts in.</summary>
public sealed record Weighing
{
    /// <summary>The heaviest reading taken, grams.</summary>
    public const decimal MostGrams = 5_000;

    /// <summary>A reading.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Gross not over 0 and at most 5,000 g; tare not below gross; scale step not over 0 and at most 100 g.</exception>
    public Weighing(Grams gross, Grams tare, Grams scaleStep)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(gross, default);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(gross, Grams.From(MostGrams));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(tare, gross);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(scaleStep, default);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(scaleStep, Grams.From(100));
        (Gross, Tare, ScaleStep) = (gross, tare, scaleStep);
    }

    /// <summary>The reading, core or bowl included.</summary>
    public Grams Gross { get; }

    /// <summary>The core or bowl alone; 0 if there was none.</summary>
    public Grams Tare { get; }

    /// <summary>The step the scale counts in, such as 0.1 g.</summary>
    public Grams ScaleStep { get; }

    /// <summary>The yarn alone.</summary>
    public Grams Net => Gross - Tare;

    /// <summary>How far the net may be off, either way, in grams: half a scale step; with a tare, read twice, a whole one.</summary>
    public decimal BandGrams => Tare > default(Grams) ? ScaleStep.Value : ScaleStep.Value / 2;
}
