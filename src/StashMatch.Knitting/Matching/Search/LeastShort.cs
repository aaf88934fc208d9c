using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>A plan with something short, and by how much.</summary>
internal sealed record ShortPlan(Plan Plan, Metres Metres);

/// <summary>
/// Tier 2: the plan that leaves the fewest metres short. What goes in is the sum over leftovers of the smaller of what it holds and what lies
/// on it.
/// </summary>
internal sealed class LeastShort(Puzzle puzzle, CancellationToken cancel)
{
    /// <summary>The best plan found, and whether it is proven so.</summary>
    public ShortPlan Find()
    {
        cancel.ThrowIfCancellationRequested();
        var held = puzzle.CapacitiesFor(puzzle.Hat.Usage).At(Odds.Rung.ByTheLabel, Keeping.Nothing);
        var binOf = Greedy(held);
        var goesIn = GoesIn(binOf);
        var proven = goesIn == Most(held);
        if (!proven)
        {
            var search = new BestWorth(puzzle, held.Of, Worth.GoesIn, cancel);
            proven = search.Search(goesIn);
            if (search.BinOf is { } better && GoesIn(better) > goesIn)
            {
                (binOf, goesIn) = (better, GoesIn(better));
            }
        }

        return new ShortPlan(new Plan(puzzle, binOf, held, proven), Metres.FromMillimetres(puzzle.Layout.Total - goesIn));
    }

    private long GoesIn(int[] binOf)
    {
        var (sum, loads) = (0L, new Dictionary<int, long>());
        foreach (var item in puzzle.Items)
        {
            if (binOf[item.Index] is >= 0 and var bin)
            {
                loads[bin] = loads.GetValueOrDefault(bin) + item.Need;
            }
        }

        foreach (var (bin, load) in loads)
        {
            sum += Math.Min(load, puzzle.Held[bin]);
        }

        return sum;
    }

    // No plan puts more in: not more than the best leftover for each item, than all there is, nor, where each stripe wants one of its own, than
    // the longest stripes from the longest leftovers.
    private long Most(Capacity held)
    {
        var (each, all) = (0L, puzzle.Layout.Total);
        foreach (var c in puzzle.Classes)
        {
            var longest = 0L;
            foreach (var bin in held.LongestFirst)
            {
                if (c.Fits[bin])
                {
                    longest = held.Of[bin];
                    break;
                }
            }

            each += c.Count * Math.Min(c.Need, longest);
        }

        all = Math.Min(Math.Min(each, all), held.Total);
        return Math.Min(all, puzzle.Layout.Total - Missing(puzzle.OwnLongest, held.Falling));
    }

    private static long Missing(long[] wanted, long[] falling)
    {
        var missing = 0L;
        for (var k = 0; k < wanted.Length; k++)
        {
            missing += Math.Max(0, wanted[k] - (k < falling.Length ? falling[k] : 0));
        }

        return missing;
    }

    // The longest first into the leftover it fits most closely; where it fits none, into the one with most left.
    private int[] Greedy(Capacity held)
    {
        var binOf = new int[puzzle.Items.Length];
        Array.Fill(binOf, -1);
        var bins = LongEnough.Of(puzzle, held, 1);
        var free = Array.ConvertAll(bins, b => held.Of[b]);
        foreach (var item in puzzle.Layout.LongestFirst)
        {
            var best = -1;
            for (var at = 0; at < free.Length; at++)
            {
                if (free[at] <= 0 || !puzzle.Classes[item.Class].Fits[bins[at]])
                {
                    continue;
                }

                var better = best < 0 || (free[at] >= item.Need ? free[best] < item.Need || free[at] < free[best] : free[at] > free[best]);
                best = better && puzzle.Admits(item, bins[at], binOf) ? at : best;
            }

            if (best >= 0)
            {
                binOf[item.Index] = bins[best];
                free[best] -= item.Need;
            }
        }

        return binOf;
    }
}
