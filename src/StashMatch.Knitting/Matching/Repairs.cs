using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>What mends a disappointing answer, cheapest first, each matched again with a verdict of its own.</summary>
internal static class Repairs
{
    private static readonly Arrangement[] All =
        [Arrangement.OwnColours, Arrangement.OneThread, Arrangement.InTurn, Arrangement.OneGround, Arrangement.AsItFalls];

    public static IReadOnlyList<Repair> For(Question question, Answer answer, Outcome outcome, CancellationToken cancel)
    {
        if (answer.Verdict == Verdict.Yes)
        {
            return [];
        }

        var asked = question with { Stripes = outcome.Hat.Stripes };
        Outcome? Try(Question other) => Matcher.Best(other, out _, cancel, onlyIfCovered: true) is { } tried && IsBetter(tried, outcome) ? tried : null;
        var repairs = new List<Repair>();
        void Offer(RepairCode code, Outcome? tried, Func<Repair, Repair>? facts = null)
        {
            if (tried is not null)
            {
                var repair = new Repair(code, tried.Verdict, tried.Chance);
                repairs.Add(facts is null ? repair : facts(repair));
            }
        }

        var blended = question.Blend ? null : Try(asked with { Blend = true });
        if (answer.Why == Why.Colour)
        {
            Offer(RepairCode.Blend, blended);
        }

        if (MoveOne(asked, answer, Try) is var (pairing, moved))
        {
            Offer(RepairCode.MoveOne, moved, r => r with { Part = pairing.Part, Leftover = pairing.Leftover });
        }

        Offer(RepairCode.FewerStripes, FewerStripes(asked, outcome, Try, out var count), r => r with { Stripes = count });
        foreach (var arrangement in All.Where(a => a != asked.Arrangement))
        {
            Offer(RepairCode.AnotherArrangement, Try(asked with { Arrangement = arrangement }), r => r with { Arrangement = arrangement });
        }

        if (answer.Why != Why.Colour)
        {
            Offer(RepairCode.Blend, blended);
        }

        WiderBrim(asked, outcome, Try, Offer);
        if (question.Hat is HatDesign { Brim: { } brim } design)
        {
            if (brim.Folded)
            {
                Offer(RepairCode.UnfoldBrim, Try(asked with { Hat = design with { Brim = brim with { Folded = false } } }));
            }

            if (brim.BindOff == EdgeKind.Stretchy)
            {
                Offer(RepairCode.ThriftierBindOff, Try(asked with { Hat = design with { Brim = brim with { BindOff = EdgeKind.Ordinary } } }));
            }
        }

        var sizes = question.Hat.SizeNames.TakeWhile(s => s != question.Size).Reverse();
        var smaller = sizes.Select(s => (Size: s, Tried: Try(asked with { Size = s }))).FirstOrDefault(s => s.Tried is not null);
        Offer(RepairCode.SmallerSize, smaller.Tried, r => r with { Size = smaller.Size });
        if (answer.Why == Why.NotCalibrated)
        {
            repairs.Add(new Repair(
                RepairCode.WeighSwatch, Verdict.Yes, outcome.Plan.ChanceOfEnough(outcome.Hat.Usage with { Spread = Outcome.CalibratedSpread })));
        }

        Purchase.Offer(asked, outcome, Try, Offer);
        return repairs;
    }

    private static bool IsBetter(Outcome tried, Outcome than) =>
        tried.Verdict > than.Verdict
        || (tried.Verdict == than.Verdict && tried.Verdict == Verdict.OnlyJust && tried.Chance > than.Chance + 0.05);

    private static Outcome? FewerStripes(Question asked, Outcome outcome, Func<Question, Outcome?> attempt, out int count)
    {
        Outcome? best = null;
        count = 0;
        foreach (var fewer in asked.Hat.CountsFor(asked.Size).Where(n => n < outcome.Hat.Stripes).OrderDescending())
        {
            if (attempt(asked with { Stripes = fewer }) is { } tried && (best is null || tried.Verdict > best.Verdict))
            {
                (best, count) = (tried, fewer);
                if (tried.Verdict == Verdict.Yes)
                {
                    break;
                }
            }
        }

        return best;
    }

    // One part, taken out of its letter or moved off the weakest leftover, from another leftover: the first that mends most.
    private static (Pairing Pairing, Outcome Outcome)? MoveOne(Question asked, Answer answer, Func<Question, Outcome?> attempt)
    {
        var touched = answer.Parts
            .Where(p => p.Short.Millimetres > 0 || (answer.WeakestLeftover is { } weakest && p.From?.Leftover == weakest))
            .Where(p => asked.Hat is PrintedHat && !asked.Locks.Any(l => l.Part == p.Part.Name))
            .OrderBy(p => p.Need.Millimetres);
        (Pairing, Outcome)? best = null;
        foreach (var part in touched)
        {
            foreach (var other in answer.Leftovers.Where(l => l.Left >= part.Need && l.Leftover.Id != part.From?.Leftover).OrderByDescending(l => l.Left).Take(4))
            {
                var pairing = new Pairing(part.Part.Name, other.Leftover.Id);
                if (attempt(asked with { Locks = [.. asked.Locks, pairing] }) is { } tried && (best is null || tried.Verdict > best.Value.Item2.Verdict))
                {
                    best = (pairing, tried);
                    if (tried.Verdict == Verdict.Yes)
                    {
                        return best;
                    }
                }
            }
        }

        return best;
    }

    // The narrowest brim set that covers has decided; a wider one is offered where its verdict is better.
    private static void WiderBrim(
        Question asked, Outcome outcome, Func<Question, Outcome?> attempt, Action<RepairCode, Outcome?, Func<Repair, Repair>?> offer)
    {
        var plan = outcome.Plan;
        if (Array.Find(plan.Puzzle.Items, i => i.HasBrim) is not { } brim
            || plan.BinOf[brim.Index] is not (>= 0 and var used)
            || asked.Locks.Any(l => l.Part == PartNames.Brim))
        {
            return;
        }

        var width = BrimSet.WidthOf(plan.Puzzle.Leftover(used).Brim);
        var best = Enumerable.Range(width + 1, BrimSet.Widening.Count - width - 1)
            .Select(w => attempt(asked with { BrimFrom = w }))
            .OfType<Outcome>()
            .OrderByDescending(o => o.Verdict).ThenByDescending(o => o.Chance)
            .FirstOrDefault();
        offer(RepairCode.WiderBrimSet, best, r => r with { Part = PartNames.Brim, Leftover = BrimOf(best!) });
    }

    private static string BrimOf(Outcome outcome) =>
        outcome.Plan.Puzzle.Leftover(outcome.Plan.BinOf[Array.Find(outcome.Plan.Puzzle.Items, i => i.HasBrim)!.Index]).Id;
}
