using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Hats;

/// <summary>Whether a yarn and a gauge belong together: the tightness factor √tex / l, l in cm, is 8 to 15 in hand knitting [ours].</summary>
public static class Tightness
{
    /// <summary>The loosest usual factor.</summary>
    public const double Least = 8;

    /// <summary>The tightest usual factor.</summary>
    public const double Most = 15;

    /// <summary>The factor of a yarn at a gauge.</summary>
    public static double Factor(LabelRatio ratio, Gauge gauge)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        return Math.Sqrt((double)ratio.Tex) / (LoopLength.MetresPerStitch(gauge) * 100);
    }

    /// <summary>Whether gauge or label may have been mistyped.</summary>
    public static bool IsOdd(LabelRatio ratio, Gauge gauge) => Factor(ratio, gauge) is < Least or > Most;

    /// <summary>The rows to 10 cm usual for a yarn where the row gauge is missing: l is about √tex / 11.1 [ours, fitted to hand-knit gauges].</summary>
    /// <returns>Rows to 10 cm, to the nearest whole, within 4 to 80.</returns>
    public static decimal UsualRows(LabelRatio ratio, decimal stitchesPer10Cm)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        var loop = Math.Sqrt((double)ratio.Tex) / 11.1;
        var rowsPerCm = LoopLength.WetRelaxed / (loop * loop * (double)stitchesPer10Cm / 10);
        return Math.Clamp(Math.Round((decimal)rowsPerCm * 10, MidpointRounding.AwayFromZero), Gauge.Least, Gauge.Most);
    }
}
