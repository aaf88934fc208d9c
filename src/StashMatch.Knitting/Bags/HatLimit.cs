using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Bags;

/// <summary>How many hats a bag can never exceed, whatever goes where.</summary>
/// <remarks>
/// For every length t that some group of parts needs: a hat has at least k groups of t or more, and a leftover serves at most ⌊held / t⌋ of
/// them; and those groups take at least m metres in all, which only leftovers of t or more can give. Both hold for every t, whatever the
/// colours, and neither falls when a leftover is added.
/// </remarks>
internal static class HatLimit
{
    public static int Of(IReadOnlyList<HatKind> kinds, IReadOnlyList<Metres> held, decimal allowancePercent)
    {
        if (kinds.Count == 0)
        {
            return 0;
        }

        var bears = held.Select(h => (long)Math.Floor(h.Millimetres * 100m / (100m + allowancePercent))).ToList();
        var most = long.MaxValue;
        foreach (var t in kinds.SelectMany(k => k.Needs).Distinct().Where(t => t > 0))
        {
            var groups = kinds.Min(k => k.Needs.Count(n => n >= t));
            if (groups == 0)
            {
                continue;
            }

            var metres = kinds.Min(k => k.Needs.Where(n => n >= t).Sum());
            most = Math.Min(most, Math.Min(bears.Sum(b => b / t) / groups, bears.Where(b => b >= t).Sum() / metres));
        }

        return (int)Math.Min(most, int.MaxValue);
    }
}
