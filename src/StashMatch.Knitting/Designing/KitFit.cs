using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Designing;

/// <summary>Whether a supply covers a demand with so much to spare: by simple bounds and a quick fit where they tell, by the matcher's exact search where they do not.</summary>
internal sealed class KitFit(Demand demand, Supply supply, CancellationToken cancel)
{
    /// <summary>Whether each group finds a skein with the reserve kept, or there is no way, or the steps ran out.</summary>
    /// <param name="allowancePercent">The reserve, 0 to 100 %.</param>
    /// <param name="brimWidth">The widest brim set let in, 0 to 3.</param>
    public Found Covers(decimal allowancePercent, int brimWidth)
    {
        var capacity = supply.CapacityAt(allowancePercent);
        if (CannotBe(capacity, brimWidth))
        {
            return Found.No;
        }

        if (Quick(capacity, brimWidth))
        {
            return Found.Yes;
        }

        var puzzle = Puzzle.Of(demand.Ask(supply.Bins, allowancePercent), demand.Hat, brimWidth);
        return new Covering(puzzle, cancel).Find(puzzle.CapacitiesFor(demand.Hat.Usage).At(Rung.ByTheLabel, Keeping.Reserve), out _);
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

    // Longest first, each on the skein it fits most closely.
    private bool Quick(long[] capacity, int brimWidth)
    {
        var free = (long[])capacity.Clone();
        var binOf = new int[demand.Need.Length];
        Array.Fill(binOf, -1);
        foreach (var i in demand.LongestFirst)
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

            if (best < 0)
            {
                return false;
            }

            binOf[i] = best;
            free[best] -= demand.Need[i];
        }

        return true;
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
