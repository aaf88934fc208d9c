using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>Turns a settled plan into the answer: parts, leftovers, what is short and what to know.</summary>
internal static class Answers
{
    public static Answer Of(Outcome outcome)
    {
        var (hat, plan) = (outcome.Hat, outcome.Plan);
        var shown = Shown(PlanKind.Surest, outcome, plan);
        var weakest = outcome.Word == Word.No ? null : Weakest(shown.Leftovers);
        return new Answer
        {
            Hat = hat,
            Arrangement = outcome.Question.Arrangement,
            Verdict = outcome.Verdict,
            Why = outcome.Why,
            TooFew = outcome.TooFew,
            ChanceOfEnough = shown.ChanceOfEnough,
            ProvenBest = plan.Proven,
            WeakestLeftover = weakest?.Leftover.Id,
            MarginPercent = shown.MarginPercent,
            Sureness = outcome.Sureness,
            Reach = outcome.Reach,
            Parts = shown.Parts,
            Leftovers = shown.Leftovers,
            Short = outcome.Short,
            ShortForAllowance = ShortForAllowance(plan, outcome.Question.AllowancePercent),
            Care = CareOf([.. shown.Leftovers.Where(l => l.Used.Millimetres > 0).Select(l => l.Leftover.Care)]),
            Warnings = Warnings.For(hat, shown.Parts, shown.Leftovers, outcome.Question.Arrangement),
            Cautions = Cautions.For(hat, [.. shown.Leftovers.Where(l => l.Used.Millimetres > 0).Select(l => l.Leftover)]),
            PlansWhenAsked = new(() => outcome.Word == Word.No ? [shown] : ThreePlans.Of(outcome, shown)),
            Chosen = HowChosen.Of(outcome, shown),
            Repairs = [],
        };
    }

    /// <summary>A plan as it is shown.</summary>
    public static SharedPlan Shown(PlanKind kind, Outcome outcome, Plan plan)
    {
        var (puzzle, hat, allowancePercent) = (plan.Puzzle, outcome.Hat, outcome.Question.AllowancePercent);
        var given = plan.Given();
        var parts = new PartAnswer[hat.Parts.Count];
        for (var g = 0; g < puzzle.Grouping.Groups.Count; g++)
        {
            Share(puzzle, g, Array.FindAll(puzzle.Items, i => i.Group == g), plan.BinOf, given, allowancePercent, parts);
        }

        var used = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var allotment in parts.SelectMany(p => p.All))
        {
            used[allotment.Leftover] = used.GetValueOrDefault(allotment.Leftover) + allotment.Metres.Millimetres;
        }

        var leftovers = new LeftoverAnswer[outcome.Question.Leftovers.Count];
        for (var l = 0; l < leftovers.Length; l++)
        {
            var leftover = outcome.Question.Leftovers[l];
            leftovers[l] = used.GetValueOrDefault(leftover.Id) is > 0 and var millimetres && Metres.FromMillimetres(millimetres) is var metres
                ? new LeftoverAnswer(leftover, metres, leftover.Held - metres, Sureness.Of(leftover, metres, hat.Usage), ShortOfReserve(leftover, metres, allowancePercent))
                : new LeftoverAnswer(leftover, default, leftover.Held, 1, default);
        }

        var (isShort, weakest) = (outcome.Word == Word.No, Weakest(leftovers));
        return new SharedPlan(
            kind, isShort ? 0 : plan.ChanceOfEnough(), isShort || weakest is null ? 0 : MarginOf(weakest), outcome.Sureness, parts, leftovers);
    }

    // What a group was given goes to its parts in knitting order; held double, to each strand by itself.
    private static void Share(Puzzle puzzle, int g, Item[] strands, int[] binOf, long[] given, decimal allowancePercent, PartAnswer[] parts)
    {
        var (group, hat) = (puzzle.Grouping.Groups[g], puzzle.Hat);
        var left = Array.ConvertAll(strands, i => given[i.Index]);
        var once = puzzle.Layout.NeedOf(group);
        foreach (var m in group.Members)
        {
            var need = hat.Parts[m].Need(hat.Usage, m == group.EndsAt).Millimetres;
            var from = new Allotment?[strands.Length];
            var (all, sum) = (0L, 0L);
            for (var i = 0; i < strands.Length; i++)
            {
                var each = need * (strands[i].Need / once);
                var goesIn = Metres.FromMillimetres(Math.Min(each, left[i]));
                left[i] -= goesIn.Millimetres;
                (all, sum) = (all + each, sum + goesIn.Millimetres);
                var leftover = goesIn.Millimetres == 0 ? null : puzzle.Leftover(binOf[strands[i].Index]);
                from[i] = leftover is null ? null : new Allotment(leftover.Id, goesIn, leftover.Ratio.GramsOf(goesIn));
            }

            var wanted = Metres.FromMillimetres(all);
            parts[m] = new PartAnswer(hat.Parts[m], wanted, wanted.WithAllowance(allowancePercent), from[0] ?? from[^1], Metres.FromMillimetres(all - sum))
            {
                With = from.Length > 1 && from[0] is not null ? from[1] : null,
                HeldDouble = all > need,
            };
        }
    }

    private static Care? CareOf(IReadOnlyList<Care?> each) =>
        each.All(c => c is null) ? null : each.Select(c => c ?? Care.Unknown).Aggregate(Care.Merge);

    private static LeftoverAnswer? Weakest(IEnumerable<LeftoverAnswer> leftovers) => leftovers
        .Where(l => l.Used.Millimetres > 0)
        .OrderBy(l => l.Left.Millimetres / (decimal)l.Used.Millimetres)
        .ThenBy(l => l.Leftover.Id, StringComparer.Ordinal)
        .FirstOrDefault();

    private static Metres ShortOfReserve(Yarns.Leftover leftover, Metres used, decimal allowancePercent) =>
        Metres.FromMillimetres(Math.Max(0, used.WithAllowance(allowancePercent).Millimetres - leftover.Held.Millimetres));

    private static decimal MarginOf(LeftoverAnswer l) => Math.Floor(l.Left.Millimetres * 1000m / l.Used.Millimetres) / 10;

    /// <summary>What a plan lacks of need and reserve; a part nothing is there for counts whole.</summary>
    public static Metres ShortForAllowance(Plan plan, decimal allowancePercent)
    {
        var (total, loads) = (0L, plan.Loads());
        for (var bin = 0; bin < loads.Length; bin++)
        {
            total += loads[bin] == 0 ? 0 : Math.Max(0, Metres.FromMillimetres(loads[bin]).WithAllowance(allowancePercent).Millimetres - plan.Puzzle.Held[bin]);
        }

        foreach (var item in plan.Puzzle.Items)
        {
            total += plan.BinOf[item.Index] >= 0 ? 0 : Metres.FromMillimetres(item.Need).WithAllowance(allowancePercent).Millimetres;
        }

        return Metres.FromMillimetres(total);
    }
}
