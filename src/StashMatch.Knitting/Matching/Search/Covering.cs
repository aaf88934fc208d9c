namespace StashMatch.Knitting.Matching.Search;

/// <summary>Whether everything goes in at given capacities, colour rule and all: counting first, then a quick fit, then a table, then a search.</summary>
internal sealed class Covering(Puzzle puzzle, CancellationToken cancel)
{
    private const int ArrangeSteps = 5_000;
    private const int QuickSteps = 400;
    private const int SearchSteps = 60_000;
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

            using var table = new CoverTable(puzzle, capacity, counted ? capacity.LongestFirst : LongEnough.Of(puzzle, capacity), counted, cancel);
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

    // The tidiest way, whatever it is worth, colour rule and all: a search that counts crowded colours.
    private Found ByTidying(Capacity capacity, out int[] binOf)
    {
        var tidy = new BestWorth(puzzle, capacity.Of, Worth.Tidiness, cancel);
        var certain = tidy.Search(Worth.Tidiness.Least * puzzle.Items.Length);
        binOf = tidy.BinOf ?? [];
        return tidy.BinOf is not null ? Found.Yes : certain ? Found.No : Found.Unknown;
    }
}
