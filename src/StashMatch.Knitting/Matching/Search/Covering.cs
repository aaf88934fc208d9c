namespace StashMatch.Knitting.Matching.Search;

/// <summary>Whether everything goes in at given capacities, colour rule and all: counting first, then a quick fit, then a table, then a search.</summary>
internal sealed class Covering(Puzzle puzzle, CancellationToken cancel)
{
    private const int ArrangeSteps = 5_000;
    private const int QuickSteps = 400;
    private const int SearchSteps = 12_000;
    private Arranger? _arranger;

    /// <summary>A leftover for each item where there is a way; that there is none, or that the steps ran out.</summary>
    public Found Find(Capacity capacity, out int[] binOf)
    {
        binOf = [];
        if (Counting.CannotHold(puzzle, capacity))
        {
            return Found.No;
        }

        var quick = new int[puzzle.Items.Length];
        if (BestFit.Cover(puzzle, capacity, quick))
        {
            binOf = quick;
            return Found.Yes;
        }

        var searched = false;
        foreach (var counted in (ReadOnlySpan<bool>)[false, true])
        {
            if (CoverTable.SizeOf(puzzle, counted) > CoverTable.MostStates)
            {
                break;
            }

            using var table = new CoverTable(puzzle, capacity, counted ? capacity.LongestFirst : LongEnough(capacity), counted, cancel);
            if (!table.CoversAll)
            {
                return Found.No;
            }

            _arranger ??= new Arranger(puzzle);
            if (_arranger.Arrange(table.Slots(), ArrangeSteps, out binOf) == Found.Yes)
            {
                return Found.Yes;
            }

            // A few steps of searching often find what the larger table would, at a fraction of its cost.
            if (!searched)
            {
                searched = true;
                var found = new PositionSearch(puzzle, capacity, QuickSteps).Find(out binOf);
                found = found != Found.Unknown ? found : ByTidying(capacity, out binOf);
                if (found != Found.Unknown)
                {
                    return found;
                }
            }
        }

        return new PositionSearch(puzzle, capacity, SearchSteps).Find(out binOf);
    }

    // Colours aside, a leftover may change with a longer one that is not used: as many of the longest as there are items are enough, of those
    // that each class may come from.
    private int[] LongEnough(Capacity capacity)
    {
        var (items, least) = (puzzle.Items.Length, puzzle.Layout.LongestFirst[^1].Need);
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

    // The tidiest way, whatever it is worth, colour rule and all: a search that counts crowded colours.
    private Found ByTidying(Capacity capacity, out int[] binOf)
    {
        var tidy = new BestWorth(puzzle, capacity.Of, Worth.Tidiness, cancel);
        var certain = tidy.Search(Worth.Tidiness.Least * puzzle.Items.Length);
        binOf = tidy.BinOf ?? [];
        return tidy.BinOf is not null ? Found.Yes : certain ? Found.No : Found.Unknown;
    }
}
