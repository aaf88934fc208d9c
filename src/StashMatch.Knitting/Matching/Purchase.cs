using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>What to buy where nothing at hand will do: a ball for each group of parts that is short or too tight, at the class's usual ratio.</summary>
internal static class Purchase
{
    // On top of the planned metres: enough first for the allowance, then for the chance.
    private static readonly decimal[] Extra = [1.00m, 1.10m, 1.20m, 1.35m];

    public static void Offer(
        Question asked, Answer answer, Outcome outcome, Func<Question, Outcome?> attempt, Action<RepairCode, Outcome?, Func<Repair, Repair>?> offer)
    {
        var short_ = Wanting(answer, outcome);
        if (short_.Count == 0)
        {
            return;
        }

        var ratio = new LabelRatio(
            100, MassUnit.Grams, WeightClasses.TypicalMetresPer100Grams(outcome.Hat.WeightClass), LengthUnit.Metres, RatioSource.Printed);
        Outcome? best = null;
        var facts = (Grams: 0, Metres: default(Metres));
        foreach (var extra in Extra)
        {
            var bought = short_.Select((need, i) => Ball(i, need, extra, ratio, asked, outcome)).ToList();
            var tried = attempt(asked with { Leftovers = [.. asked.Leftovers, .. bought] });
            if (tried is not null && (best is null || tried.Verdict > best.Verdict))
            {
                best = tried;
                facts = ((int)bought.Sum(b => b.Weighing.Net.Value), Metres.FromMillimetres(bought.Sum(b => b.Held.Millimetres)));
            }

            if (tried?.Verdict == Verdict.Yes)
            {
                break;
            }
        }

        offer(RepairCode.Buy, best, r => r with { BuyGrams = facts.Grams, BuyMetres = facts.Metres, BuyBalls = short_.Count, Part = short_[0].Name });
    }

    // Groups that are short; where all are covered, the one on the weakest leftover.
    private static List<(string Name, long Need)> Wanting(Answer answer, Outcome outcome)
    {
        var (puzzle, binOf) = (outcome.Plan.Puzzle, outcome.Plan.BinOf);
        string Name(Item i) => puzzle.Hat.Parts[puzzle.Grouping.Groups[i.Index].EndsAt].Name;
        var wanting = puzzle.Items.Where(i => binOf[i.Index] < 0).ToList();
        if (wanting.Count == 0)
        {
            wanting = [.. puzzle.Items
                .Where(i => binOf[i.Index] >= 0 && puzzle.Bins[binOf[i.Index]].Id == answer.WeakestLeftover)
                .OrderByDescending(i => i.Need).Take(1)];
        }

        return wanting.OrderByDescending(i => i.Need).ThenBy(i => i.Index).Select(i => (Name(i), i.Need)).ToList();
    }

    // Whole grams, up, of a plain wool that keeps a brim, in a colour of its own.
    private static Leftover Ball(int number, (string Name, long Need) part, decimal extra, LabelRatio ratio, Question asked, Outcome outcome)
    {
        var metres = Metres.FromMillimetres(part.Need).WithAllowance(asked.AllowancePercent).Value * extra;
        var grams = Math.Clamp(Math.Ceiling(metres / ratio.MetresPerGram), 1, Weighing.MostGrams);
        return new Leftover($"\u0000bought {number}", "bought", new Weighing(Grams.From(grams), default, Grams.From(0.1m)), ratio)
        {
            Class = outcome.Hat.WeightClass,
            Fibre = FibreBlend.TryParse("100% wool", out var wool, out _) ? wool : FibreBlend.Unknown,
        };
    }
}
