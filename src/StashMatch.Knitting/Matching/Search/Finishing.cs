namespace StashMatch.Knitting.Matching.Search;

/// <summary>The last tiers: tidy, colour, as it was. Nothing here changes what is said of the question.</summary>
internal static class Finishing
{
    /// <summary>The plan that is shown.</summary>
    public static Plan Finished(Outcome outcome, CancellationToken cancel)
    {
        var plan = Tidied(outcome.Plan, cancel);
        var order = outcome.Question.ColourOrder;
        return order == ColourOrder.Any ? plan : plan with { BinOf = new Rearranger(plan.Puzzle, plan.Capacity.Of, plan.BinOf).InOrder(order) };
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

    private static long WorthOf(Plan plan)
    {
        var (loads, worth) = (plan.Loads(), 0L);
        for (var bin = 0; bin < loads.Length; bin++)
        {
            worth += Worth.Tidiness.Of(plan.Capacity.Of[bin], loads[bin]);
        }

        return worth;
    }
}
