using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching;

/// <summary>The plans of one answer: the surest, the one that uses most up, and the one whose stripes go in the smallest steps of colour.</summary>
internal static class ThreePlans
{
    /// <summary>All three, equal ones once, each checked.</summary>
    public static IReadOnlyList<SharedPlan> Of(Outcome finished, SharedPlan surest)
    {
        List<(Plan Plan, SharedPlan Shown)> plans = [(finished.Plan, surest)];
        Add(PlanKind.UsesMostUp, UsesMostUp(finished));
        Add(PlanKind.Evenest, Finishing.InOrder(finished.Plan, ColourOrder.Gradient));
        return plans.ConvertAll(p => p.Shown);

        void Add(PlanKind kind, Plan plan)
        {
            if (plans.TrueForAll(p => !p.Plan.BinOf.AsSpan().SequenceEqual(plan.BinOf)))
            {
                var shown = Answers.Shown(kind, finished with { Plan = plan, Sureness = RungOf(finished, plan).Chance }, plan);
                Checker.CheckPlan(shown, Answers.Of(finished), finished.Question);
                plans.Add((plan, shown));
            }
        }
    }

    /// <summary>The highest rung of a plan at the word it stands for.</summary>
    public static Rung RungOf(Outcome outcome, Plan plan)
    {
        var (capacities, loads) = (plan.Puzzle.CapacitiesFor(outcome.Hat.Usage), plan.Loads());
        var highest = Rung.ByTheLabel;
        foreach (var rung in Rung.All)
        {
            var capacity = capacities.At(rung, Keeping.Nothing).Of;
            for (var bin = 0; bin < loads.Length; bin++)
            {
                if (loads[bin] > capacity[bin])
                {
                    return highest;
                }
            }

            highest = rung;
        }

        return highest;
    }

    // A yes may be surer than was asked; what is no surer leaves fewer stubs.
    private static Plan UsesMostUp(Outcome finished) => finished.Word != Word.Yes
        ? finished.Plan
        : Finishing.Tidied(finished.Plan with { Capacity = Tiers.CapacityOfYes(finished.Plan.Puzzle) }, default);
}
