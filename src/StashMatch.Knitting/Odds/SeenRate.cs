namespace StashMatch.Knitting.Odds;

/// <summary>The rate seen on a ball weighed half-way, and what it says of how far the reading and the label are off.</summary>
/// <remarks>
/// Given what all yarn shares, the rate is the label's error and the ball's own way, as the scale shows them: a ball heavier than it was read
/// used less than was seen. So each weight in the band counts by how well it explains the rate, and then part of what is still apart is the
/// label, which what is ahead shares, and the rest was the ball's own way so far. Summed point by point.
/// </remarks>
internal readonly struct SeenRate
{
    private const int LeastPoints = 12;
    private const int MostPoints = 200;

    private readonly double _rate;
    private readonly double _used;
    private readonly double _band;
    private readonly double _variance;
    private readonly double _ofLabel;
    private readonly double _spread;
    private readonly int _points;

    /// <summary>A rate seen.</summary>
    /// <param name="rate">The rate, against the use that what is asked is worked out with.</param>
    /// <param name="grams">The last reading, yarn alone, grams.</param>
    /// <param name="doubt">What that reading and the label may be off.</param>
    public SeenRate(MeasuredRate rate, double grams, LengthDoubt doubt)
    {
        var label = doubt.Label * doubt.Label;
        (_rate, _used, _band) = (rate.Factor, rate.UsedGrams / grams, doubt.Band);
        _variance = label + (rate.Spread * rate.Spread);
        _ofLabel = label / _variance;
        _spread = Math.Sqrt((label * (1 - _ofLabel)) + (Sureness.OneLeftover * Sureness.OneLeftover));
        _points = Math.Clamp((int)Math.Ceiling(8 * _band / (Math.Sqrt(_variance) * _used)), LeastPoints, MostPoints);
    }

    /// <summary>The chance that the ball lasts.</summary>
    /// <param name="asked">The logarithm of what is asked, as a share of what is read.</param>
    /// <param name="common">What all yarn of the hat shares, as a logarithm.</param>
    public double Lasts(double asked, double common)
    {
        // Nearest to no difference at all that a weight in the band can come.
        var nearest = Math.Max(0, Math.Max(Apart(_band, common), -Apart(-_band, common)));
        var (lasts, likely) = (0.0, 0.0);
        for (var i = 0; i < _points; i++)
        {
            var heavier = _band * ((((2 * i) + 1) / (double)_points) - 1);
            var apart = Apart(heavier, common);
            var weight = Math.Exp(((nearest * nearest) - (apart * apart)) / (2 * _variance));
            likely += weight;
            if (heavier > -1)
            {
                lasts += weight * Normal.Below((Math.Log(1 + heavier) - asked - common - (_ofLabel * apart)) / _spread);
            }
        }

        return likely > 0 ? lasts / likely : 0;
    }

    private double Apart(double heavier, double common) => Math.Log(_rate * Math.Max(0.05, 1 - (heavier / _used))) - common;
}
