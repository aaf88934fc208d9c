using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Odds;

/// <summary>What one leftover has to serve.</summary>
/// <param name="Leftover">The leftover.</param>
/// <param name="Bare">Bare metres of each part it serves, each 0 or more.</param>
/// <param name="Ends">Metres of ends of all of them together.</param>
public sealed record Load(Leftover Leftover, IReadOnlyList<double> Bare, double Ends)
{
    /// <summary>What weighing this ball half-way told; null where it was not weighed since. Its label's error is then in the rate and cancels.</summary>
    public MeasuredRate? Rate { get; init; }
}

/// <summary>The chance that no leftover runs out.</summary>
/// <remarks>
/// A leftover holds (g + U)·ρ·(1 + η): U uniform over the scale's band, η normal. It is asked for ends + F·Σ d(1 + e), e normal.
/// ln F is normal with the hat's factor and spread and common to all parts, so given F the leftovers are independent and the joint
/// chance is an integral over one variable. All spreads [ours].
/// </remarks>
public static class Chance
{
    /// <summary>One standard deviation of a printed or measured ratio, as a share.</summary>
    public const double PrintedSpread = 0.02;

    /// <summary>One standard deviation of a guessed ratio, as a share.</summary>
    public const double GuessedSpread = 0.12;

    /// <summary>One standard deviation of a part's own use, as a share.</summary>
    public const double PartSpread = 0.03;

    private const int LeastPoints = 31;
    private const double Reach = 5;

    /// <summary>Where in the scale's band it is looked at, and how much each counts for.</summary>
    internal static readonly (double At, double Weight)[] Gauss =
        [(-Math.Sqrt(0.6), 5 / 18.0), (0, 8 / 18.0), (Math.Sqrt(0.6), 5 / 18.0)];

    /// <summary>The chance, 0 to 1, that every leftover lasts; 1 for no loads.</summary>
    public static double OfEnough(Usage usage, IReadOnlyList<Load> loads)
    {
        ArgumentNullException.ThrowIfNull(usage);
        ArgumentNullException.ThrowIfNull(loads);
        var facts = loads.Select(Facts.Of).ToArray();
        var sum = 0.0;
        foreach (var (factor, weight) in PointsOf(usage))
        {
            var chance = 1.0;
            foreach (var f in facts)
            {
                chance *= f.LastsGiven(factor);
                if (chance < 1e-12)
                {
                    break;
                }
            }

            sum += weight * chance;
        }

        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>The factors looked at, and how much each counts for; the weights add up to 1.</summary>
    internal static (double Factor, double Weight)[] PointsOf(Usage usage)
    {
        if (usage.Spread == 0)
        {
            return [(usage.Factor, 1)];
        }

        // A leftover's own doubts smooth its step over about 0.05 / spread: wide spreads want more points.
        var points = new (double Factor, double Weight)[Math.Max(LeastPoints, (2 * (int)Math.Ceiling(Reach * usage.Spread / 0.05)) + 1)];
        var (step, weights) = (2 * Reach / (points.Length - 1), 0.0);
        for (var i = 0; i < points.Length; i++)
        {
            var z = -Reach + (i * step);
            points[i] = (usage.Factor * Math.Exp(usage.Spread * z), Normal.Density(z) * (i == 0 || i == points.Length - 1 ? 0.5 : 1));
            weights += points[i].Weight;
        }

        for (var i = 0; i < points.Length; i++)
        {
            points[i].Weight /= weights;
        }

        return points;
    }

    /// <summary>One standard deviation of a leftover's ratio, as a share: measured is half the scale step / √3 over the grams weighed, but no less than printed.</summary>
    public static double RatioSpread(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        var half = (double)leftover.Weighing.ScaleStep.Value / 2;
        return leftover.Ratio.Source switch
        {
            RatioSource.Guessed => GuessedSpread,
            RatioSource.Measured => Math.Max(PrintedSpread, half / Math.Sqrt(3) / (double)leftover.Ratio.MassInGrams),
            _ => PrintedSpread,
        };
    }

    // A ball weighed half-way has little doubt besides its scale's: three points would be steps.
    private static readonly (double At, double Weight)[] Fine = [.. Enumerable.Range(0, 12).Select(i => ((((2 * i) + 1) / 12.0) - 1, 1 / 12.0))];

    private sealed record Facts(double Grams, double Band, double MetresPerGram, double RatioSpread, double Bare, double SquareSum, double Ends, MeasuredRate? Rate)
    {
        public static Facts Of(Load load) => new(
            (double)load.Leftover.Weighing.Net.Value,
            (double)load.Leftover.Weighing.BandGrams,
            (double)load.Leftover.Ratio.MetresPerGram,
            Chance.RatioSpread(load.Leftover),
            load.Bare.Sum(),
            load.Bare.Sum(d => d * d),
            load.Ends,
            load.Rate);

        public double LastsGiven(double factor)
        {
            var chance = 0.0;
            foreach (var (at, weight) in Rate is null ? Gauss : Fine)
            {
                // A ball weighed half-way is asked for its own rate, of which the common factor is only the half not seen on the scale.
                var (use, doubt, heavier) = Rate?.Given(factor, RatioSpread, Band, at) ?? (factor, 0, Band * at);
                var holds = Math.Max(0, Grams + heavier) * MetresPerGram;
                var label = Rate is null ? holds * RatioSpread : use * Bare * doubt;
                var over = holds - Ends - (use * Bare);
                var spread = Math.Sqrt((label * label) + (use * use * PartSpread * PartSpread * SquareSum));
                chance += weight * (spread == 0 ? (over >= 0 ? 1 : 0) : Normal.Below(over / spread));
            }

            return chance;
        }
    }
}
