namespace StashMatch.Knitting.Designing;

/// <summary>Modified z-scores: 0.6745 (x − median) / MAD, MAD the median of the distances from the median; over 3.5 either way is an outlier.</summary>
/// <remarks>
/// Iglewicz and Hoaglin 1993, "How to Detect and Handle Outliers", which the NIST/SEMATECH e-Handbook of Statistical Methods gives in
/// 1.3.5.17 [memory for both texts]. Formula, 0.6745 and 3.5 were read in documentation that follows them and names them [source]; a worked
/// example on data attributed to the book stands in the tests. A floor under the MAD, so that like readings do not make everyone else an
/// outlier, is ours.
/// </remarks>
public static class ModifiedZ
{
    /// <summary>A score beyond this, either way, is an outlier.</summary>
    public const double Limit = 3.5;

    /// <summary>Fewer values than this say nothing about an outlier [ours].</summary>
    public const int LeastValues = 5;

    private const double Scale = 0.6745;

    /// <summary>The score of each value, in the order given; all 0 where values and floor leave no distance.</summary>
    /// <param name="values">One or more finite values.</param>
    /// <param name="floor">The least MAD to reckon with, 0 or more: how far a value may be off by its measuring.</param>
    public static IReadOnlyList<double> Of(IReadOnlyList<double> values, double floor = 0)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentOutOfRangeException.ThrowIfZero(values.Count, nameof(values));
        var median = Median(values);
        var mad = Math.Max(floor, Median([.. values.Select(v => Math.Abs(v - median))]));
        return [.. values.Select(v => mad == 0 ? 0 : Scale * (v - median) / mad)];
    }

    /// <summary>The middle value, or the mean of the two in the middle.</summary>
    public static double Median(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentOutOfRangeException.ThrowIfZero(values.Count, nameof(values));
        var sorted = values.Order().ToArray();
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
