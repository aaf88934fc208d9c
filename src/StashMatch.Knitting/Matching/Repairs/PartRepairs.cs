using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;

namespace StashMatch.Knitting.Matching.Repairs;

/// <summary>Repairs that touch one part: another leftover for it, fewer rows in a stripe, a braid paired anew or left out.</summary>
internal sealed class PartRepairs(
    Question asked, Answer answer, Outcome outcome, Func<Question, Outcome?> attempt, Action<RepairCode, Outcome?, Func<Repair, Repair>?> offer)
{
    // Steps of rows taken from a stripe: of one row in the round, of two worked flat.
    private static readonly int[] Takes = [1, 2, 3, 4, 6, 8, 12];

    public void Look()
    {
        MoveOne();
        if (asked.Hat is HatDesign design)
        {
            FewerRows(design);
            RePair();
            Drop(design);
        }
    }

    // A part out of its printed letter, or out of where it is kept: whatever leftover then suits it best.
    private void MoveOne()
    {
        (Outcome Outcome, string Part)? best = null;
        foreach (var question in Freed())
        {
            if (attempt(question.Asked) is { } tried && (best is not { } b || tried.IsAheadOf(b.Outcome)))
            {
                best = (tried, question.Part);
            }
        }

        if (best is { } found)
        {
            offer(RepairCode.MoveOne, found.Outcome, r => r with { Part = found.Part, Leftover = LeftoverOf(found.Outcome, found.Part) });
        }
    }

    private IEnumerable<(Question Asked, string Part)> Freed()
    {
        foreach (var kept in asked.Locks)
        {
            var part = answer.Parts.FirstOrDefault(p => p.Part.Name == kept.Part || p.Part.Yarn == kept.Part)?.Part.Name ?? kept.Part;
            yield return (asked with { Locks = [.. asked.Locks.Where(l => l != kept)] }, part);
        }

        if (outcome.Hat.Plan is not null)
        {
            yield break;
        }

        foreach (var part in answer.Parts.OrderBy(p => p.Need.Millimetres))
        {
            var shared = answer.Parts.Any(p => p.Part.Yarn == part.Part.Yarn && p.Part.Name != part.Part.Name);
            if (shared && part.Part.Name != part.Part.Yarn && !asked.Apart.Contains(part.Part.Name, StringComparer.Ordinal) && !asked.Locks.Any(l => l.Part == part.Part.Name))
            {
                yield return (asked with { Apart = [.. asked.Apart, part.Part.Name] }, part.Part.Name);
            }
        }
    }

    // Rows go from a stripe that is short, tight, or any other of its length, to the stripe whose leftover has most to spare.
    private void FewerRows(HatDesign design)
    {
        var stripes = answer.Parts.Where(p => p.Part.Kind == PartKind.Stripe).ToList();
        var rows = stripes.ConvertAll(s => s.Part.Rows);
        var step = design.Construction == Construction.BrimUpRound ? 1 : 2;
        var left = answer.Leftovers.ToDictionary(l => l.Leftover.Id, l => l.Left.Millimetres, StringComparer.Ordinal);
        long LeftOf(PartAnswer p) => p.Short.Millimetres > 0 || p.From is null ? -1 : left[p.From.Leftover];
        var givers = stripes.OrderBy(LeftOf).ThenBy(s => s.Part.Number).DistinctBy(s => (s.Need, LeftOf(s) < 0 || s.From?.Leftover == answer.WeakestLeftover)).ToList();
        (Outcome Outcome, int From, int To, int[] Rows, int Moved)? best = null;
        foreach (var giver in givers)
        {
            if (stripes.Where(s => s != giver).MaxBy(s => (LeftOf(s), -s.Part.Number)) is not { } taker)
            {
                return;
            }

            foreach (var take in Takes)
            {
                var moved = take * step;
                var changed = rows.ToArray();
                changed[giver.Part.Number - 1] -= moved;
                changed[taker.Part.Number - 1] += moved;
                if (changed[giver.Part.Number - 1] < StripeShares.LeastRows || !OwnRows.TryPut(design, asked.Size, changed, out var own, out _))
                {
                    break;
                }

                if (attempt(asked with { Hat = own }) is { } tried && (best is not { } b || tried.IsAheadOf(b.Outcome)))
                {
                    best = (tried, giver.Part.Number, taker.Part.Number, changed, moved);
                    if (tried.Verdict == Verdict.Yes)
                    {
                        break;
                    }
                }
            }
        }

        if (best is { } found)
        {
            offer(RepairCode.FewerRows, found.Outcome, r => r with
            {
                Part = PartNames.Stripe(found.From),
                OtherPart = PartNames.Stripe(found.To),
                Rows = found.Rows,
                RowsMoved = found.Moved,
            });
        }
    }

    // A braid's strands cut from any leftovers instead of running on from the stripes or the thread.
    private void RePair()
    {
        var grouping = outcome.Plan.Puzzle.Grouping;
        var merged = answer.Parts.Where((p, i) => p.Part.Kind == PartKind.Strand && grouping.Groups[grouping.GroupOf[i]].Members.Count > 1)
            .GroupBy(p => p.Part.Number);
        Best(RepairCode.RePairBraid, merged.Select(b => (b.Key, asked with { Apart = [.. asked.Apart, .. b.Select(p => p.Part.Name)] })));
    }

    private void Drop(HatDesign design) => Best(
        RepairCode.DropBraid,
        answer.Parts.Where(p => p.Part.Kind == PartKind.Strand).Select(p => p.Part.Number).Distinct()
            .Where(n => !asked.Locks.Concat(asked.Never).Any(l => PartNames.Read(l.Part) is { Kind: PartKind.Strand } strand && strand.Number == n))
            .Select(n => (n, asked with { Hat = design with { Braids = design.Braids with { Without = [.. design.Braids.Without, n] } } })));

    private void Best(RepairCode code, IEnumerable<(int Braid, Question Asked)> options)
    {
        (Outcome Outcome, int Braid)? best = null;
        foreach (var (braid, question) in options)
        {
            if (attempt(question) is { } tried && (best is not { } b || tried.IsAheadOf(b.Outcome)))
            {
                best = (tried, braid);
                if (tried.Verdict == Verdict.Yes)
                {
                    break;
                }
            }
        }

        if (best is { } found)
        {
            offer(code, found.Outcome, r => r with { Part = PartNames.Braid(found.Braid) });
        }
    }

    private static string? LeftoverOf(Outcome outcome, string part)
    {
        var (puzzle, parts) = (outcome.Plan.Puzzle, outcome.Hat.Parts);
        var at = Enumerable.Range(0, parts.Count).First(i => parts[i].Name == part);
        var item = Array.Find(puzzle.Items, i => i.Group == puzzle.Grouping.GroupOf[at])!;
        return outcome.Plan.BinOf[item.Index] is >= 0 and var bin ? puzzle.Leftover(bin).Id : null;
    }
}
