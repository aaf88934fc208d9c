using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>A puzzle with a leftover for each item, -1 for one nothing is there for. Where something is short, a leftover may serve more than it holds.</summary>
/// <param name="Puzzle">The puzzle.</param>
/// <param name="BinOf">The leftover of each item.</param>
/// <param name="Capacity">What each leftover was let bear.</param>
/// <param name="Proven">Whether nothing better exists.</param>
internal sealed record Plan(Puzzle Puzzle, int[] BinOf, Capacity Capacity, bool Proven)
{
    /// <summary>What lies on each leftover, millimetres.</summary>
    public long[] Loads()
    {
        var loads = new long[Puzzle.Bins];
        foreach (var item in Puzzle.Items)
        {
            if (BinOf[item.Index] >= 0)
            {
                loads[BinOf[item.Index]] += item.Need;
            }
        }

        return loads;
    }

    /// <summary>What goes in each item: what lies on one leftover takes from it in turn, the higher band first, then the longer part, as long as there is any.</summary>
    public long[] Given()
    {
        var free = (long[])Puzzle.Held.Clone();
        var given = new long[BinOf.Length];
        foreach (var item in Puzzle.Items.OrderBy(i => i.Band).ThenByDescending(i => i.Need).ThenBy(i => i.Index))
        {
            if (BinOf[item.Index] is >= 0 and var bin)
            {
                given[item.Index] = Math.Min(item.Need, free[bin]);
                free[bin] -= given[item.Index];
            }
        }

        return given;
    }

    /// <summary>The chance that no leftover runs out, where nothing is short.</summary>
    public double ChanceOfEnough()
    {
        Span<Load> loads = new Load[Puzzle.Items.Length];
        var many = 0;
        var at = Loads();
        for (var bin = 0; bin < at.Length; bin++)
        {
            if (at[bin] > 0)
            {
                loads[many++] = new Load(Puzzle.Leftover(bin), Metres.FromMillimetres(at[bin]));
            }
        }

        return Chance.OfEnough(Puzzle.Hat.Usage, loads[..many]);
    }
}
