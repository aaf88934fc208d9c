using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching;

/// <summary>Tells of a plan tier by tier what it was chosen by, and the part or leftover that limits it.</summary>
internal static class HowChosen
{
    public static IReadOnlyList<Chosen> Of(Outcome outcome, SharedPlan shown)
    {
        var used = shown.Leftovers.Where(l => l.Used.Millimetres > 0).ToList();
        if (outcome.Word == Word.No)
        {
            var most = shown.Parts.MaxBy(p => (p.Short, p.Need))!;
            return [new Chosen(Tier.Word), new Chosen(Tier.LeastShort, most.Part.Name, FullOf(outcome.Plan, most.Part.Name)) { Length = outcome.Short }];
        }

        // The weakest by its own sureness, by id where two are alike.
        var weakest = used.OrderBy(l => l.OwnSureness).ThenBy(l => l.Leftover.Id, StringComparer.Ordinal).FirstOrDefault();
        List<Chosen> tiers = [OfWord(outcome, used, weakest, shown)];
        if (shown.Parts.FirstOrDefault(p => p.Part.Kind == PartKind.Brim) is { From: { } from })
        {
            var width = outcome.Plan.Puzzle.Layout.HasOpenBrim ? outcome.Plan.Puzzle.BrimWidth : BrimSet.WidthOf(used.First(l => l.Leftover.Id == from.Leftover).Leftover.Brim);
            tiers.Add(width == 0 ? new Chosen(Tier.Brim) { Count = 0 } : new Chosen(Tier.Brim, PartNames.Brim, from.Leftover) { Count = width });
        }

        tiers.Add(Limited(Tier.Sure, weakest, shown) with { Chance = outcome.Sureness });
        tiers.Add(new Chosen(Tier.Tidy) { Count = FinishedOf(outcome.Plan) });
        if (outcome.Question.ColourOrder != ColourOrder.Any)
        {
            tiers.Add(new Chosen(Tier.Colour));
        }

        if (outcome.Question.Like.Count > 0)
        {
            tiers.Add(new Chosen(Tier.AsItWas) { Count = new AsItWas(outcome.Plan.Puzzle, outcome.Question.Like, default).ChangesOf(outcome.Plan.BinOf) });
        }

        return tiers;
    }

    private static Chosen OfWord(Outcome outcome, List<LeftoverAnswer> used, LeftoverAnswer? weakest, SharedPlan shown)
    {
        if (outcome.Why == Why.Allowance && used.MaxBy(l => l.ShortOfReserve) is { ShortOfReserve.Millimetres: > 0 } lacking)
        {
            return Limited(Tier.Word, lacking, shown) with { Length = lacking.ShortOfReserve };
        }

        return outcome.Word == Word.Yes
            ? new Chosen(Tier.Word) { Chance = outcome.Question.Target }
            : Limited(Tier.Word, weakest, shown) with { Chance = weakest?.OwnSureness };
    }

    // A leftover with the longest part it serves.
    private static Chosen Limited(Tier tier, LeftoverAnswer? leftover, SharedPlan shown) => new(
        tier,
        shown.Parts.Where(p => p.All.Any(a => a.Leftover == leftover?.Leftover.Id)).MaxBy(p => p.Need)?.Part.Name,
        leftover?.Leftover.Id);

    // The leftover a part would come from, where that is asked for more than it holds; null where nothing is there for it.
    private static string? FullOf(Plan plan, string part)
    {
        var (puzzle, given) = (plan.Puzzle, plan.Given());
        var at = Enumerable.Range(0, puzzle.Hat.Parts.Count).First(i => puzzle.Hat.Parts[i].Name == part);
        var item = Array.Find(puzzle.Items, i => i.Group == puzzle.Grouping.GroupOf[at] && given[i.Index] < i.Need);
        return item is not null && plan.BinOf[item.Index] is >= 0 and var bin ? puzzle.Leftover(bin).Id : null;
    }

    private static int FinishedOf(Plan plan)
    {
        var (loads, finished) = (plan.Loads(), 0);
        for (var bin = 0; bin < loads.Length; bin++)
        {
            finished += loads[bin] > 0 && plan.Capacity.Of[bin] - loads[bin] <= Worth.Finished ? 1 : 0;
        }

        return finished;
    }
}
