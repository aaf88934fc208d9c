using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Odds;

/// <summary>The chance that the yarn of a whole hat lasts: that no leftover runs out.</summary>
/// <remarks>
/// Given φ, what all yarn of a hat shares, the leftovers are independent, so the chance is an integral over one variable: trapezoid on
/// z from −5 to 5, each leftover in closed form. It lies between the product of the leftovers' own sureness and the least of them.
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

    // Grams count as shares of the last reading. Weighed half-way, the rate seen tells where in the scale's band the truth is likelier to lie,
    // and how far it is the label that is off.
    private readonly struct Ball
    {
        private readonly double _asked;
        private readonly double _spread;
        private readonly ScaleBand _band;
        private readonly bool _weighed;
        private readonly double _rate;
        private readonly double _ofLabel;
        private readonly double _ofScale;
        private readonly double _width;

        public Ball(Load load)
        {
            var doubt = LengthDoubt.Of(load.Leftover);
            var held = load.Leftover.Ratio.MetresIn(load.Leftover.Weighing.Net.Value);
            _asked = Math.Log((double)(load.Length.Value / held));
            if (load.Rate is not { } rate)
            {
                _spread = Math.Sqrt(Sureness.OwnVariance(doubt.Label));
                _band = new ScaleBand(doubt.Band, _spread);
                return;
            }

            var (label, past, last) = (doubt.Label * doubt.Label, rate.Spread * rate.Spread, doubt.Band * doubt.Band / 3);
            var used = rate.UsedGrams / (double)load.Leftover.Weighing.Net.Value;
            var all = label + past + (last / (used * used));
            var pull = last / used / all;
            _weighed = true;
            _rate = Math.Log(rate.Factor);
            _ofLabel = label / (label + past);
            _spread = Math.Sqrt((label * (1 - _ofLabel)) + (Sureness.OneLeftover * Sureness.OneLeftover));

            // A heavier ball also used less than was seen; to first order that widens the band.
            var wider = 1 + (_ofLabel / used);
            _ofScale = pull * wider;
            _width = Math.Sqrt(3 * Math.Max(0, last - (pull * pull * all))) * wider;
        }

        public double LastsGiven(double common)
        {
            if (double.IsNegativeInfinity(_asked))
            {
                return 1;
            }

            if (!_weighed)
            {
                return _band.Lasts(_asked + common);
            }

            // By how much more this ball seems to take than the others: part is its label, part the reading.
            var apart = _rate - common;
            var centre = Math.Max(0.01, 1 + (_ofScale * apart));
            return new ScaleBand(_width / centre, _spread).Lasts(_asked + common + (_ofLabel * apart) - Math.Log(centre));
        }
    }
}
