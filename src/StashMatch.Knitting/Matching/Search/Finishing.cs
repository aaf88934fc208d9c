using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The last tiers: tidy, colour, as it was. Nothing here changes what is said of the question but the rung of the plan shown.</summary>
internal static class Finishing
{
    /// <summary>The plan that is shown.</summary>
    public static Outcome Finished(Outcome outcome, CancellationToken cancel)
    {
        if (outcome.Word == Word.No)
        {
            return outcome;
        }

        if (outcome.Question.Like.Count > 0)
        {
            return LikeBefore(outcome, cancel);
        }

        var plan = Seam.Shown(Tidied(outcome.Plan, cancel), cancel);
        return outcome with { Plan = InOrder(plan, outcome.Question.ColourOrder) };
    }

    /// <summary>The tidiest plan at the same capacities.</summary>
    public static Plan Tidied(Plan plan, CancellationToken cancel)
    {
        var (puzzle, capacity) = (plan.Puzzle, plan.Capacity.Of);
        var tidy = new BestWorth(puzzle, capacity, Worth.Tidiness, cancel);
        var proven = tidy.Search(WorthOf(plan));
        var binOf = tidy.BinOf ?? plan.BinOf;
        return plan with { BinOf = proven ? binOf : new Rearranger(puzzle, capacity, binOf).Tidier(), Proven = plan.Proven && proven };
    }

    /// <summary>The same, its stripes in an order of colours, as good in all else.</summary>
    public static Plan InOrder(Plan plan, ColourOrder order) =>
        order == ColourOrder.Any ? plan : plan with { BinOf = new Rearranger(plan.Puzzle, plan.Capacity.Of, plan.BinOf).InOrder(order) };

    /// <summary>How tidy a plan is.</summary>
    public static long WorthOf(Plan plan)
    {
        var (loads, worth) = (plan.Loads(), 0L);
        for (var bin = 0; bin < loads.Length; bin++)
        {
            worth += Worth.Tidiness.Of(plan.Capacity.Of[bin], loads[bin]);
        }

        return worth;
    }

    // The fewest changes for the word and brim there are; of those the surest, then the tidiest.
    private static Outcome LikeBefore(Outcome outcome, CancellationToken cancel)
    {
        var (puzzle, keeping) = (outcome.Plan.Puzzle, outcome.Word == Word.Yes ? Keeping.Yes : Keeping.Nothing);
        var capacities = puzzle.CapacitiesFor(outcome.Hat.Usage);
        var least = outcome.Word switch { Word.Yes => Rung.Of(outcome.Question.Target), Word.OnlyJust => Rung.OnlyJust, _ => Rung.ByTheLabel };
        var search = new AsItWas(puzzle, outcome.Question.Like, cancel);
        var (plan, rung, most, changes) = (outcome.Plan, Rung.Of(outcome.Sureness), search.ChangesOf(outcome.Plan.BinOf), 0);
        var proven = plan.Proven;
        for (; changes <= most; changes++)
        {
            var found = search.Find(capacities.At(least, keeping), changes, out var binOf);
            proven &= found != Found.Unknown;
            if (found == Found.Yes)
            {
                (plan, rung) = (plan with { BinOf = binOf, Capacity = capacities.At(least, keeping) }, least);
                break;
            }
        }

        if (changes > most)
        {
            return outcome with { Plan = plan with { Proven = false } };
        }

        // Sure: up the rungs as long as there is a plan with no more changes; then one that keeps the reserve, where the word does not ask it.
        for (var higher = rung.Next; higher > rung && higher.Chance <= outcome.Reach; higher = rung.Next)
        {
            var found = search.Find(capacities.At(higher, keeping), changes, out var surer);
            proven &= found != Found.Unknown;
            if (found != Found.Yes)
            {
                break;
            }

            (plan, rung) = (plan with { BinOf = surer, Capacity = capacities.At(higher, keeping) }, higher);
        }

        if (keeping == Keeping.Nothing && search.Find(capacities.At(rung, Keeping.Reserve), changes, out var keeps) == Found.Yes)
        {
            plan = plan with { BinOf = keeps, Capacity = capacities.At(rung, Keeping.Reserve) };
        }

        proven &= search.Tidiest(plan.Capacity, changes, out var tidiest);
        return outcome with { Plan = plan with { BinOf = tidiest.Length == 0 ? plan.BinOf : tidiest, Proven = proven }, Sureness = rung.Chance };
    }
}
