using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;

namespace StashMatch.Knitting.Bags;

/// <summary>Rows for stripes whose leftovers stand in a settled order: a table over the stripe and where it begins. Best for that order.</summary>
internal static class OrderedDepths
{
    /// <summary>Rows of each stripe and the worth of what stays; null where they do not fill the rounds.</summary>
    /// <param name="rounds">The rounds to fill.</param>
    /// <param name="leftovers">What each leftover holds and may give, millimetres, in the order of the stripes.</param>
    /// <param name="least">Fewest rows of a stripe.</param>
    /// <param name="most">Most rows of a stripe.</param>
    public static (int[] Rows, Int128 Worth)? Find(StripeRounds rounds, IReadOnlyList<(long Held, long Bears)> leftovers, int least, int most)
    {
        var stripes = rounds.Stripes;
        var width = (rounds.Rounds + 1) * 2;
        var best = new Int128[stripes + 1][];
        var taken = new (int Rows, int From)[stripes + 1][];
        for (var i = 0; i <= stripes; i++)
        {
            (best[i], taken[i]) = (new Int128[width], new (int, int)[width]);
            Array.Fill(best[i], DepthWorth.None);
        }

        // A state is where the next stripe begins and whether a braid lies before it.
        best[0][(rounds.First * 2) + (rounds.First > 0 ? 1 : 0)] = 0;
        for (var i = 0; i < stripes; i++)
        {
            for (var state = 0; state < width; state++)
            {
                if (best[i][state] == DepthWorth.None)
                {
                    continue;
                }

                var (at, afterBraid) = (state / 2, state % 2 == 1);
                var (from, step) = rounds.Allowed(i + 1, afterBraid, least);
                for (var rows = from; rows <= most && at + rows <= rounds.Rounds; rows += step)
                {
                    var braid = i < stripes - 1 && rounds.BraidAt(at + rows);
                    var need = rounds.Need(i + 1, at, rows, afterBraid, braid);
                    var end = at + rows + (braid ? Hats.BraidRows.Rows : 0);
                    if (need > leftovers[i].Bears || end > rounds.Rounds || (i < stripes - 1 && !rounds.MayEnd(at + rows)))
                    {
                        // Past the last braid a stripe may take less again.
                        continue;
                    }

                    var (to, worth) = ((end * 2) + (braid ? 1 : 0), best[i][state] + DepthWorth.Of(leftovers[i].Held, leftovers[i].Bears, need, rows));
                    if (worth > best[i + 1][to])
                    {
                        (best[i + 1][to], taken[i + 1][to]) = (worth, (rows, state));
                    }
                }
            }
        }

        var last = rounds.Rounds * 2;
        if (best[stripes][last] == DepthWorth.None)
        {
            return null;
        }

        var (found, whole) = (new int[stripes], best[stripes][last]);
        for (var i = stripes; i > 0; i--)
        {
            (found[i - 1], last) = taken[i][last];
        }

        return (found, whole);
    }
}
