namespace StashMatch.Knitting.Matching.Search;

/// <summary>Longest first into the leftover it fits most closely, colour rule and all. Quick; proves nothing where it fails.</summary>
internal static class BestFit
{
    /// <summary>A leftover for each item, where every item finds one.</summary>
    public static bool Cover(Puzzle puzzle, Capacity capacity, int[] binOf)
    {
        Array.Fill(binOf, -1);
        Span<(int Bin, long Free)> opened = stackalloc (int, long)[binOf.Length];
        var many = 0;
        foreach (var forced in (ReadOnlySpan<bool>)[true, false])
        {
            foreach (var item in puzzle.Layout.LongestFirst)
            {
                if (puzzle.Classes[item.Class].OnlyBin >= 0 != forced)
                {
                    continue;
                }

                var at = Closest(puzzle, capacity, item, binOf, opened[..many], out var bin);
                if (bin < 0)
                {
                    return false;
                }

                if (at < 0)
                {
                    at = many++;
                    opened[at] = (bin, capacity.Of[bin]);
                }

                opened[at].Free -= item.Need;
                binOf[item.Index] = bin;
            }
        }

        return true;
    }

    // Where the leftover stands among those opened, -1 for a new one.
    private static int Closest(Puzzle puzzle, Capacity capacity, Item item, int[] binOf, ReadOnlySpan<(int Bin, long Free)> opened, out int bin)
    {
        var (best, bestFree) = (-1, long.MaxValue);
        for (var at = 0; at < opened.Length; at++)
        {
            if (opened[at].Free >= item.Need && opened[at].Free < bestFree && puzzle.Admits(item, opened[at].Bin, binOf))
            {
                (best, bestFree) = (at, opened[at].Free);
            }
        }

        var (falling, order) = (capacity.Falling, capacity.LongestFirst);
        for (var k = capacity.CountFrom(item.Need) - 1; k >= 0 && falling[k] < bestFree; k--)
        {
            if (!IsOpened(opened, order[k]) && puzzle.Admits(item, order[k], binOf))
            {
                bin = order[k];
                return -1;
            }
        }

        bin = best < 0 ? -1 : opened[best].Bin;
        return best;
    }

    private static bool IsOpened(ReadOnlySpan<(int Bin, long Free)> opened, int bin)
    {
        foreach (var (other, _) in opened)
        {
            if (other == bin)
            {
                return true;
            }
        }

        return false;
    }
}
