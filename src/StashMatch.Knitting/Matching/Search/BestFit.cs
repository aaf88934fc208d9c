namespace StashMatch.Knitting.Matching.Search;

/// <summary>Longest first into the leftover it fits most closely, colour rule and all. Quick; proves nothing where it fails.</summary>
internal sealed class BestFit(Puzzle puzzle)
{
    private readonly List<int> _opened = [];
    private readonly Dictionary<int, long> _free = [];
    private int[] _binOf = [];

    /// <summary>A leftover for each item, or -1; true where every item has one.</summary>
    /// <param name="capacity">What each leftover may bear, longest first.</param>
    /// <param name="byBand">Band by band, for a plan that cannot cover everything; else the longest first.</param>
    /// <param name="binOf">The leftover of each item, -1 for none.</param>
    public bool Cover(long[] capacity, bool byBand, out int[] binOf)
    {
        binOf = _binOf = new int[puzzle.Items.Length];
        Array.Fill(_binOf, -1);
        var order = new int[_binOf.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(order, (a, b) => Compare(puzzle.Items[a], puzzle.Items[b], byBand));
        var all = true;
        foreach (var i in order)
        {
            var item = puzzle.Items[i];
            var bin = Closest(item, capacity);
            if (bin >= 0)
            {
                if (!_free.TryGetValue(bin, out var free))
                {
                    _opened.Add(bin);
                    free = capacity[bin];
                }

                _free[bin] = free - item.Need;
                _binOf[i] = bin;
            }
            else if (byBand)
            {
                all = false;
            }
            else
            {
                return false;
            }
        }

        return all;
    }

    private int Compare(Item a, Item b, bool byBand)
    {
        var (forcedA, forcedB) = (puzzle.Classes[a.Class].OnlyBin < 0, puzzle.Classes[b.Class].OnlyBin < 0);
        return byBand && a.Band != b.Band ? a.Band.CompareTo(b.Band)
            : forcedA != forcedB ? forcedA.CompareTo(forcedB)
            : a.Need != b.Need ? b.Need.CompareTo(a.Need)
            : a.Index.CompareTo(b.Index);
    }

    private int Closest(Item item, long[] capacity)
    {
        var (best, bestFree) = (-1, long.MaxValue);
        foreach (var bin in _opened)
        {
            var free = _free[bin];
            if (free >= item.Need && free < bestFree && Admits(item, bin))
            {
                (best, bestFree) = (bin, free);
            }
        }

        for (var bin = LastThatHolds(capacity, item.Need); bin >= 0 && capacity[bin] < bestFree; bin--)
        {
            if (!_free.ContainsKey(bin) && Admits(item, bin))
            {
                return bin;
            }
        }

        return best;
    }

    private static int LastThatHolds(long[] capacity, long need)
    {
        var (low, high) = (0, capacity.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = capacity[middle] >= need ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }

    private bool Admits(Item item, int bin) => puzzle.Admits(item, bin, _binOf);
}
