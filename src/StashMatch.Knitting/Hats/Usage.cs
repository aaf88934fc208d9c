namespace StashMatch.Knitting.Hats;

/// <summary>How far the knitter's real use runs above the bare metres, and how sure that is.</summary>
/// <param name="Factor">Mean use as a multiple of the bare metres, over 0.</param>
/// <param name="Spread">One standard deviation of its logarithm, 0 or more (0.10 is 10 %).</param>
/// <param name="Calibrated">Whether it was learned from this knitter.</param>
public sealed record Usage(double Factor, double Spread, bool Calibrated = false)
{
    /// <summary>A computed hat and a knitter nobody has weighed yet: 1.10, 10 % [ours].</summary>
    public static Usage Uncalibrated { get; } = new(1.10, 0.10);

    /// <summary>A printed table without allowance: the figure itself, 6 % [ours].</summary>
    public static Usage PrintedBare { get; } = new(1.00, 0.06);

    /// <summary>A printed table with its allowance in: 0.90 of the figure, 6 % [ours].</summary>
    public static Usage PrintedWithAllowance { get; } = new(0.90, 0.06);
}
