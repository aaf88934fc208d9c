namespace StashMatch.Knitting.Odds;

/// <summary>The chance that what lies on the scale outlasts what is asked of it, every weight in the scale's band being as likely. Closed form.</summary>
/// <remarks>
/// A weight v lasts with the chance Φ((ln v − c) / s). Its mean over the band is an integral with the primitive
/// v·Φ((ln v − c) / s) − exp(c + s² / 2)·Φ((ln v − c) / s − s). Weights of 0 and less never last.
/// </remarks>
internal static class ScaleBand
{
    // Narrower than this part of s, the closed form would be a difference of nearly equal numbers; three points are then exact to 1e-12.
    private const double Narrow = 0.01;

    /// <summary>The mean chance over the weights from 1 − band to 1 + band.</summary>
    /// <param name="band">Half the band's width, as a share of the weight read, 0 or more.</param>
    /// <param name="asked">c: the logarithm of what is asked, as a share of what is read.</param>
    /// <param name="spread">s: one standard deviation of all other doubts, over 0.</param>
    public static double Lasts(double band, double asked, double spread)
    {
        if (band < Narrow * spread)
        {
            var out3 = band * Math.Sqrt(0.6);
            return ((5 * Normal.Below((Math.Log(1 - out3) - asked) / spread)) + (8 * Normal.Below(-asked / spread))
                + (5 * Normal.Below((Math.Log(1 + out3) - asked) / spread))) / 18;
        }

        var shifted = Math.Exp(asked + (spread * spread / 2));
        return Math.Clamp((Primitive(1 + band, asked, spread, shifted) - Primitive(1 - band, asked, spread, shifted)) / (2 * band), 0, 1);
    }

    private static double Primitive(double weight, double asked, double spread, double shifted)
    {
        if (weight <= 0)
        {
            return 0;
        }

        var a = (Math.Log(weight) - asked) / spread;
        return (weight * Normal.Below(a)) - (shifted * Normal.Below(a - spread));
    }
}
