using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The seam of a side-to-side hat, where the last stripe meets the first: they should look different where nothing weightier is lost by it.</summary>
internal static class Seam
{
    /// <summary>Whether the seam shows two colours, or there is none.</summary>
    public static bool Shows(Puzzle puzzle, int[] binOf) =>
        puzzle.Layout.SeamItems is not { } seam || puzzle.LookDifferent(binOf[seam.First], binOf[seam.Last]);

    /// <summary>A plan as tidy as this one whose seam shows; this one where there is none.</summary>
    public static Plan Shown(Plan plan, CancellationToken cancel)
    {
        var puzzle = plan.Puzzle;
        if (Shows(puzzle, plan.BinOf) || puzzle.Layout.SeamItems is not { } seam || seam.First == seam.Last)
        {
            return plan;
        }

        // The seam as one more place under the colour rule; where colours may blend, as the only one.
        var search = new BestWorth(puzzle.WithSeam(), plan.Capacity.Of, Worth.Tidiness, cancel);
        var worth = Finishing.WorthOf(plan);
        search.Search(worth - 2);
        return search.BinOf is { } binOf && Finishing.WorthOf(plan with { BinOf = binOf }) >= worth ? plan with { BinOf = binOf } : plan;
    }

    /// <summary>The items of the first and the last stripe, where they meet.</summary>
    public static (int First, int Last)? ItemsOf(HatNeeds hat, Grouping grouping, Item[] items)
    {
        var stripes = Enumerable.Range(0, hat.Parts.Count).Where(i => hat.Parts[i].Kind == PartKind.Stripe).OrderBy(i => hat.Parts[i].Number).ToList();
        if (!hat.StripesMeetAtSeam || stripes.Count < 2)
        {
            return null;
        }

        int ItemOf(int part) => Array.FindIndex(items, i => i.Group == grouping.GroupOf[part]);
        return (ItemOf(stripes[0]), ItemOf(stripes[^1]));
    }
}
