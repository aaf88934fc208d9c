namespace StashMatch.Knitting.Odds;

/// <summary>The chance that what lies on the scale outlasts what is asked of it, every weight in the scale's band being as likely. Closed form.</summary>
/// <remarks>
/// A weight v lasts with the chance Φ((ln v − c) / s). Its mean over the band is an integral with the primitive
/// v·Φ((ln v − c) / s) − exp(c + s² / 2)·Φ((ln v − c) / s − s). Weights of 0 and less never last.
/// </remarks>
internal readonly struct ScaleBand
{
    // Narrower than this part of s, the closed form would be a difference of nearly equal numbers; three points are then exact to 1e-12.
    private const double Narrow = 0.01;

    private readonly double _spread;
    private readonly double _low;
    private readonly double _high;
    private readonly double _logLow;
    private readonly double _logHigh;
    private readonly bool _narrow;

    /// <summary>The band from 1 − <paramref name="band"/> to 1 + <paramref name="band"/>.</summary>
    /// <param name="band">Half its width, as a share of the weight read, 0 or more.</param>
    /// <param name="spread">s: one standard deviation of all other doubts, over 0.</param>
    public ScaleBand(double band, double spread)
    {
        _spread = spread;
        _narrow = band < Narrow * spread;
        var out3 = _narrow ? band * Math.Sqrt(0.6) : band;
        (_low, _high) = (1 - out3, 1 + out3);
        (_logLow, _logHigh) = (_low > 0 ? Math.Log(_low) : double.NegativeInfinity, Math.Log(_high));
    }

    /// <summary>The mean chance over the band.</summary>
    /// <param name="asked">c: the logarithm of what is asked, as a share of what is read.</param>
    public double Lasts(double asked)
    {
        var (low, high) = ((_logLow - asked) / _spread, (_logHigh - asked) / _spread);
        if (_narrow)
        {
            return ((5 * Normal.Below(low)) + (8 * Normal.Below(-asked / _spread)) + (5 * Normal.Below(high))) / 18;
        }

        var shifted = Math.Exp(asked + (_spread * _spread / 2));
        var sum = (_high * Normal.Below(high)) - (shifted * Normal.Below(high - _spread));
        if (_low > 0)
        {
            sum -= (_low * Normal.Below(low)) - (shifted * Normal.Below(low - _spread));
        }

        return Math.Clamp(sum / (_high - _low), 0, 1);
    }
}
