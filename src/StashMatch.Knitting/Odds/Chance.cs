using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Odds;

/// <summary>The chance that the yarn of a whole hat lasts: that no leftover runs out.</summary>
/// <remarks>
/// Given φ, what all yarn of a hat shares, the leftovers are independent, so the chance is an integral over one variable: trapezoid on
/// z from −5 to 5, each leftover in closed form; of a ball weighed half-way a sum over its scale's band. It lies between the product of the leftovers' own sureness and the least of them.
/// What each draws from is said at <see cref="Sureness"/>.
/// </remarks>
public static class Chance
{
    private const int LeastPoints = 41;
    private const int MostOnStack = 64;
    private const double Reach = 5;

    // A leftover's own doubts smooth its step over 0.036 at least: wide spreads want more points.
    private const double Step = 0.04;

    /// <summary>The chance, 0 to 1, that every leftover lasts; 1 for no loads. Right to about 1e-5.</summary>
    /// <param name="usage">The hat's usage; its factor is in the loads already.</param>
    /// <param name="loads">Each leftover once.</param>
    public static double OfEnough(Usage usage, params ReadOnlySpan<Load> loads)
    {
        ArgumentNullException.ThrowIfNull(usage);
        var common = Math.Sqrt(Sureness.CommonVariance(usage.Spread));
        var balls = loads.Length <= MostOnStack ? stackalloc Ball[loads.Length] : new Ball[loads.Length];
        for (var i = 0; i < loads.Length; i++)
        {
            balls[i] = new Ball(loads[i]);
        }

        var points = Math.Max(LeastPoints, (2 * (int)Math.Ceiling(Reach * common / Step)) + 1);
        var (sum, weights) = (0.0, 0.0);
        for (var i = 0; i < points; i++)
        {
            var z = (2 * Reach * i / (points - 1)) - Reach;
            var weight = Math.Exp(-z * z / 2) * (i == 0 || i == points - 1 ? 0.5 : 1);
            weights += weight;
            for (var j = 0; j < balls.Length && weight > 1e-15; j++)
            {
                weight *= balls[j].LastsGiven(common * z);
            }

            sum += weight;
        }

        return Math.Clamp(sum / weights, 0, 1);
    }

    // Grams count as shares of the last reading. Of a ball weighed half-way every weight in the scale's band is as likely as it explains the rate seen.
    private readonly struct Ball
    {
        private readonly double _asked;
        private readonly double _spread;
        private readonly ScaleBand _band;
        private readonly SeenRate _seen;
        private readonly bool _weighed;

        public Ball(Load load)
        {
            var doubt = LengthDoubt.Of(load.Leftover);
            var held = load.Leftover.Ratio.MetresIn(load.Leftover.Weighing.Net.Value);
            _asked = Math.Log((double)(load.Length.Value / held));
            _spread = Math.Sqrt(Sureness.OwnVariance(doubt.Label));
            _band = new ScaleBand(doubt.Band, _spread);
            if (load.Rate is { } rate)
            {
                (_weighed, _seen) = (true, new SeenRate(rate, (double)load.Leftover.Weighing.Net.Value, doubt));
            }
        }

        public double LastsGiven(double common) => double.IsNegativeInfinity(_asked) ? 1
            : _weighed ? _seen.Lasts(_asked, common)
            : _band.Lasts(_asked + common);
    }
}
