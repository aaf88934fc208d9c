namespace StashMatch.Knitting.Matching;

/// <summary>Finds the best plan of one puzzle at one rung: everything covered if it can be, the tidiest then.</summary>
internal sealed class Planner(Puzzle puzzle, CancellationToken cancel)
{
    private const int ArrangeSteps = 5_000;
    private const int QuickSteps = 400;
    private const int SearchSteps = 12_000;
    private const int MostCounts = 24;

    /// <summary>A plan that covers everything with so much to spare on each leftover.</summary>
    /// <param name="rung">0 or more, per cent.</param>
    /// <param name="found">Whether there is none, or the steps ran out.</param>
    public Plan? Feasible(decimal rung, out Found found)
    {
        var capacity = puzzle.CapacityAt(rung);
        foreach (var strands in puzzle.MostStrands == int.MaxValue ? [int.MaxValue] : new[] { int.MaxValue, puzzle.MostStrands })
        {
            if (CoverTable.SizeOf(puzzle, strands) > CoverTable.MostStates)
            {
                break;
            }

            var table = new CoverTable(puzzle, capacity, strands, cancel);
            if (!table.CoversAll)
            {
                found = Found.No;
                return null;
            }

            // A few steps of searching often find what the larger table would, at a fraction of its cost.
            if (Arranged(table.PatternsTo(table.States - 1), out var binOf) == Found.Yes
                || (strands == int.MaxValue && new PositionSearch(puzzle, capacity, QuickSteps).Find(new int[puzzle.Classes.Length], out binOf) == Found.Yes))
            {
                found = Found.Yes;
                return new Plan(puzzle, binOf, rung, true);
            }
        }

        found = new PositionSearch(puzzle, capacity, SearchSteps).Find(new int[puzzle.Classes.Length], out var placed);
        return found == Found.Yes ? new Plan(puzzle, placed, rung, true) : null;
    }

    /// <summary>The tidiest plan that covers the same counts as <paramref name="plan"/> at its rung.</summary>
    public Plan Tidied(Plan plan)
    {
        var capacity = puzzle.CapacityAt(plan.Rung);
        var counts = CountsOf(plan.BinOf);
        if (puzzle.States() > CoverTable.MostStates)
        {
            return plan with { Proven = false };
        }

        Plan? tidiest = null;
        var certain = true;
        bool Accept(Dictionary<int, int[]> patterns)
        {
            var found = Arranged(patterns, out var binOf);
            certain &= found != Found.Unknown;
            tidiest = found == Found.Yes ? new Plan(puzzle, binOf, plan.Rung, true) : null;
            return tidiest is not null;
        }

        var proven = new Tidy(puzzle, capacity, counts, cancel).Search(WorthOf(plan, capacity), Accept);
        return (tidiest ?? plan) with { Proven = plan.Proven && proven && certain };
    }

    /// <summary>The plan that covers the most, band by band, where not everything can be.</summary>
    public Plan MostCovered()
    {
        var capacity = puzzle.Held;
        var strands = CoverTable.SizeOf(puzzle, puzzle.MostStrands) <= CoverTable.MostStates ? puzzle.MostStrands : int.MaxValue;
        if (CoverTable.SizeOf(puzzle, strands) > CoverTable.MostStates)
        {
            return Greedy(capacity);
        }

        var table = new CoverTable(puzzle, capacity, strands, cancel);
        var certain = true;
        var states = Enumerable.Range(0, table.States).Where(table.Reached)
            .Select(s => (State: s, Metres: MetresIn(table, s)))
            .OrderByDescending(s => s.Metres).ThenByDescending(s => s.State)
            .Take(MostCounts);
        foreach (var (state, _) in states)
        {
            if (Arranged(table.PatternsTo(state), out var binOf) == Found.Yes)
            {
                return new Plan(puzzle, binOf, 0, certain);
            }

            var bare = puzzle.Classes.Select((c, i) => c.Count - table.CountIn(state, i)).ToArray();
            var found = new PositionSearch(puzzle, capacity, SearchSteps / 6).Find(bare, out var placed);
            if (found == Found.Yes)
            {
                return new Plan(puzzle, placed, 0, certain);
            }

            certain &= found == Found.No;
        }

        return Greedy(capacity);
    }

    private static long WorthOf(Plan plan, long[] capacity)
    {
        var loads = plan.Loads();
        return loads.Select((load, bin) => Tidy.Worth(capacity[bin], load)).Sum();
    }

    private int[] CountsOf(int[] binOf)
    {
        var counts = new int[puzzle.Classes.Length];
        foreach (var item in puzzle.Items.Where(i => binOf[i.Index] >= 0))
        {
            counts[item.Class]++;
        }

        return counts;
    }

    private Found Arranged(IReadOnlyDictionary<int, int[]> patterns, out int[] binOf) => new Arranger(puzzle, ArrangeSteps).Arrange(patterns, out binOf);

    private (long, long, long, long) MetresIn(CoverTable table, int state)
    {
        var metres = new long[4];
        for (var c = 0; c < puzzle.Classes.Length; c++)
        {
            metres[puzzle.Classes[c].Band] += table.CountIn(state, c) * puzzle.Classes[c].Need;
        }

        return (metres[0], metres[1], metres[2], metres[3]);
    }

    // Longest first into the leftover it fits most closely; said to be the best found, not proven.
    private Plan Greedy(long[] capacity)
    {
        var free = (long[])capacity.Clone();
        var binOf = new int[puzzle.Items.Length];
        Array.Fill(binOf, -1);
        var rules = new Rules(puzzle);
        foreach (var item in puzzle.Items.OrderBy(i => i.Band).ThenByDescending(i => i.Need).ThenBy(i => i.Index))
        {
            var bin = Enumerable.Range(0, free.Length)
                .Where(b => free[b] >= item.Need && rules.Admit(item, b, binOf))
                .OrderBy(b => free[b]).ThenBy(b => b)
                .FirstOrDefault(-1);
            if (bin >= 0)
            {
                binOf[item.Index] = bin;
                free[bin] -= item.Need;
            }
        }

        return new Plan(puzzle, binOf, 0, false);
    }
}
