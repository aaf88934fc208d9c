using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Odds;

/// <summary>What one leftover's length may be off: its scale and its label. All spreads [ours].</summary>
/// <remarks>Leftovers of like doubt bear a like share of what they hold. <c>default</c> is no doubt at all.</remarks>
/// <param name="Band">How far the scale may be off, either way, as a share of the yarn's grams, 0 or more; every weight in it is as likely.</param>
/// <param name="Label">One standard deviation of the label ratio, as a share, 0 or more.</param>
public readonly record struct LengthDoubt(double Band, double Label)
{
    /// <summary>One standard deviation of a printed ratio, and the least of a measured one, as a share.</summary>
    public const double PrintedLabel = 0.02;

    /// <summary>One standard deviation of a guessed ratio, as a share.</summary>
    public const double GuessedLabel = 0.12;

    /// <summary>From here on a length is in doubt and more is asked of it, as a share.</summary>
    public const double Large = 0.05;

    // Bands are told apart in steps of a 64th of an octave.
    private const int StepsOfAnOctave = 64;

    /// <summary>The doubt about a leftover's length.</summary>
    public static LengthDoubt Of(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        return new((double)(leftover.Weighing.ChanceBandGrams / leftover.Weighing.Net.Value), LabelOf(leftover.Ratio, leftover.Weighing));
    }

    /// <summary>One standard deviation of a label ratio, as a share: measured, half the scale step / √3 over the grams weighed, but no less than printed.</summary>
    /// <param name="ratio">The ratio.</param>
    /// <param name="weighing">A reading of the scale its length was weighed on.</param>
    public static double LabelOf(LabelRatio ratio, Weighing weighing)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        ArgumentNullException.ThrowIfNull(weighing);
        return ratio.Source switch
        {
            RatioSource.Guessed => GuessedLabel,
            RatioSource.Measured => Math.Max(PrintedLabel, (double)weighing.ScaleStep.Value / 2 / Math.Sqrt(3) / (double)ratio.MassInGrams),
            _ => PrintedLabel,
        };
    }

    /// <summary>One standard deviation of both together, as a share: root of the squares, the band's being its half width / √3.</summary>
    public double Spread => Math.Sqrt((Label * Label) + (Band * Band / 3));

    /// <summary>Whether the length is in doubt: both together over 5 %.</summary>
    public bool IsLarge => Spread > Large;

    /// <summary>Whether what a leftover bears is looked up under the same step: its band rounded up to a 64th of an octave. <see cref="int.MinValue"/> is no band.</summary>
    // A hair less, so that a band that is a whole step stays one whatever the logarithm's last digit.
    internal int BandStep => Band <= 0 ? int.MinValue : (int)Math.Ceiling((StepsOfAnOctave * Math.Log2(Band)) - 1e-9);

    /// <summary>The widest band of a step.</summary>
    internal static double BandAt(int step) => step == int.MinValue ? 0 : Math.Pow(2, step / (double)StepsOfAnOctave);
}
