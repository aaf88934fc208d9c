using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>How many different leftovers are wanted and how many are long enough: what anybody can count on the table.</summary>
internal static class Counts
{
    /// <summary>The count that falls short by most, of those the one that wants most; null where none falls short, or one part alone.</summary>
    public static TooFew? Of(Sheet sheet)
    {
        (int Gap, int Wanted, int There, long Each)? worst = null;
        foreach (var set in Sets(sheet))
        {
            for (var k = 1; k <= set.Count; k++)
            {
                var (each, there) = (sheet.Lots[set[k - 1]].Need, There(sheet, set, sheet.Lots[set[k - 1]].Need));
                if (there < k && (worst is not { } w || (k - there, k).CompareTo((w.Gap, w.Wanted)) > 0))
                {
                    worst = (k - there, k, there, each);
                }
            }
        }

        return worst is { Wanted: > 1 } found ? new TooFew(found.Wanted, found.There, Metres.FromMillimetres(found.Each)) : null;
    }

    /// <summary>Whether a count that was told is so.</summary>
    public static bool Holds(Sheet sheet, TooFew told) => told.There < told.Wanted && told.Wanted > 1
        && Sets(sheet, pairs: true).Any(s => s.Count(i => sheet.Lots[i].Need >= told.Each.Millimetres) >= told.Wanted
            && There(sheet, s, told.Each.Millimetres) == told.There);

    // Lots no two of which may come from one leftover, the longest first.
    private static IEnumerable<List<int>> Sets(Sheet sheet, bool pairs = false)
    {
        List<int> Longest(IEnumerable<int> lots) => [.. lots.OrderByDescending(i => sheet.Lots[i].Need)];
        var all = Enumerable.Range(0, sheet.Lots.Length).ToList();
        var stripes = all.Where(i => sheet.Lots[i].Stripe).ToList();
        if (sheet.Own)
        {
            yield return Longest(stripes);
            foreach (var head in all.Where(i => sheet.Lots[i] is { Head: true, Stripe: false }))
            {
                yield return Longest(stripes.Append(head));
            }
        }
        else if (sheet.Question.Arrangement == Arrangement.InTurn && !sheet.Question.Blend)
        {
            yield return Longest(stripes);
        }

        foreach (var (a, b) in pairs ? sheet.Apart : [])
        {
            yield return Longest([a, b]);
        }
    }

    private static int There(Sheet sheet, List<int> set, long each) =>
        Enumerable.Range(0, sheet.Held.Length).Count(b => sheet.Held[b] >= each && set.Exists(i => sheet.Lots[i].Need >= each && sheet.Fits(i, b, 3)));
}
