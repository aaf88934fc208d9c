using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The one place where the proof and the bench look inside the matcher.</summary>
internal static class Inside
{
    /// <summary>Whether everything can be covered by the label, the brim from anything; null where the steps ran out.</summary>
    public static bool? CanCover(Question question, HatNeeds hat)
    {
        var puzzle = Puzzle.Of(question, hat);
        return new Covering(puzzle, default).Find(ByTheLabel(puzzle), out _) switch { Found.Yes => true, Found.No => false, _ => null };
    }

    /// <summary>Whether the search by position alone finds a way to cover everything.</summary>
    public static Found ByPosition(Question question, HatNeeds hat)
    {
        var puzzle = Puzzle.Of(question, hat);
        return new PositionSearch(puzzle, ByTheLabel(puzzle), 100_000).Find(out _);
    }

    /// <summary>The first five tiers, with what is said of the question.</summary>
    public static Outcome? SettleWhole(Question question) => Matcher.Best(question, out _, default) is { } best ? Finishing.Finished(best, default) : null;

    /// <summary>The first five tiers: the plan alone, without the answer made from it and its repairs.</summary>
    public static Plan? Settle(Question question) => Matcher.Best(question, out _, default) is { } best ? Finishing.Finished(best, default).Plan : null;

    /// <summary>Whether the word and how far it reaches are proven, and whether the metres short, the brim and the sureness are too.</summary>
    public static (bool Word, bool Plan) ProvenOf(Question question) => Matcher.Best(question, out _, default) is { } best
        ? (best.WordProven, best.Plan.Proven) : (false, false);

    /// <summary>A plan with its stripes in order of colour.</summary>
    public static Plan InOrder(Plan plan, ColourOrder order) => Finishing.InOrder(plan, order);

    /// <summary>The leftover of each lot of a plan, in the order asked; -1 for one left uncovered.</summary>
    public static int[] BallOf(Plan plan, Sheet sheet)
    {
        var at = sheet.Question.Leftovers.Select((l, i) => (l.Id, i)).ToDictionary(l => l.Id, l => l.i, StringComparer.Ordinal);
        var lotOf = sheet.Lots.Select((l, i) => (l, i)).ToDictionary(x => x.l.Members[0], x => x.i);
        var ballOf = new int[sheet.Lots.Length];
        foreach (var item in plan.Puzzle.Items)
        {
            var bin = plan.BinOf[item.Index];
            ballOf[lotOf[plan.Puzzle.Grouping.Groups[item.Group].Members[0]]] = bin < 0 ? -1 : at[plan.Puzzle.Leftover(bin).Id];
        }

        return ballOf;
    }

    /// <summary>The bound on tidiness by the label, the brim from anything; null where there is no plan or none is made.</summary>
    /// <param name="question">The question.</param>
    /// <param name="hat">Its hat.</param>
    /// <param name="inHand">What a plan in hand is worth: the bound is lowered no further.</param>
    public static double? TidyBound(Question question, HatNeeds hat, long inHand)
    {
        var puzzle = Puzzle.Of(question, hat);
        var (capacity, target) = (ByTheLabel(puzzle).Of, Array.ConvertAll(puzzle.Classes, c => c.Count));
        var patterns = Patterns.Of(puzzle, target, capacity, Worth.Tidiness);
        if (!patterns.Complete || BinKind.Sort(patterns, capacity) is not { } kinds)
        {
            return null;
        }

        var prices = new Prices(patterns, kinds);
        prices.Lower(inHand, default);
        return prices.Bound;
    }

    private static Capacity ByTheLabel(Puzzle puzzle) => puzzle.CapacitiesFor(puzzle.Hat.Usage).At(Rung.ByTheLabel, Keeping.Nothing);
}
