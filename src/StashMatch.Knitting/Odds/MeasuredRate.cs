using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Odds;

/// <summary>What a ball that was weighed half-way says of its use: metres used by its own label, against the need planned for what is knitted.</summary>
/// <remarks>
/// ln of the rate is what all yarn shares less the label's error, plus what this ball and its scale add. So of the ball itself the label's
/// error cancels, and of the knitter it is part of the doubt. Normal throughout, in logarithms [ours].
/// </remarks>
/// <param name="Factor">Used / planned, over 0.</param>
/// <param name="Spread">One standard deviation of its logarithm by the ball itself and its first reading, over 0.</param>
/// <param name="UsedGrams">Grams used, over 0.</param>
public sealed record MeasuredRate(double Factor, double Spread, double UsedGrams)
{
    /// <summary>The knitter's usage once these balls are weighed: the conjugate normal update of ln F.</summary>
    /// <param name="planned">What the plan was made with.</param>
    /// <param name="weighed">Each weighed ball's rate, one standard deviation of its label, and half the width of its last reading in grams.</param>
    public static Usage Learn(Usage planned, IEnumerable<(MeasuredRate Rate, double Label, double Band)> weighed)
    {
        ArgumentNullException.ThrowIfNull(planned);
        var (precision, sum) = (0.0, 0.0);
        foreach (var (rate, label, band) in weighed)
        {
            var last = band / Math.Sqrt(3) / rate.UsedGrams;
            var p = 1 / ((label * label) + (rate.Spread * rate.Spread) + (last * last));
            (precision, sum) = (precision + p, sum + (p * Math.Log(rate.Factor)));
        }

        if (precision == 0 || planned.Spread == 0)
        {
            return planned;
        }

        // The damp of those days is in all of them alike.
        var prior = 1 / (planned.Spread * planned.Spread);
        var seen = 1 / ((1 / precision) + (Sureness.Damp * Sureness.Damp));
        var moved = sum / precision * seen / (prior + seen);
        return planned with { Factor = planned.Factor * Math.Exp(moved), Spread = Math.Sqrt(1 / (prior + seen)) };
    }
}
