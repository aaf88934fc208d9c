using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

/// <summary>Whether a supply covers a demand with so much to spare: by simple bounds and a quick fit where they tell, by the matcher's exact search where they do not.</summary>
internal sealed class KitFit(Demand demand, Supply supply, CancellationToken cancel)
{
    /// <summary>A skein for each group, or null; whether there is none or the steps ran out.</summary>
    /// <param name="rung">0 or more, per cent.</param>
    /// <param name="brimWidth">The widest brim set let in, 0 to 3.</param>
    /// <param name="found">What the search came to.</param>
    public int[]? Cover(decimal rung, int brimWidth, out Found found)
    {
        found = Found.No;
        var capacity = supply.CapacityAt(rung);
        if (CannotBe(capacity, brimWidth))
        {
            return null;
        }

        if (Quick(capacity, brimWidth) is { } quick)
        {
            found = Found.Yes;
            return quick;
        }

        var set = Array.Exists(demand.HasBrim, b => b) ? BrimSet.Widening[brimWidth] : null;
        return new Planner(Puzzle.Of(demand.Ask(supply.Bins, 0), demand.Hat, set), cancel).Feasible(rung, out found) is { } plan ? BinOf(plan) : null;
    }

    /// <summary>The matcher's plan in this supply's order.</summary>
    public int[] BinOf(Plan plan)
    {
        var binOf = new int[demand.Need.Length];
        foreach (var item in plan.Puzzle.Items)
        {
            binOf[item.Group] = supply.At(plan.Puzzle.Leftover(plan.BinOf[item.Index]).Id);
        }

        return binOf;
    }

    /// <summary>A skein for as many groups as a quick fit finds, band by band; -1 for the others.</summary>
    public int[] Most() => Greedy(supply.Held, 3, bandByBand: true);

    /// <summary>The chance that nothing runs out.</summary>
    public double ChanceOf(int[] binOf)
    {
        var loads = Enumerable.Range(0, binOf.Length).GroupBy(i => binOf[i]).OrderBy(g => g.Key)
            .Select(g => new Load(supply.Bins[g.Key], Metres.FromMillimetres(g.Sum(i => demand.Need[i]))));
        return Chance.OfEnough(demand.Hat.Usage, [.. loads]);
    }

    /// <summary>Puts each uncovered group, longest first, on the longest free remainder every rule lets it have; returns by how much each is short.</summary>
    public long[] ShortOf(int[] binOf)
    {
        var shorts = new long[binOf.Length];
        var free = (long[])supply.Held.Clone();
        for (var i = 0; i < binOf.Length; i++)
        {
            if (binOf[i] >= 0)
            {
                free[binOf[i]] -= demand.Need[i];
            }
        }

        foreach (var i in demand.LongestFirst.Where(i => binOf[i] < 0).ToList())
        {
            shorts[i] = demand.Need[i];
            var longest = -1;
            for (var bin = 0; bin < free.Length; bin++)
            {
                if (free[bin] > 0 && (longest < 0 || free[bin] > free[longest]) && Admits(i, bin, binOf))
                {
                    longest = bin;
                }
            }

            if (longest >= 0)
            {
                binOf[i] = longest;
                shorts[i] = Math.Max(0, demand.Need[i] - free[longest]);
                free[longest] -= demand.Need[i] - shorts[i];
            }
        }

        return shorts;
    }

    // Too little in all, no skein long enough for a group, or too few for the stripes that want one each.
    private bool CannotBe(long[] capacity, int brimWidth)
    {
        if (capacity.Length == 0 || capacity.Sum() < demand.Whole)
        {
            return true;
        }

        for (var i = 0; i < demand.Need.Length; i++)
        {
            var need = demand.Need[i];
            var any = false;
            for (var bin = 0; bin < capacity.Length && !any; bin++)
            {
                any = capacity[bin] >= need && (!demand.HasBrim[i] || supply.BrimWidth[bin] <= brimWidth);
            }

            if (!any)
            {
                return true;
            }
        }

        if (!demand.OwnColours)
        {
            return false;
        }

        // The skeins stand longest first, and so do the stripes.
        for (var k = 0; k < demand.StripesFirst.Length; k++)
        {
            if (k >= capacity.Length || capacity[k] < demand.Need[demand.StripesFirst[k]])
            {
                return true;
            }
        }

        return false;
    }

    private int[]? Quick(long[] capacity, int brimWidth) => Greedy(capacity, brimWidth, bandByBand: false) is var binOf && Array.TrueForAll(binOf, b => b >= 0) ? binOf : null;

    // Longest first, each on the skein it fits most closely.
    private int[] Greedy(long[] capacity, int brimWidth, bool bandByBand)
    {
        var free = (long[])capacity.Clone();
        var binOf = new int[demand.Need.Length];
        Array.Fill(binOf, -1);
        foreach (var i in bandByBand ? [.. demand.LongestFirst.OrderBy(i => demand.Band[i])] : demand.LongestFirst)
        {
            var best = -1;
            for (var bin = 0; bin < free.Length; bin++)
            {
                if (free[bin] >= demand.Need[i] && (best < 0 || free[bin] < free[best])
                    && (!demand.HasBrim[i] || supply.BrimWidth[bin] <= brimWidth) && Admits(i, bin, binOf))
                {
                    best = bin;
                }
            }

            if (best >= 0)
            {
                binOf[i] = best;
                free[best] -= demand.Need[i];
            }
        }

        return binOf;
    }

    private bool Admits(int item, int bin, int[] binOf)
    {
        foreach (var n in demand.Beside[item])
        {
            if (binOf[n] >= 0 && !supply.MayTouch(bin, binOf[n]))
            {
                return false;
            }
        }

        if (!demand.OwnColours || demand.Role[item] == Role.Free)
        {
            return true;
        }

        for (var other = 0; other < binOf.Length; other++)
        {
            if (binOf[other] == bin && other != item
                && (demand.Role[other] == Role.Stripe || (demand.Role[other] == Role.Head && demand.Role[item] == Role.Stripe)))
            {
                return false;
            }
        }

        return true;
    }
}
