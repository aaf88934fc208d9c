using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Bags;

/// <summary>Lays hats out until no kind is covered any more.</summary>
internal sealed class HatLayer(IReadOnlyList<HatKind> kinds, CancellationToken cancel)
{
    /// <summary>Adds as many hats of one kind as can be laid in one go, then one by one of every kind, that which takes least first.</summary>
    /// <param name="leftovers">The leftovers.</param>
    /// <param name="first">The kind to lay in one go.</param>
    /// <param name="hats">Gets the hats, never more than <paramref name="most"/> in all.</param>
    /// <param name="most">So many hats are enough.</param>
    /// <returns>What stays of the leftovers.</returns>
    public List<Leftover> Lay(IReadOnlyList<Leftover> leftovers, HatKind? first, List<BagHat> hats, int most)
    {
        List<Leftover> bag = [.. leftovers];
        if (first is not null)
        {
            bag = AtOnce(first, bag, hats, most);
        }

        // What the bag does not cover now it never covers again: it only gets less.
        foreach (var kind in kinds)
        {
            while (hats.Count < most && kind.Total <= bag.Sum(l => l.Held.Millimetres) && Next(kind, bag) is var (hat, stays))
            {
                hats.Add(hat);
                bag = stays;
            }
        }

        return bag;
    }

    /// <summary>What each leftover bears for a yes, millimetres.</summary>
    public static IReadOnlyList<long> Bears(HatKind kind, IReadOnlyList<Leftover> bag) => Tiers.CapacityOfYes(Puzzle.Of(kind.Question with { Leftovers = bag }, kind.Hat)).Of;

    private List<Leftover> AtOnce(HatKind kind, List<Leftover> bag, List<BagHat> hats, int most)
    {
        var question = kind.Question with { Leftovers = bag };
        var limit = Math.Min(most - hats.Count, HatLimit.Of([kind], Bears(kind, bag)).Most);
        for (var count = limit; count > 1; count--)
        {
            if (new HatsAtOnce(kind, cancel).Lay(question, count) is not { } each)
            {
                continue;
            }

            var taken = new Dictionary<string, long>(StringComparer.Ordinal);
            foreach (var binOf in each)
            {
                var puzzle = Puzzle.Of(question, kind.Hat);
                var answer = Checked(question, new Plan(puzzle, binOf, Tiers.CapacityOfYes(puzzle), true));
                hats.Add(new BagHat(kind.Hat.Size, kind.Hat.Stripes, question.Arrangement, answer.Parts));
                foreach (var l in answer.Leftovers.Where(l => l.Used.Millimetres > 0))
                {
                    taken[l.Leftover.Id] = taken.GetValueOrDefault(l.Leftover.Id) + l.Used.Millimetres;
                }
            }

            return Stays(kind, bag, taken);
        }

        return bag;
    }

    private (BagHat Hat, List<Leftover> Stays)? Next(HatKind kind, List<Leftover> bag)
    {
        var question = kind.Question with { Leftovers = bag };
        cancel.ThrowIfCancellationRequested();
        if (Tiers.PlanOfYes(question, kind.Hat, cancel) is not { } plan)
        {
            return null;
        }

        var answer = Checked(question, Finishing.Tidied(plan, cancel));
        var taken = answer.Leftovers.ToDictionary(l => l.Leftover.Id, l => l.Used.Millimetres, StringComparer.Ordinal);
        return (new BagHat(kind.Hat.Size, kind.Hat.Stripes, question.Arrangement, answer.Parts), Stays(kind, bag, taken));
    }

    private static Answer Checked(Question question, Plan plan)
    {
        var answer = Answers.Of(new Outcome(question, plan) { Word = Word.Yes, Why = Why.Covered, Sureness = question.Target, Reach = question.Target });
        Checker.Check(answer, question);
        return answer;
    }

    // What is taken of what a leftover bears is taken of what it holds.
    private static List<Leftover> Stays(HatKind kind, List<Leftover> bag, Dictionary<string, long> taken)
    {
        var puzzle = Puzzle.Of(kind.Question with { Leftovers = bag }, kind.Hat);
        var bears = Tiers.CapacityOfYes(puzzle).Of;
        return [.. bag.Select(l => taken.GetValueOrDefault(l.Id) is > 0 and var millimetres ? Rest(l, millimetres, bears[puzzle.BinOf(l.Id)]) : l).OfType<Leftover>()];
    }

    // As a weighing of its own, rounded down to the milligram; null for nothing.
    private static Leftover? Rest(Leftover of, long taken, long bears)
    {
        var milligrams = (long)Math.Floor(of.Weighing.Net.Milligrams * (1 - (taken / (decimal)bears)));
        return milligrams <= 0 ? null : of with { Weighing = Weighing.Together(Grams.FromMilligrams(milligrams), of.Weighing) };
    }
}
