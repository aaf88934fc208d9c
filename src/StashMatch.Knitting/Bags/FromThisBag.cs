using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Bags;

/// <summary>What could this bag become? Every size, stripe count and arrangement of a hat against one bag.</summary>
/// <remarks>A cell's verdict, reason, sureness, reach and metres short are those of the answer <see cref="Matcher.TryAnswer"/> gives to <see cref="QuestionOf"/>.</remarks>
public static class FromThisBag
{
    /// <summary>The arrangements looked at where nobody says which.</summary>
    public static IReadOnlyList<Arrangement> Usual { get; } =
        [Arrangement.OwnColours, Arrangement.OneGround, Arrangement.OneThread, Arrangement.AsItFalls];

    /// <summary>The question one cell answers. In turn, three leftovers take turns, or two where there are three stripes.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="size">One of its sizes.</param>
    /// <param name="stripes">1 to 24.</param>
    /// <param name="arrangement">How the leftovers are spread.</param>
    /// <param name="leftovers">The bag; ids are unique.</param>
    /// <param name="allowancePercent">0 to 100.</param>
    public static Question QuestionOf(
        Hat hat, string size, int stripes, Arrangement arrangement, IReadOnlyList<Leftover> leftovers, decimal allowancePercent) =>
        new(hat, size, leftovers)
        {
            Stripes = stripes,
            Arrangement = arrangement,
            InTurn = Math.Clamp(stripes - 1, 2, 3),
            AllowancePercent = allowancePercent,
        };

    /// <summary>All cells: sizes in the order given, in each the stripe counts, in each the arrangements.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="leftovers">The bag; ids are unique, 0 to 10,000 of them.</param>
    /// <param name="sizes">Sizes of the hat.</param>
    /// <param name="stripeCounts">Counts from 1 to 24, or null for all the hat may have.</param>
    /// <param name="arrangements">Which arrangements.</param>
    /// <param name="allowancePercent">0 to 100.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">Two leftovers share an id.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static IReadOnlyList<BagCell> Cells(
        Hat hat,
        IReadOnlyList<Leftover> leftovers,
        IReadOnlyList<string> sizes,
        IReadOnlyList<int>? stripeCounts,
        IReadOnlyList<Arrangement> arrangements,
        decimal allowancePercent,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(leftovers);
        ArgumentNullException.ThrowIfNull(sizes);
        ArgumentNullException.ThrowIfNull(arrangements);
        if (leftovers.DistinctBy(l => l.Id, StringComparer.Ordinal).Count() != leftovers.Count)
        {
            throw new ArgumentException("Two leftovers share an id.", nameof(leftovers));
        }

        // One list for all cells: what is read off the bag is read once.
        IReadOnlyList<Leftover> bag = [.. leftovers];
        var questions = sizes.SelectMany(size => (stripeCounts ?? hat.CountsFor(size)).SelectMany(
            stripes => arrangements.Select(a => QuestionOf(hat, size, stripes, a, bag, allowancePercent)))).ToList();
        cancel.ThrowIfCancellationRequested();
        var cells = new BagCell[questions.Count];
        Parallel.For(0, cells.Length, new ParallelOptions { CancellationToken = cancel }, i => cells[i] = CellOf(questions[i], cancel));
        return cells;
    }

    /// <summary>
    /// The cells from best to worst: the better verdict; of those covered the higher reach; of those short the one that lacks less; then more
    /// stripes; then the order given. What cannot be knitted comes last.
    /// </summary>
    public static IReadOnlyList<BagCell> BestFirst(IReadOnlyList<BagCell> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        return
        [
            .. cells.OrderBy(c => c.Cannot is not null)
                .ThenByDescending(c => c.Verdict)
                .ThenByDescending(c => c.Reach)
                .ThenBy(c => c.Short)
                .ThenByDescending(c => c.Stripes),
        ];
    }

    private static BagCell CellOf(Question question, CancellationToken cancel)
    {
        var (size, stripes, arrangement) = (question.Size, question.Stripes!.Value, question.Arrangement);
        if (Matcher.Best(question, out var cannot, cancel) is not { } best)
        {
            return new BagCell(size, stripes, arrangement)
            {
                Verdict = Verdict.No,
                Why = Why.CannotBeKnitted,
                Cannot = cannot ?? new CannotBeKnitted("size", "The hat cannot be knitted in this size."),
            };
        }

        var cell = new BagCell(size, stripes, arrangement)
        {
            Verdict = best.Verdict,
            Why = best.Why,
            Sureness = best.Sureness,
            Reach = best.Reach,
            Short = best.Short,
            Chance = best.Word == Word.No ? null : new(best.Plan.ChanceOfEnough),
        };
        if (best.Word == Word.No)
        {
            return cell with { WeakestPart = ShortestPart(best) };
        }

        var (margin, part) = Tightest(best);
        return cell with { MarginPercent = margin, WeakestPart = part };
    }

    // The part that lacks most, the first in knitting order where they tie.
    private static string ShortestPart(Outcome outcome)
    {
        var (puzzle, given) = (outcome.Plan.Puzzle, outcome.Plan.Given());
        var item = puzzle.Items.MaxBy(i => (i.Need - given[i.Index], -i.Index))!;
        return outcome.Hat.Parts[puzzle.Grouping.Groups[item.Group].EndsAt].Name;
    }

    // The leftover with the smallest margin, by id where they tie, and the longest part it serves.
    private static (decimal MarginPercent, string? Part) Tightest(Outcome outcome)
    {
        var (puzzle, hat) = (outcome.Plan.Puzzle, outcome.Hat);
        var loads = outcome.Plan.Loads();
        var weakest = -1;
        for (var bin = 0; bin < loads.Length; bin++)
        {
            if (loads[bin] > 0 && (weakest < 0 || IsTighter(bin, weakest)))
            {
                weakest = bin;
            }
        }

        if (weakest < 0)
        {
            return (0, null);
        }

        var longest = Enumerable.Range(0, hat.Parts.Count)
            .Where(p => outcome.Plan.BinOf[puzzle.Grouping.GroupOf[p]] == weakest)
            .MaxBy(p => hat.Parts[p].Need(hat.Usage, puzzle.Grouping.Groups[puzzle.Grouping.GroupOf[p]].EndsAt == p));
        return (Math.Floor((puzzle.Held[weakest] - loads[weakest]) * 1000m / loads[weakest]) / 10, hat.Parts[longest].Name);

        bool IsTighter(int a, int b)
        {
            // left(a) / load(a) against left(b) / load(b), exactly.
            var (x, y) = ((decimal)(puzzle.Held[a] - loads[a]) * loads[b], (decimal)(puzzle.Held[b] - loads[b]) * loads[a]);
            return x < y || (x == y && string.CompareOrdinal(puzzle.Leftover(a).Id, puzzle.Leftover(b).Id) < 0);
        }
    }
}
