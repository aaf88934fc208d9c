using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Odds;

/// <summary>What a ball that was weighed half-way says of its use: metres used by its own label, against the bare metres knitted from it.</summary>
/// <remarks>
/// ln of the rate is ln F less the label's error, plus what parts and scale add. So of the ball itself the label's error cancels, and of
/// the knitter it is part of the doubt. Normal throughout, in logarithms [ours].
/// </remarks>
/// <param name="Factor">Used / bare, over 0.</param>
/// <param name="Spread">One standard deviation of its logarithm by the parts and the first reading, over 0.</param>
/// <param name="UsedGrams">Grams used, over 0.</param>
public sealed record MeasuredRate(double Factor, double Spread, double UsedGrams)
{
    /// <summary>The knitter's usage once these balls are weighed: the conjugate normal update of ln F.</summary>
    /// <param name="before">What was known before.</param>
    /// <param name="weighed">Each weighed ball's rate, one standard deviation of its label, and half the width of its last reading in grams.</param>
    public static Usage Learn(Usage before, IEnumerable<(MeasuredRate Rate, double Label, double Band)> weighed)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(weighed);
        var list = weighed.ToList();
        if (list.Count == 0 || before.Spread == 0)
        {
            return before;
        }

        var precision = 1 / (before.Spread * before.Spread);
        var moved = 0.0;
        foreach (var (rate, label, band) in list)
        {
            var last = band / Math.Sqrt(3) / rate.UsedGrams;
            var p = 1 / ((label * label) + (rate.Spread * rate.Spread) + (last * last));
            (precision, moved) = (precision + p, moved + (p * Math.Log(rate.Factor / before.Factor)));
        }

        return before with { Factor = before.Factor * Math.Exp(moved / precision), Spread = Math.Sqrt(1 / precision) };
    }

    /// <summary>The ball's own use, as a multiple of bare metres by its own label, the spread of its logarithm, and how much heavier than read the ball is taken to be, given the knitter's factor.</summary>
    /// <param name="factor">The knitter's factor, over 0.</param>
    /// <param name="label">One standard deviation of the label.</param>
    /// <param name="band">Half the width of the last reading, grams.</param>
    /// <param name="at">A point of that width, -1 to 1. The rate seen tells where in the width the truth is likelier to lie.</param>
    internal (double Use, double Doubt, double Heavier) Given(double factor, double label, double band, double at)
    {
        var (ofLabel, ofScale, ofLast) = (label * label, Spread * Spread, band * band / 3);
        var all = ofLabel + ofScale + (ofLast / (UsedGrams * UsedGrams));
        var pull = ofLast / UsedGrams / all;
        var heavier = (pull * Math.Log(Factor / factor)) + (Math.Sqrt(3 * Math.Max(0, ofLast - (pull * pull * all))) * at);
        var seen = Factor * Math.Max(0.05, 1 - (heavier / UsedGrams));
        var log = ((Math.Log(factor) / ofLabel) + (Math.Log(seen) / ofScale)) / ((1 / ofLabel) + (1 / ofScale));
        return (Math.Exp(log), Math.Sqrt(1 / ((1 / ofLabel) + (1 / ofScale))), heavier);
    }
}
