using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Bags;

/// <summary>One hat of a whole bag.</summary>
/// <param name="Size">The size's letter or name.</param>
/// <param name="Stripes">How many stripes.</param>
/// <param name="Arrangement">How the leftovers are spread.</param>
/// <param name="Parts">Its parts, each with what goes in.</param>
public sealed record BagHat(string Size, int Stripes, Arrangement Arrangement, IReadOnlyList<PartAnswer> Parts);

/// <summary>How many hats a whole bag makes.</summary>
/// <param name="AtLeast">So many are laid out one by one in <paramref name="Hats"/>.</param>
/// <param name="AtMost">More can never be made of it.</param>
/// <param name="Hats">The hats; together they take no more than each leftover bears.</param>
public sealed record WholeBagAnswer(int AtLeast, int AtMost, IReadOnlyList<BagHat> Hats)
{
    /// <summary>What keeps <see cref="AtMost"/> from being more; null where nothing can be knitted at all.</summary>
    public BagLimit? Limit { get; init; }
}

/// <summary>How many hats, and which sizes, from the whole bag?</summary>
/// <remarks>
/// Each hat is a yes: with the reserve, and all that lies on a leftover, of every hat, as sure as is asked of one. At least: laid out several ways, in one go and one by one,
/// the most hats kept; found, not proven, so another leftover may in rare cases lower it. At most: <see cref="HatLimit"/>; another leftover
/// never lowers it.
/// </remarks>
public static class WholeBag
{
    // A large bag is dealt into hands of about so many leftovers, like with like, and what stays of each hand is laid together at the end.
    private const int Hand = 120;
    private const int LastHand = 240;
    private const int MostFirsts = 3;

    /// <summary>Works it out.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="sizes">The sizes that may be knitted.</param>
    /// <param name="leftovers">The bag; ids are unique, 0 to 10,000 of them.</param>
    /// <param name="allowancePercent">0 to 100.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">Two leftovers share an id.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static WholeBagAnswer Of(
        Hat hat, IReadOnlyList<string> sizes, IReadOnlyList<Leftover> leftovers, decimal allowancePercent, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(sizes);
        ArgumentNullException.ThrowIfNull(leftovers);
        if (leftovers.DistinctBy(l => l.Id, StringComparer.Ordinal).Count() != leftovers.Count)
        {
            throw new ArgumentException("Two leftovers share an id.", nameof(leftovers));
        }

        var kinds = HatKind.Of(hat, sizes, allowancePercent);
        var bag = leftovers.Where(l => l.ClassOrGuess == hat.WeightClass && l.Held.Millimetres > 0)
            .OrderByDescending(l => l.Held).ThenBy(l => l.Id, StringComparer.Ordinal).ToList();
        var (most, limit) = kinds.Count == 0 ? (0, null) : HatLimit.Of(kinds, HatLayer.Bears(kinds[0], bag));
        List<BagHat> best = [];

        // One by one, then each of a few kinds in one go first: those that take least, and those whose longest part is shortest.
        var firsts = kinds.Where(k => k.Question.Arrangement == Arrangement.AsItFalls).ToList();
        foreach (var first in firsts.Take(MostFirsts).Concat(firsts.OrderBy(k => k.Longest).Take(MostFirsts)).Distinct().Prepend(null))
        {
            if (best.Count < most && Lay(kinds, bag, first, most, cancel) is var hats && hats.Count > best.Count)
            {
                best = hats;
            }
        }

        return new WholeBagAnswer(best.Count, most, best) { Limit = limit };
    }

    private static List<BagHat> Lay(IReadOnlyList<HatKind> kinds, List<Leftover> bag, HatKind? first, int most, CancellationToken cancel)
    {
        var (hats, layer) = (new List<BagHat>(), new HatLayer(kinds, cancel));
        var hands = (bag.Count + Hand - 1) / Hand;
        if (hands <= 1)
        {
            layer.Lay(bag, first, hats, most);
            return hats;
        }

        var over = new List<Leftover>();
        for (var h = 0; h < hands; h++)
        {
            over.AddRange(layer.Lay([.. bag.Where((_, i) => i % hands == h)], first, hats, most));
        }

        layer.Lay([.. over.OrderByDescending(l => l.Held).ThenBy(l => l.Id, StringComparer.Ordinal).Take(LastHand)], first, hats, most);
        return hats;
    }
}
