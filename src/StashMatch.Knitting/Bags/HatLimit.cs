using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Bags;

/// <summary>What keeps a bag from making one hat more.</summary>
/// <param name="Part">The kind of part that yarn runs out for first.</param>
/// <param name="Each">What such a part, or a longer one, takes at least.</param>
/// <param name="Balls">How many leftovers are long enough for one, reserve and doubts considered, 0 or more.</param>
/// <param name="ByCount">Whether there are too few such leftovers; else they hold too few metres in all.</param>
public sealed record BagLimit(PartKind Part, Metres Each, int Balls, bool ByCount);

/// <summary>How many hats a bag can never exceed, whatever goes where.</summary>
/// <remarks>
/// For every length t that some group of parts needs: a hat has at least k groups of t or more, and a leftover serves at most ⌊what it bears / t⌋ of
/// them; and those groups take at least m metres in all, which only leftovers of t or more can give. Both hold for every t, whatever the
/// colours, and neither falls when a leftover is added.
/// </remarks>
internal static class HatLimit
{
    /// <param name="kinds">The hats that may be knitted.</param>
    /// <param name="bears">What each leftover bears in all, millimetres.</param>
    /// <returns>The most hats, 0 or more, and what keeps them from being more: the longest such part; null where nothing does.</returns>
    public static (int Most, BagLimit? Limit) Of(IReadOnlyList<HatKind> kinds, IReadOnlyList<long> bears)
    {
        if (kinds.Count == 0)
        {
            return (0, null);
        }

        var (most, least, byCount) = (long.MaxValue, 0L, false);
        foreach (var t in kinds.SelectMany(k => k.Needs).Distinct().Where(t => t > 0).OrderDescending())
        {
            var groups = kinds.Min(k => k.Needs.Count(n => n >= t));
            if (groups == 0)
            {
                continue;
            }

            var counted = bears.Sum(b => b / t) / groups;
            var held = bears.Where(b => b >= t).Sum() / kinds.Min(k => k.Needs.Where(n => n >= t).Sum());
            if (Math.Min(counted, held) < most)
            {
                (most, least, byCount) = (Math.Min(counted, held), t, counted <= held);
            }
        }

        var limit = least == 0 ? null : new BagLimit(kinds.First(k => k.Needs.Contains(least)).KindOf(least), Metres.FromMillimetres(least), bears.Count(b => b >= least), byCount);
        return ((int)Math.Min(most, int.MaxValue), limit);
    }
}
