namespace StashMatch.Knitting.Matching.Search;

/// <summary>
/// Colours aside, a leftover may change with a longer one that is not used: as many of the longest as there are items are enough, of those that
/// each class may come from.
/// </summary>
internal static class LongEnough
{
    /// <summary>Those that are enough to cover everything.</summary>
    public static int[] Of(Puzzle puzzle, Capacity capacity) => Of(puzzle, capacity, puzzle.Layout.LongestFirst[^1].Need);

    /// <summary>The leftovers that are enough, the one that bears most first.</summary>
    /// <param name="puzzle">The puzzle.</param>
    /// <param name="capacity">What each may bear.</param>
    /// <param name="least">Leftovers that bear less are left out, millimetres.</param>
    public static int[] Of(Puzzle puzzle, Capacity capacity, long least)
    {
        var items = puzzle.Items.Length;
        if (Array.TrueForAll(puzzle.Classes, c => c.Fit.All))
        {
            return capacity.LongestFirst.Length <= items ? capacity.LongestFirst : capacity.LongestFirst[..items];
        }

        var (taken, counts) = (new List<int>(), new Dictionary<Fit, int>());
        foreach (var c in puzzle.Classes)
        {
            counts[c.Fit] = 0;
        }

        foreach (var bin in capacity.LongestFirst)
        {
            if (capacity.Of[bin] < least)
            {
                break;
            }

            // Of those that may serve the same, only the longest.
            var wanted = false;
            foreach (var fit in counts.Keys)
            {
                if (fit.Bins[bin])
                {
                    wanted |= fit.OnlyBin == bin || counts[fit] < items;
                    counts[fit]++;
                }
            }

            if (wanted)
            {
                taken.Add(bin);
            }
        }

        // What only one leftover may serve lies on it, however little it bears.
        taken.AddRange(puzzle.Classes.Select(c => c.OnlyBin).Where(b => b >= 0).Except(taken).Distinct());
        return [.. taken];
    }
}
