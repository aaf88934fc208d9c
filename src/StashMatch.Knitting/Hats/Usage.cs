namespace StashMatch.Knitting.Hats;

/// <summary>How far the knitter's real use runs above the bare metres, and how sure that is.</summary>
/// <param name="Factor">Mean use as a multiple of the bare metres, over 0.</param>
/// <param name="Spread">One standard deviation of its logarithm, 0 or more (0.12 is 12 %).</param>
/// <param name="Calibrated">Whether it was learned from this knitter.</param>
public sealed record Usage(double Factor, double Spread, bool Calibrated = false)
{
    /// <summary>The spread a knitter's use has once it is known by a weighed swatch or finished hats [ours].</summary>
    public const double CalibratedSpread = 0.05;

    /// <summary>A computed hat and a knitter nobody has weighed yet: 1.10, 12 % [ours]; published hats scatter by 15 % about such needs, 9 % of it laid to what their descriptions leave open.</summary>
    public static Usage Uncalibrated { get; } = new(1.10, 0.12);

    /// <summary>A printed table without allowance: the figure itself, ends in it, 6 % [ours].</summary>
    public static Usage PrintedBare { get; } = new(1.00, 0.06);

    /// <summary>A printed table with its allowance in: 0.90 of the figure, 6 % [ours].</summary>
    public static Usage PrintedWithAllowance { get; } = new(0.90, 0.06);
}
