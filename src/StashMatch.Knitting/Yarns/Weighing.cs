using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>One reading of the scale: gross with whatever the yarn is wound on, the tare, and the step the scale counts in.</summary>
public sealed record Weighing
{
    /// <summary>The heaviest reading taken, grams.</summary>
    public const decimal MostGrams = 5_000;

    /// <summary>From this step on a scale is coarse, grams.</summary>
    public const decimal CoarseStepGrams = 1;

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
        BandGrams = tare > default(Grams) ? scaleStep.Value : scaleStep.Value / 2;
        ChanceBandGrams = scaleStep.Value < CoarseStepGrams ? BandGrams : BandGrams + (scaleStep.Value / 2);
    }

    private Weighing(Grams grams, IReadOnlyList<Weighing> of)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(grams, default);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(grams, Grams.From(MostGrams));
        Gross = grams;
        ScaleStep = of.Select(w => w.ScaleStep).DefaultIfEmpty().Max();
        (BandGrams, ChanceBandGrams) = (of.Sum(w => w.BandGrams), of.Sum(w => w.ChanceBandGrams));
    }

    /// <summary>A weight as its maker states it, on no scale: without a band.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not over 0 and at most 5,000 g.</exception>
    public static Weighing Stated(Grams grams) => new(grams, []);

    /// <summary>The weight of yarns taken as one, each weighed by itself: their bands add.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not over 0 and at most 5,000 g.</exception>
    public static Weighing Together(Grams grams, params IReadOnlyList<Weighing> of)
    {
        ArgumentNullException.ThrowIfNull(of);
        return new(grams, of);
    }

    /// <summary>The reading, core or bowl included.</summary>
    public Grams Gross { get; }

    /// <summary>The core or bowl alone; 0 if there was none.</summary>
    public Grams Tare { get; }

    /// <summary>The step the scale counts in, such as 0.1 g; 0 for a weight that was stated, not read.</summary>
    public Grams ScaleStep { get; }

    /// <summary>The yarn alone.</summary>
    public Grams Net => Gross - Tare;

    /// <summary>How far the net may be off, either way, in grams: half a scale step; with a tare, read twice, a whole one; 0 where nobody weighed.</summary>
    public decimal BandGrams { get; }

    /// <summary>
    /// The same as the chance counts it: scales of 1 g and coarser are kitchen scales, so a whole step, and 1½ with a tare [ours]. What is shown
    /// stays <see cref="BandGrams"/>.
    /// </summary>
    public decimal ChanceBandGrams { get; }
}
