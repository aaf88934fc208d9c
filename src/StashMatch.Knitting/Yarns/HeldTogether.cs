using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>Yarns held together: tex adds (ISO 1144), so 1/M = Σ 1/Mi; each strand runs the full length, so the shorter one governs.</summary>
/// <param name="Length">How long they run together.</param>
/// <param name="MetresPer100Grams">Metres to 100 g of them together.</param>
/// <param name="Left">What stays on each, in the order given; a yarn held with itself leaves nothing.</param>
public sealed record HeldTogether(Metres Length, decimal MetresPer100Grams, IReadOnlyList<Metres> Left)
{
    /// <summary>The weight class of them together, by their computed ratio; coarser than any label is the coarsest class.</summary>
    public WeightClass Class => WeightClasses.Guess(new LabelRatio(
        100, MassUnit.Grams, Math.Max(MetresPer100Grams, LabelRatio.LeastMetresPer100G), LengthUnit.Metres, RatioSource.Guessed));

    /// <summary>One ball held double with itself: half its length.</summary>
    public static HeldTogether Doubled(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        return new(
            Metres.FromMillimetres(leftover.Held.Millimetres / 2),
            Ratio([leftover.Ratio.MetresPer100Grams, leftover.Ratio.MetresPer100Grams]),
            [Metres.FromMillimetres(leftover.Held.Millimetres % 2)]);
    }

    /// <summary>Two or more leftovers held together.</summary>
    /// <exception cref="ArgumentException">Fewer than two.</exception>
    public static HeldTogether Of(params IReadOnlyList<Leftover> leftovers)
    {
        ArgumentNullException.ThrowIfNull(leftovers);
        if (leftovers.Count < 2)
        {
            throw new ArgumentException("Two leftovers or more are held together.", nameof(leftovers));
        }

        var shortest = leftovers.Min(l => l.Held);
        return new(shortest, Ratio([.. leftovers.Select(l => l.Ratio.MetresPer100Grams)]), [.. leftovers.Select(l => l.Held - shortest)]);
    }

    /// <summary>Metres to 100 g of yarns held together.</summary>
    /// <param name="metresPer100Grams">One or more, each over 0.</param>
    public static decimal Ratio(IReadOnlyList<decimal> metresPer100Grams)
    {
        ArgumentNullException.ThrowIfNull(metresPer100Grams);
        return 1 / metresPer100Grams.Sum(m => 1 / m);
    }
}
