using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>Turns a settled plan into the answer: parts, leftovers, what is short and what to know.</summary>
internal static class Answers
{
    public static Answer Of(Outcome outcome, decimal allowancePercent)
    {
        var (puzzle, hat) = (outcome.Plan.Puzzle, outcome.Hat);
        var binOf = (int[])outcome.Plan.BinOf.Clone();
        var given = Given(puzzle, binOf);
        var parts = new PartAnswer[hat.Parts.Count];
        for (var g = 0; g < puzzle.Grouping.Groups.Count; g++)
        {
            var strands = Array.FindAll(puzzle.Items, i => i.Group == g);
            Share(puzzle, g, strands, binOf, given, allowancePercent, parts);
        }

        var used = parts.SelectMany(p => p.All).GroupBy(a => a.Leftover, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(a => a.Metres.Millimetres), StringComparer.Ordinal);
        var leftovers = outcome.Question.Leftovers.Select(l =>
        {
            var metres = Metres.FromMillimetres(used.GetValueOrDefault(l.Id));
            return new LeftoverAnswer(l, metres, l.Held - metres, Sureness.Of(l, metres, hat.Usage), ShortOfReserve(l, metres, allowancePercent));
        }).ToList();
        var weakest = outcome.Plan.Complete ? Weakest(leftovers) : null;
        return new Answer
        {
            Hat = hat,
            Arrangement = outcome.Question.Arrangement,
            Verdict = outcome.Verdict,
            Why = outcome.Why,
            ChanceOfEnough = outcome.Chance,
            ProvenBest = outcome.Plan.Proven,
            WeakestLeftover = weakest?.Leftover.Id,
            MarginPercent = weakest is null ? 0 : MarginOf(weakest),
            Sureness = outcome.Plan.Complete ? RungOf(leftovers) : 0,
            Reach = outcome.Plan.Complete ? RungOf(leftovers) : 0,
            Parts = parts,
            Leftovers = leftovers,
            Short = Metres.FromMillimetres(parts.Sum(p => p.Short.Millimetres)),
            ShortForAllowance = ShortForAllowance(puzzle, binOf, allowancePercent),
            Care = CareOf([.. leftovers.Where(l => l.Used.Millimetres > 0).Select(l => l.Leftover.Care)]),
            Warnings = Warnings.For(hat, parts, outcome.Question),
            Cautions = Cautions.For(hat, [.. leftovers.Where(l => l.Used.Millimetres > 0).Select(l => l.Leftover)]),
            Plans = [new SharedPlan(PlanKind.Surest, outcome.Chance, weakest is null ? 0 : MarginOf(weakest), outcome.Plan.Complete ? RungOf(leftovers) : 0, parts, leftovers)],
            Chosen = [],
            Repairs = [],
        };

        double RungOf(List<LeftoverAnswer> each) =>
            Rung.All.Last(r => each.TrueForAll(l => l.Used <= Sureness.Capacity(l.Leftover, hat.Usage, r))).Chance;
    }

    // What a group was given goes to its parts in knitting order; held double, to each strand by itself.
    private static void Share(Puzzle puzzle, int g, Item[] strands, int[] binOf, long[] given, decimal allowancePercent, PartAnswer[] parts)
    {
        var (group, hat) = (puzzle.Grouping.Groups[g], puzzle.Hat);
        var left = Array.ConvertAll(strands, i => given[i.Index]);
        var once = puzzle.NeedOf(group);
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

    // Each uncovered item, longest first, gets the longest free remainder every rule lets it have, which is then spoken for.
    private static long[] Given(Puzzle puzzle, int[] binOf)
    {
        var free = (long[])puzzle.Held.Clone();
        var given = new long[puzzle.Items.Length];
        foreach (var item in puzzle.Items.Where(i => binOf[i.Index] >= 0))
        {
            given[item.Index] = item.Need;
            free[binOf[item.Index]] -= item.Need;
        }

        foreach (var item in puzzle.Items.Where(i => binOf[i.Index] < 0).OrderByDescending(i => i.Need).ThenBy(i => i.Index).ToList())
        {
            var longest = Enumerable.Range(0, free.Length)
                .Where(b => free[b] > 0 && puzzle.Admits(item, b, binOf))
                .OrderByDescending(b => free[b]).ThenBy(b => b)
                .FirstOrDefault(-1);
            if (longest >= 0)
            {
                binOf[item.Index] = longest;
                given[item.Index] = Math.Min(item.Need, free[longest]);
                free[longest] -= given[item.Index];
            }
        }

        return given;
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

    private static Metres ShortForAllowance(Puzzle puzzle, int[] binOf, decimal allowancePercent)
    {
        var total = 0L;
        foreach (var group in puzzle.Items.GroupBy(i => binOf[i.Index]))
        {
            var wanted = Metres.FromMillimetres(group.Sum(i => i.Need)).WithAllowance(allowancePercent).Millimetres;
            total += group.Key < 0 ? wanted : Math.Max(0, wanted - puzzle.Held[group.Key]);
        }

        return Metres.FromMillimetres(total);
    }
}
