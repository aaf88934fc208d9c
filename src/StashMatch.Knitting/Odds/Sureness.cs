using System.Collections.Concurrent;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Odds;

/// <summary>How surely one leftover lasts by itself, and how much it bears at a rung. All spreads [ours].</summary>
/// <remarks>
/// A leftover holds (g + U)·ρ·exp η: g grams, U uniform over the scale's band, ρ metres to the gram, η normal with the label's spread. A load is
/// the needs on it, factor and ends in; what is really used is load·exp(φ + e): φ normal and common to all yarn of the hat, with the usage's
/// spread and 1.5 % for damp, e normal, one a leftover, 3 %. So one leftover's sureness depends on its load alone.
/// </remarks>
public static class Sureness
{
    /// <summary>One standard deviation of what one leftover takes beside what all take, as a share.</summary>
    public const double OneLeftover = 0.03;

    /// <summary>One standard deviation of damp, which shifts all wool of a hat together, as a share.</summary>
    public const double Damp = 0.015;

    // Shares are whole millionths, so that every machine gets the same.
    private const int Whole = 1_000_000;
    private const int MostKinds = 20_000;
    private const int Unknown = -1;
    private static readonly ConcurrentDictionary<Kind, int[]> Shares = new();

    /// <summary>The chance, 0 to 1, that a leftover by itself lasts for a load.</summary>
    /// <param name="leftover">The leftover.</param>
    /// <param name="load">The needs on it, factor and ends in; no reserve.</param>
    /// <param name="usage">The hat's usage; its factor is in the load already.</param>
    public static double Of(Leftover leftover, Metres load, Usage usage)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        ArgumentNullException.ThrowIfNull(usage);
        return Of(LengthDoubt.Of(leftover), (double)load.Value / (double)leftover.Ratio.MetresIn(leftover.Weighing.Net.Value), usage.Spread);
    }

    /// <summary>The largest load a leftover bears at a rung, rounded down to the millimetre; by the label all it holds.</summary>
    /// <param name="leftover">The leftover.</param>
    /// <param name="usage">The hat's usage.</param>
    /// <param name="rung">What is asked of it.</param>
    public static Metres Capacity(Leftover leftover, Usage usage, Rung rung)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        ArgumentNullException.ThrowIfNull(usage);
        return Metres.FromMillimetres(Capacity(leftover.Held.Millimetres, LengthDoubt.Of(leftover), usage.Spread, rung));
    }

    /// <summary>The same of a leftover made ready before, millimetres.</summary>
    /// <param name="held">What it holds, millimetres.</param>
    /// <param name="doubt">What its length may be off.</param>
    /// <param name="spread">The usage's spread, 0 or more.</param>
    /// <param name="rung">What is asked of it.</param>
    public static long Capacity(long held, LengthDoubt doubt, double spread, Rung rung) =>
        rung == Rung.ByTheLabel ? held : held * ShareMillionths(doubt, spread, rung) / Whole;

    /// <summary>What share of its metres a leftover bears at a rung, in whole millionths, rounded down: the same for all of like band, label and usage.</summary>
    /// <param name="doubt">What its length may be off; its band counts rounded up to a 64th of an octave, so that more grams on the same scale never bear less.</param>
    /// <param name="spread">The usage's spread, 0 or more.</param>
    /// <param name="rung">What is asked of it.</param>
    public static int ShareMillionths(LengthDoubt doubt, double spread, Rung rung)
    {
        if (rung == Rung.ByTheLabel)
        {
            return Whole;
        }

        var kind = new Kind(doubt.BandStep, doubt.Label, spread);
        if (!Shares.TryGetValue(kind, out var shares))
        {
            if (Shares.Count >= MostKinds)
            {
                Shares.Clear();
            }

            shares = new int[Rung.All.Count];
            Array.Fill(shares, Unknown);
            shares = Shares.GetOrAdd(kind, shares);
        }

        // Two may work it out at once; they come to the same.
        ref var share = ref shares[rung.Index];
        return share != Unknown ? share : share = Inverted(kind, rung.Chance);
    }

    /// <summary>The chance that a leftover by itself lasts for a share of what it holds by its label.</summary>
    internal static double Of(LengthDoubt doubt, double share, double spread) =>
        share <= 0 ? 1 : BandOf(doubt, spread).Lasts(Math.Log(share));

    /// <summary>The variance of what all yarn of a hat shares.</summary>
    internal static double CommonVariance(double spread) => (spread * spread) + (Damp * Damp);

    /// <summary>The variance of a leftover's own doubts but its scale's.</summary>
    internal static double OwnVariance(double label) => (label * label) + (OneLeftover * OneLeftover);

    private static ScaleBand BandOf(LengthDoubt doubt, double spread) => new(doubt.Band, Math.Sqrt(CommonVariance(spread) + OwnVariance(doubt.Label)));

    private static int Inverted(Kind kind, double chance)
    {
        var band = BandOf(new LengthDoubt(LengthDoubt.BandAt(kind.BandStep), kind.Label), kind.Spread);
        var (bears, fails) = (0, Whole);
        while (fails - bears > 1)
        {
            var middle = (bears + fails) / 2;
            (bears, fails) = band.Lasts(Math.Log(middle / (double)Whole)) >= chance ? (middle, fails) : (bears, middle);
        }

        return bears;
    }

    private readonly record struct Kind(int BandStep, double Label, double Spread);
}
