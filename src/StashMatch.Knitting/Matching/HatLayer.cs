using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>Which hat is tried first, and how its leftovers are picked.</summary>
internal enum LayingOrder
{
    /// <summary>The hat that takes fewest metres, tidily.</summary>
    FewestMetres,

    /// <summary>The hat whose longest part is shortest, tidily.</summary>
    ShortestParts,

    /// <summary>The hat that takes fewest metres, from the first plan found.</summary>
    FewestMetresAtOnce,
}

/// <summary>Lays hats out one by one until no kind is covered any more.</summary>
internal sealed class HatLayer(IReadOnlyList<HatKind> kinds, LayingOrder way, CancellationToken cancel)
{
    /// <summary>Adds hats to <paramref name="hats"/>, never more than <paramref name="most"/> in all, and returns what stays of the leftovers.</summary>
    public List<Leftover> Lay(IReadOnlyList<Leftover> leftovers, List<BagHat> hats, int most)
    {
        var bag = leftovers.ToList();
        var order = way == LayingOrder.ShortestParts
            ? kinds.OrderBy(k => k.Longest).ThenBy(k => k.Total)
            : kinds.OrderBy(k => k.Total).ThenBy(k => k.Longest);

        // What the bag does not cover now it never covers again: it only gets less.
        foreach (var kind in order)
        {
            while (hats.Count < most && kind.Total <= bag.Sum(l => l.Held.Millimetres) && Next(kind, bag) is var (hat, stays))
            {
                hats.Add(hat);
                bag = stays;
            }
        }

        return bag;
    }

    private (BagHat Hat, List<Leftover> Stays)? Next(HatKind kind, List<Leftover> bag)
    {
        var question = kind.Question with { Leftovers = bag };
        foreach (var set in kind.HasBrim ? BrimSet.Widening : [null])
        {
            cancel.ThrowIfCancellationRequested();
            var planner = new Planner(Puzzle.Of(question, kind.Hat, set), cancel);
            if (planner.Feasible(question.AllowancePercent, out _) is not { } plan)
            {
                continue;
            }

            if (way != LayingOrder.FewestMetresAtOnce)
            {
                plan = planner.Tidied(plan);
            }

            var answer = Answers.Of(Outcome.Of(question, kind.Hat, plan), question.AllowancePercent);
            Checker.Check(answer, question);
            var stays = answer.Leftovers.Select(l => l.Used.Millimetres == 0 ? l.Leftover : Rest(l.Leftover, l.Used.WithAllowance(question.AllowancePercent))).OfType<Leftover>();
            return (new BagHat(kind.Hat.Size, kind.Hat.Stripes, question.Arrangement, answer.Parts), [.. stays]);
        }

        return null;
    }

    // What stays once a hat's need and its allowance are taken off, as a weighing of its own, rounded down to the milligram; null for nothing.
    private static Leftover? Rest(Leftover of, Metres taken)
    {
        var milligrams = (long)Math.Floor(of.Ratio.GramsOf(of.Held - taken) * 1000);
        return milligrams == 0 ? null : of with { Weighing = new Weighing(Grams.FromMilligrams(milligrams), default, of.Weighing.ScaleStep) };
    }
}
