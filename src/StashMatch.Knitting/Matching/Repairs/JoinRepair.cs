using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching.Repairs;

/// <summary>Joins two leftovers that nearly match, so that one part may take both.</summary>
internal static class JoinRepair
{
    private const int MostPairs = 12;

    /// <summary>What two leftovers joined are known by.</summary>
    public static string IdOf(string first, string second) => $"{first}\u0000then\u0000{second}";

    public static void Offer(
        Question asked, Outcome outcome, Func<Question, Outcome?> attempt, Action<RepairCode, Outcome?, Func<Repair, Repair>?> offer)
    {
        (Outcome Outcome, Leftover First, Leftover Second)? best = null;
        foreach (var (first, second) in Pairs(asked, outcome))
        {
            var joined = Joined.AsOne(IdOf(first.Id, second.Id), first, second);
            var bag = asked.Leftovers.Where(l => l.Id != first.Id && l.Id != second.Id).Append(joined).ToList();
            if (attempt(asked with { Leftovers = bag }) is { } tried && (best is not { } b || tried.IsAheadOf(b.Outcome)))
            {
                best = (tried, first, second);
                if (tried.Verdict == Verdict.Yes)
                {
                    break;
                }
            }
        }

        if (best is { } found)
        {
            offer(RepairCode.JoinNearMatch, found.Outcome, r => r with { Leftover = found.First.Id, OtherLeftover = found.Second.Id, Part = PartOf(found.Outcome) });
        }
    }

    // Pairs that together reach what the longest part in want takes and the allowance, the closest fit first; then the longest pairs.
    private static IEnumerable<(Leftover First, Leftover Second)> Pairs(Question asked, Outcome outcome)
    {
        var (puzzle, binOf) = (outcome.Plan.Puzzle, outcome.Plan.BinOf);
        var loads = outcome.Plan.Loads();
        decimal Tightness(Item i) => puzzle.Held[binOf[i.Index]] / (decimal)loads[binOf[i.Index]];
        var given = outcome.Plan.Given();
        var wanting = puzzle.Items.Where(i => given[i.Index] < i.Need).OrderByDescending(i => i.Need).FirstOrDefault() ?? puzzle.Items.MinBy(Tightness)!;
        var wanted = (wanting.Need * (100 + asked.AllowancePercent) / 100 / 1000) + Joined.Tails;
        var kept = asked.Locks.Concat(asked.Never).Select(l => l.Leftover).ToHashSet(StringComparer.Ordinal);
        var may = Enumerable.Range(0, puzzle.Bins).Where(b => Joined.CanJoin(puzzle.Leftover(b)) && !kept.Contains(puzzle.Leftover(b).Id)).ToList();
        var pairs = new List<(Leftover First, Leftover Second, decimal Over)>();
        for (var i = 0; i < may.Count; i++)
        {
            for (var j = i + 1; j < may.Count; j++)
            {
                var over = ((puzzle.Held[may[i]] + puzzle.Held[may[j]]) / 1000m) - wanted;
                if (over >= 0 && puzzle.Held[may[i]] / 1000m < wanted && NearMatch(puzzle, may[i], may[j]))
                {
                    pairs.Add((puzzle.Leftover(may[i]), puzzle.Leftover(may[j]), over));
                }
            }
        }

        return pairs.OrderBy(p => p.Over).ThenBy(p => p.First.Id, StringComparer.Ordinal).ThenBy(p => p.Second.Id, StringComparer.Ordinal)
            .Take(MostPairs).Select(p => (p.First, p.Second));
    }

    // Colours that read as one, or close ones of one lot; of one lot where a colour is not known. A set of mini-skeins is no lot.
    private static bool NearMatch(Puzzle puzzle, int a, int b)
    {
        var lot = puzzle.Leftover(a).Lot is { } one && one == puzzle.Leftover(b).Lot;
        var step = puzzle.StepBetween(a, b);
        return step < 0 ? lot : step < 100 * (lot ? ColourRule.Close : ColourRule.ReadsAsOne);
    }

    private static string? PartOf(Outcome outcome)
    {
        var puzzle = outcome.Plan.Puzzle;
        var item = Array.Find(puzzle.Items, i => puzzle.Leftover(outcome.Plan.BinOf[i.Index]).Id.Contains('\u0000', StringComparison.Ordinal));
        return item is null ? null : puzzle.Hat.Parts[puzzle.Grouping.Groups[item.Group].EndsAt].Name;
    }
}
