using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>Whether kits make every size, stripe count and arrangement.</summary>
/// <remarks>
/// By the matcher's rules, so a side's verdict, reason, sureness, reach and metres short are those of the same question asked of the skeins. What
/// else a side tells is of one plan of that standing, untidied.
/// </remarks>
public static class KitCheck
{
    /// <summary>For each kit its cells: sizes first, then counts, then arrangements, in the order asked.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="kits">The kits.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static IReadOnlyList<IReadOnlyList<KitCell>> Of(KitQuestion asked, IReadOnlyList<Kit> kits, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(kits);
        var supplies = kits.Select(k => (
            Nominal: k.AtNominal(), Lightest: k.AtLightest(asked.LightestPercent))).ToList();
        var counts = asked.Sizes.SelectMany(size => (asked.StripeCounts ?? asked.Hat.CountsFor(size)).Select(stripes => (Size: size, Stripes: stripes))).ToList();
        var each = asked.Arrangements.Count;
        var cells = kits.Select(_ => new KitCell[counts.Count * each]).ToArray();
        cancel.ThrowIfCancellationRequested();
        Parallel.For(0, counts.Count, new ParallelOptions { CancellationToken = cancel }, at =>
        {
            var (size, stripes) = counts[at];
            for (var i = 0; i < each; i++)
            {
                for (var k = 0; k < supplies.Count; k++)
                {
                    var (nominal, why) = SideOf(asked, supplies[k].Nominal, size, stripes, asked.Arrangements[i], cancel);
                    var (lightest, _) = SideOf(asked, supplies[k].Lightest, size, stripes, asked.Arrangements[i], cancel);
                    cells[k][(at * each) + i] = new KitCell(size, stripes, asked.Arrangements[i], why, nominal, lightest);
                }
            }
        });
        return cells;
    }

    /// <summary>The skeins that are of another weight class than the hat, or read as one by their label, each with that class: no cell takes them.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="hat">The hat.</param>
    public static IReadOnlyList<(KitSkein Skein, WeightClass Class)> LeftOut(Kit kit, Hat hat)
    {
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(hat);
        return [.. kit.Skeins.Select(s => (s, (kit with { Skeins = [s with { Count = 1 }] }).AtNominal()[0].ClassOrGuess)).Where(s => s.ClassOrGuess != hat.WeightClass)];
    }

    /// <summary>Which skein goes where in a cell, at nominal weight; empty where it cannot be knitted.</summary>
    /// <param name="asked">What was asked.</param>
    /// <param name="kit">The kit.</param>
    /// <param name="cell">One of its cells.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<PartAnswer> Open(KitQuestion asked, Kit kit, KitCell cell, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(cell);
        var question = QuestionOf(asked, kit.AtNominal(), cell.Size, cell.Stripes, cell.Arrangement);
        return Matcher.Best(question, out _, cancel) is { } best ? Answers.Shown(PlanKind.Surest, best, best.Plan).Parts : [];
    }

    /// <summary>The question one side of a cell answers.</summary>
    private static Question QuestionOf(KitQuestion asked, IReadOnlyList<Leftover> skeins, string size, int stripes, Arrangement arrangement) => new(asked.Hat, size, skeins)
    {
        Stripes = stripes,
        Arrangement = arrangement,
        InTurn = Math.Min(3, stripes - 1),
        AllowancePercent = asked.AllowancePercent,
        Target = asked.Target,
    };

    private static (KitSide?, CannotBeKnitted?) SideOf(
        KitQuestion asked, IReadOnlyList<Leftover> skeins, string size, int stripes, Arrangement arrangement, CancellationToken cancel)
    {
        if (Matcher.Best(QuestionOf(asked, skeins, size, stripes, arrangement), out var why, cancel) is not { } best)
        {
            return (null, why ?? new CannotBeKnitted("size", $"The hat has no size {size}."));
        }

        var (puzzle, hat) = (best.Plan.Puzzle, best.Hat);
        string PartOf(Item item) => hat.Parts[puzzle.Grouping.Groups[item.Group].EndsAt].Name;
        var side = new KitSide(best.Verdict, 0, null, null, best.Short, default, best.Chance, best.Plan.Proven) { Why = best.Why, Sureness = best.Sureness, Reach = best.Reach };
        var (loads, given) = (best.Plan.Loads(), best.Plan.Given());
        if (best.Word == Word.No)
        {
            var worst = puzzle.Items.MaxBy(i => (i.Need - given[i.Index], -i.Index))!;
            var from = best.Plan.BinOf[worst.Index];
            return (side with { WeakestPart = PartOf(worst), WeakestSkein = from < 0 ? null : puzzle.Leftover(from).Name, ShortForAllowance = Answers.ShortForAllowance(best.Plan, asked.AllowancePercent) }, null);
        }

        // The skein with the smallest margin, and the longest part it serves. Whether a kit passes asks for yarn enough alone.
        var weakest = Enumerable.Range(0, loads.Length).Where(b => loads[b] > 0)
            .OrderBy(b => (puzzle.Held[b] - loads[b]) / (decimal)loads[b]).ThenBy(b => puzzle.Leftover(b).Id, StringComparer.Ordinal).First();
        return (side with
        {
            MarginPercent = Math.Floor((puzzle.Held[weakest] - loads[weakest]) * 1000m / loads[weakest]) / 10,
            WeakestPart = PartOf(puzzle.Items.Where(i => best.Plan.BinOf[i.Index] == weakest).MaxBy(i => (i.Need, -i.Index))!),
            WeakestSkein = puzzle.Leftover(weakest).Name,
            ShortForAllowance = best.Why == Why.Allowance ? Answers.ShortForAllowance(best.Plan, asked.AllowancePercent) : default,
        }, null);
    }
}
