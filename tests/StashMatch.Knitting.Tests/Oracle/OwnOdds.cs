using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>
/// The odds written down from their model alone and summed up by brute arithmetic: no closed form, nothing of the program's.
/// Held: (grams + U) x metres to the gram x exp(eta). Used: load x exp(phi + e). U is even over the scale's band, the others normal.
/// </summary>
/// <param name="Label">One standard deviation of the label's logarithm.</param>
/// <param name="Band">How far the grams may be off either way, as a share of them.</param>
/// <param name="Common">One standard deviation of what all yarn of a hat shares: the knitter's spread, and damp.</param>
internal sealed record OwnOdds(double Label, double Band, double Common)
{
    private const double OwnUse = 0.03;
    private const double Damp = 0.015;
    private const int OctaveSteps = 64;
    private static readonly (double At, double Weight)[] Gauss =
    [
        (0, 128.0 / 225),
        (Math.Sqrt(5 - (2 * Math.Sqrt(10.0 / 7))) / 3, (322 + (13 * Math.Sqrt(70))) / 900),
        (-Math.Sqrt(5 - (2 * Math.Sqrt(10.0 / 7))) / 3, (322 + (13 * Math.Sqrt(70))) / 900),
        (Math.Sqrt(5 + (2 * Math.Sqrt(10.0 / 7))) / 3, (322 - (13 * Math.Sqrt(70))) / 900),
        (-Math.Sqrt(5 + (2 * Math.Sqrt(10.0 / 7))) / 3, (322 - (13 * Math.Sqrt(70))) / 900),
    ];

    /// <summary>The odds of one leftover in a hat.</summary>
    public static OwnOdds Of(Leftover leftover, Usage usage)
    {
        var weighing = leftover.Weighing;
        var (step, tared) = ((double)weighing.ScaleStep.Value, weighing.Tare.Value > 0);

        // Half a step, a whole one where something was taken off; a scale of 1 g and coarser half a step more.
        var band = (tared ? step : step / 2) + (step >= 1 ? step / 2 : 0);
        var label = leftover.Ratio.Source switch
        {
            RatioSource.Guessed => 0.12,
            RatioSource.Measured => Math.Max(0.02, step / 2 / Math.Sqrt(3) / (double)leftover.Ratio.MassInGrams),
            _ => 0.02,
        };
        return new OwnOdds(label, band / (double)weighing.Net.Value, Math.Sqrt((usage.Spread * usage.Spread) + (Damp * Damp)));
    }

    /// <summary>How far what it holds is in doubt by itself, as a share.</summary>
    public double Doubt => Math.Sqrt((Label * Label) + (Band * Band / 3));

    /// <summary>The same with the band rounded up to a 64th of an octave, as a capacity takes it.</summary>
    public OwnOdds Rounded() => Band == 0 ? this : this with { Band = Math.Pow(2, Math.Ceiling((OctaveSteps * Math.Log2(Band)) - 1e-9) / OctaveSteps) };

    /// <summary>The chance that a leftover lasts whose load is so large a share of what it holds.</summary>
    public double Lasts(double share) => Lasts(share, Math.Sqrt((Label * Label) + (Common * Common) + (OwnUse * OwnUse)));

    /// <summary>The same where all yarn is used so many standard deviations above the mean.</summary>
    public double LastsGiven(double share, double z) => Lasts(share * Math.Exp(z * Common), Math.Sqrt((Label * Label) + (OwnUse * OwnUse)));

    /// <summary>The largest share of what it holds that lasts with a chance of <paramref name="sure"/>, down to a millionth.</summary>
    public double LargestShare(double sure)
    {
        // A load over all its metres lasts less than half the time, so a rung of 0.60 and more is below that.
        var (low, high) = (0L, 1_000_000L);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Lasts(middle / 1e6) >= sure ? (middle, high) : (low, middle);
        }

        return low / 1e6;
    }

    /// <summary>The chance that all of them last together, each with the share of what it holds that it must give.</summary>
    public static double AllLast(IReadOnlyList<(OwnOdds Odds, double Share)> loads)
    {
        const double Step = 0.05;
        var sum = 0.0;
        for (var i = -140; i <= 140; i++)
        {
            var z = i * Step;
            sum += Step * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI) * loads.Aggregate(1.0, (all, l) => all * l.Odds.LastsGiven(l.Share, z));
        }

        return sum;
    }

    /// <summary>The share of draws in which all of them last.</summary>
    public static double Drawn(IReadOnlyList<(OwnOdds Odds, double Share)> loads, int draws, int seed)
    {
        var random = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var lasted = 0;
        for (var i = 0; i < draws; i++)
        {
            var phi = Normal();
            var all = true;
            foreach (var (odds, share) in loads)
            {
                var held = (1 + (odds.Band * ((2 * random.NextDouble()) - 1))) * Math.Exp(odds.Label * Normal());
                all &= held >= share * Math.Exp((odds.Common * phi) + (OwnUse * Normal()));
            }

            lasted += all ? 1 : 0;
        }

        return (double)lasted / draws;
    }

    // The mean over the band of the chance that ln(held) is over ln(used).
    private double Lasts(double share, double deviation)
    {
        if (share <= 0)
        {
            return 1;
        }

        var at = Math.Log(share);
        if (Band == 0)
        {
            return Below(-at / deviation);
        }

        // Nothing so light that it lies eight deviations below lasts, everything as far above does; between them panel by panel.
        const int Panels = 48;
        var from = Math.Clamp(share * Math.Exp(-8 * deviation), 1 - Band, 1 + Band);
        var to = Math.Clamp(share * Math.Exp(8 * deviation), 1 - Band, 1 + Band);
        var half = (to - from) / Panels / 2;
        var sum = 1 + Band - to;
        for (var i = 0; i < Panels && half > 0; i++)
        {
            foreach (var (x, weight) in Gauss)
            {
                sum += half * weight * Below((Math.Log(from + (half * ((2 * i) + 1 + x))) - at) / deviation);
            }
        }

        return sum / (2 * Band);
    }

    // The normal distribution's share below x, from its Taylor series.
    private static double Below(double x)
    {
        if (Math.Abs(x) > 8)
        {
            return x > 0 ? 1 : 0;
        }

        var (sum, term) = (x, x);
        for (var i = 3; Math.Abs(term) > 1e-18; i += 2)
        {
            sum += term *= x * x / i;
        }

        return 0.5 + (sum * Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI));
    }
}
