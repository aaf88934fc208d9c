using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Hats;

/// <summary>What one weighed swatch or finished hat says of its knitter: metres used against the bare metres.</summary>
/// <param name="Factor">Metres used / (stitches × l), over 0.</param>
/// <param name="MeasureSpread">One standard deviation of how well the factor was measured, as a share: scale and label.</param>
public sealed record Calibration(double Factor, double MeasureSpread)
{
    /// <summary>How much the same knitter's use differs from one piece of knitting to the next, one standard deviation [ours].</summary>
    public const double FromPieceToPiece = 0.032;

    /// <summary>From a weighed, counted swatch.</summary>
    /// <param name="stitches">Stitches in a row, cast-on row not counted apart.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="gauge">The gauge it came out at.</param>
    /// <param name="weighing">What the swatch weighs, on its scale.</param>
    /// <param name="ratio">The yarn's label ratio.</param>
    public static Calibration FromSwatch(int stitches, int rows, Gauge gauge, Weighing weighing, LabelRatio ratio)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stitches, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        return FromUse(stitches * rows * LoopLength.MetresPerStitch(gauge), weighing, ratio);
    }

    /// <summary>From a finished hat's parts: what went in, weighed, against their bare metres.</summary>
    /// <param name="bareMetres">Bare metres of the weighed parts, over 0.</param>
    /// <param name="weighing">What went in.</param>
    /// <param name="ratio">The yarn's label ratio.</param>
    public static Calibration FromUse(double bareMetres, Weighing weighing, LabelRatio ratio)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bareMetres);
        ArgumentNullException.ThrowIfNull(weighing);
        ArgumentNullException.ThrowIfNull(ratio);
        var grams = (double)weighing.Net.Value;
        var scale = (double)weighing.BandGrams / Math.Sqrt(3) / grams;
        var label = Odds.LengthDoubt.LabelOf(ratio, weighing);
        return new Calibration((double)ratio.MetresIn(weighing.Net.Value) / bareMetres, Math.Sqrt((scale * scale) + (label * label)));
    }

    /// <summary>
    /// The usage of a knitter known by these, none or more: each weighs by its precision, beside what is known of knitters at large
    /// (1.10, 12 %). The spread is that of the next hat: how well the knitter is known, and how much one piece differs from the next.
    /// </summary>
    public static Usage Combine(IEnumerable<Calibration> known)
    {
        ArgumentNullException.ThrowIfNull(known);
        var list = known.ToList();
        if (list.Count == 0)
        {
            return Usage.Uncalibrated;
        }

        var prior = 1 / (Usage.Uncalibrated.Spread * Usage.Uncalibrated.Spread);
        var (precision, sum) = (prior, prior * Math.Log(Usage.Uncalibrated.Factor));
        foreach (var one in list)
        {
            var p = 1 / ((one.MeasureSpread * one.MeasureSpread) + (FromPieceToPiece * FromPieceToPiece));
            (precision, sum) = (precision + p, sum + (p * Math.Log(one.Factor)));
        }

        return new Usage(Math.Exp(sum / precision), Math.Sqrt((1 / precision) + (FromPieceToPiece * FromPieceToPiece)), Calibrated: true);
    }
}
