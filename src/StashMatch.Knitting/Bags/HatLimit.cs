using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
namespace StashMatch.Knitting.Bags;

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
    public static int Of(IReadOnlyList<HatKind> kinds, IReadOnlyList<long> bears)
    {
        if (kinds.Count == 0)
        {
            return 0;
        }

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
