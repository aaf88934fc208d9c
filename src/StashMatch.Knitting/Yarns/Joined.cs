using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>Leftovers of one lot or nearly one colour knitted one after the other, so that one part may take them all.</summary>
public static class Joined
{
    /// <summary>Two tails of 0.15 m where one runs out and the next joins, metres [ours].</summary>
    public const decimal Tails = 0.30m;

    /// <summary>Whether there is more of it than the tails of a join take.</summary>
    public static bool CanJoin(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        return leftover.Held.Value > Tails;
    }

    /// <summary>
    /// Leftovers joined to one: what they hold together less two tails for each join. It is known as well as its least known ratio, its
    /// scales' bands add, and it looks like the longest of them.
    /// </summary>
    /// <param name="id">What they are known by together.</param>
    /// <param name="leftovers">Two or more, each holding more than the tails, in the order they are knitted.</param>
    /// <exception cref="ArgumentException">Fewer than two, one that holds no more than the tails, or over 5,000 g together.</exception>
    public static Leftover AsOne(string id, params IReadOnlyList<Leftover> leftovers)
    {
        ArgumentNullException.ThrowIfNull(leftovers);
        if (leftovers.Count < 2 || !leftovers.All(CanJoin) || leftovers.Sum(l => l.Weighing.Net.Value) > Weighing.MostGrams)
        {
            throw new ArgumentException("Two leftovers or more are joined, each longer than the tails.", nameof(leftovers));
        }

        var longest = leftovers.MaxBy(l => l.Held)!;
        var grams = leftovers.Sum(l => l.Weighing.Net.Value);
        var metres = leftovers.Sum(l => l.Held.Value) - (Tails * (leftovers.Count - 1));
        return longest with
        {
            Id = id,
            Name = string.Join(" then ", leftovers.Select(l => l.Name)),
            Weighing = Weighing.Together(Grams.From(grams), [.. leftovers.Select(l => l.Weighing)]),
            Ratio = new LabelRatio(grams, MassUnit.Grams, metres, LengthUnit.Metres, (RatioSource)leftovers.Max(l => (int)l.Ratio.Source)),
            Class = longest.ClassOrGuess,
            Superwash = false,
            Fibre = FibreBlend.Mix([.. leftovers.Select(l => (l.Fibre, l.Superwash, l.Weighing.Net.Value / grams))]),
            Care = leftovers.All(l => l.Care is null) ? null : leftovers.Select(l => l.Care ?? Care.Unknown).Aggregate(Care.Merge),
        };
    }
}
