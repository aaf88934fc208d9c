namespace StashMatch.Knitting.Matching.Search;

/// <summary>Finds the best plan of one puzzle at one rung: everything covered if it can be, the tidiest then.</summary>
internal sealed class Planner(Puzzle puzzle, CancellationToken cancel)
{
    private const int ArrangeSteps = 5_000;
    private const int QuickSteps = 400;
    private const int SearchSteps = 12_000;
    private const int MostCounts = 250;
    private const int MostSearches = 10;
    private Arranger? _arranger;

    /// <summary>A plan that covers everything with so much to spare on each leftover.</summary>
    /// <param name="rung">0 or more, per cent.</param>
    /// <param name="found">Whether there is none, or the steps ran out.</param>
    public Plan? Feasible(decimal rung, out Found found)
    {
        var capacity = puzzle.CapacityAt(rung);
        found = Found.No;
        if (!MayHold(capacity))
        {
            return null;
        }

        found = Found.Yes;
        if (new BestFit(puzzle).Cover(capacity, byBand: false, out var binOf))
        {
            return new Plan(puzzle, binOf, rung, true);
        }

        var searched = false;
        var counts = Array.ConvertAll(puzzle.Classes, c => c.Count);
        foreach (var counted in new[] { false, true })
        {
            if (CoverTable.SizeOf(puzzle, counted, setAside: true) > CoverTable.MostStates)
            {
                break;
            }

            using var table = new CoverTable(puzzle, capacity, counted, setAside: true, cancel);
            if (!table.CoversAll)
            {
                found = Found.No;
                return null;
            }

            if (Arranged(table.SlotsTo(table.States - 1), out binOf) == Found.Yes)
            {
                return new Plan(puzzle, binOf, rung, true);
            }

            // A few steps of searching often find what the larger table would, at a fraction of its cost.
            found = searched ? Found.Unknown : new PositionSearch(puzzle, capacity, QuickSteps).Find(new int[puzzle.Classes.Length], out binOf);
            found = searched || found != Found.Unknown ? found : ByTidying(capacity, counts, out binOf);
            if (found != Found.Unknown)
            {
                return found == Found.Yes ? new Plan(puzzle, binOf, rung, true) : null;
            }

            searched = true;
        }

        found = new PositionSearch(puzzle, capacity, SearchSteps).Find(new int[puzzle.Classes.Length], out var placed);
        return found == Found.Yes ? new Plan(puzzle, placed, rung, true) : null;
    }

    /// <summary>The tidiest plan that covers the same counts as <paramref name="plan"/> at its rung.</summary>
    public Plan Tidied(Plan plan)
    {
        var capacity = puzzle.CapacityAt(plan.Rung);
        var tidy = new Tidy(puzzle, capacity, CountsOf(plan.BinOf), cancel);
        var proven = tidy.Search(WorthOf(plan, capacity));
        var binOf = tidy.BinOf ?? plan.BinOf;
        return plan with { BinOf = proven ? binOf : new Rearranger(puzzle, capacity, binOf).Tidier(), Proven = plan.Proven && proven };
    }

    /// <summary>The plan that covers the most, band by band, where not everything can be, or could not be found to be.</summary>
    public Plan MostCovered() => Filled(Most());

    // What still fits whole somewhere goes there: longest first, into the longest remainder, as answers share out what is short.
    private Plan Filled(Plan plan)
    {
        var (free, loads) = ((long[])puzzle.Held.Clone(), plan.Loads());
        for (var bin = 0; bin < free.Length; bin++)
        {
            free[bin] -= loads[bin];
        }

        foreach (var item in puzzle.Items.Where(i => plan.BinOf[i.Index] < 0).OrderByDescending(i => i.Need).ThenBy(i => i.Index).ToList())
        {
            var longest = -1;
            for (var bin = 0; bin < free.Length; bin++)
            {
                longest = free[bin] >= item.Need && (longest < 0 || free[bin] > free[longest]) && puzzle.Admits(item, bin, plan.BinOf) ? bin : longest;
            }

            if (longest >= 0)
            {
                plan.BinOf[item.Index] = longest;
                free[longest] -= item.Need;
            }
        }

        return plan;
    }

    private Plan Most()
    {
        var capacity = puzzle.Held;
        var counted = CoverTable.SizeOf(puzzle, counted: true, setAside: false) <= CoverTable.MostStates;
        if (CoverTable.SizeOf(puzzle, counted, setAside: false) > CoverTable.MostStates)
        {
            return Greedy(capacity);
        }

        using var table = new CoverTable(puzzle, capacity, counted, setAside: false, cancel);
        var (certain, searches) = (true, 0);
        foreach (var state in MostMetres(table))
        {
            if (Arranged(table.SlotsTo(state), out var binOf) == Found.Yes)
            {
                return new Plan(puzzle, binOf, 0, certain);
            }

            var bare = puzzle.Classes.Select((c, i) => c.Count - table.CountIn(state, i)).ToArray();
            var found = new PositionSearch(puzzle, capacity, QuickSteps).Find(bare, out var placed);
            if (found == Found.Unknown && searches++ < MostSearches)
            {
                found = ByTidying(capacity, [.. puzzle.Classes.Select((c, i) => c.Count - bare[i])], out placed);
            }

            if (found == Found.Yes)
            {
                return new Plan(puzzle, placed, 0, certain);
            }

            certain &= found == Found.No;
        }

        return Greedy(capacity);
    }

    /// <summary>The plan with its stripes in order of colour, as good in all else.</summary>
    public Plan InOrder(Plan plan, ColourOrder order) =>
        order == ColourOrder.Any ? plan : plan with { BinOf = new Rearranger(puzzle, puzzle.CapacityAt(plan.Rung), plan.BinOf).InOrder(order) };

    // The tidiest way to cover such counts, whatever it is worth, colour rule and all: a search that counts crowded colours.
    private Found ByTidying(long[] capacity, int[] counts, out int[] binOf)
    {
        var tidy = new Tidy(puzzle, capacity, counts, cancel);
        var certain = tidy.Search(Tidy.Least * puzzle.Items.Length);
        binOf = tidy.BinOf ?? [];
        return tidy.BinOf is not null ? Found.Yes : certain ? Found.No : Found.Unknown;
    }

    internal static long WorthOf(Plan plan, long[] capacity)
    {
        var (loads, worth) = (plan.Loads(), 0L);
        for (var bin = 0; bin < loads.Length; bin++)
        {
            worth += Tidy.Worth(capacity[bin], loads[bin]);
        }

        return worth;
    }

    // Enough metres in all, and for each class enough leftovers that could hold one.
    private bool MayHold(long[] capacity)
    {
        var needed = 0L;
        foreach (var item in puzzle.Items)
        {
            needed += item.Need;
        }

        foreach (var c in puzzle.Classes)
        {
            var room = 0L;
            for (var bin = 0; bin < capacity.Length && capacity[bin] >= c.Need && room < c.Count; bin++)
            {
                room += c.Fits[bin] ? (c.Role == Role.Stripe && puzzle.OwnColours ? 1 : capacity[bin] / c.Need) : 0;
            }

            if (room < c.Count)
            {
                return false;
            }
        }

        var held = 0L;
        for (var bin = 0; bin < capacity.Length && held < needed; bin++)
        {
            held += capacity[bin];
        }

        return held >= needed;
    }

    private int[] CountsOf(int[] binOf)
    {
        var counts = new int[puzzle.Classes.Length];
        foreach (var item in puzzle.Items)
        {
            counts[item.Class] += binOf[item.Index] >= 0 ? 1 : 0;
        }

        return counts;
    }

    private Found Arranged(List<Slot> slots, out int[] binOf) => (_arranger ??= new Arranger(puzzle)).Arrange(slots, ArrangeSteps, out binOf);

    // The reached states that cover the most metres band by band, best first; only so many.
    private List<int> MostMetres(CoverTable table)
    {
        var best = new List<((long, long, long, long) Metres, int State)>(MostCounts + 1);
        for (var state = table.States - 1; state >= 0; state--)
        {
            if (!table.Reached(state))
            {
                continue;
            }

            var metres = MetresIn(table, state);
            if (best.Count == MostCounts && metres.CompareTo(best[^1].Metres) <= 0)
            {
                continue;
            }

            var at = best.FindIndex(b => metres.CompareTo(b.Metres) > 0);
            best.Insert(at < 0 ? best.Count : at, (metres, state));
            if (best.Count > MostCounts)
            {
                best.RemoveAt(MostCounts);
            }
        }

        return best.ConvertAll(b => b.State);
    }

    private (long, long, long, long) MetresIn(CoverTable table, int state)
    {
        Span<long> metres = stackalloc long[4];
        for (var c = 0; c < puzzle.Classes.Length; c++)
        {
            metres[puzzle.Classes[c].Band] += table.CountIn(state, c) * puzzle.Classes[c].Need;
        }

        return (metres[0], metres[1], metres[2], metres[3]);
    }

    // Band by band, longest first, into the leftover it fits most closely; said to be the best found, not proven.
    private Plan Greedy(long[] capacity)
    {
        new BestFit(puzzle).Cover(capacity, byBand: true, out var binOf);
        return new Plan(puzzle, binOf, 0, false);
    }
}
