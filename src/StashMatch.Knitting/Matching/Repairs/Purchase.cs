using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching.Repairs;

/// <summary>What to buy where nothing at hand will do: a ball for each group of parts that is short or too tight, at the class's usual ratio.</summary>
internal static class Purchase
{
    // On top of the planned metres: enough first for the allowance, then for the chance.
    private static readonly decimal[] Extra = [1.00m, 1.20m, 1.40m];

    private static readonly FibreBlend Wool = FibreBlend.TryParse("100% wool", out var wool, out _) ? wool : FibreBlend.Unknown;

    private const int MostOptions = 4;

    // Grams of a mini-skein [practice].
    private const decimal MiniSkein = 20;

    public static void Offer(
        Question asked, Outcome outcome, Func<Question, Outcome?> attempt, Action<RepairCode, Outcome?, Func<Repair, Repair>?> offer)
    {
        var ratio = new LabelRatio(
            100, MassUnit.Grams, WeightClasses.TypicalMetresPer100Grams(outcome.Hat.WeightClass), LengthUnit.Metres, RatioSource.Printed);
        (Outcome Outcome, List<(string Name, long Need)> Parts, List<Leftover> Balls)? best = null;
        foreach (var parts in Options(asked, outcome))
        {
            foreach (var extra in Extra)
            {
                var balls = parts.Select((need, i) => Ball(i, need.Need, extra, ratio, asked, outcome)).ToList();
                var tried = attempt(asked with { Leftovers = [.. asked.Leftovers, .. balls] });
                if (tried is not null && (best is not { } b || (tried.Verdict, -MiniSkeins(balls), -Weight(balls)).CompareTo((b.Outcome.Verdict, -MiniSkeins(b.Balls), -Weight(b.Balls))) > 0))
                {
                    best = (tried, parts, balls);
                }

                if (tried?.Verdict == Verdict.Yes)
                {
                    break;
                }
            }
        }

        if (best is { } buy)
        {
            offer(RepairCode.Buy, buy.Outcome, r => r with
            {
                BuyGrams = (int)Weight(buy.Balls),
                BuyMetres = Metres.FromMillimetres(buy.Balls.Sum(b => b.Held.Millimetres)),
                BuyBalls = buy.Balls.Count,
                BuyMiniSkeins = MiniSkeins(buy.Balls),
                Part = buy.Parts[0].Name,
            });
        }
    }

    private static decimal Weight(List<Leftover> balls) => balls.Sum(b => b.Weighing.Net.Value);

    private static int MiniSkeins(List<Leftover> balls) => balls.Sum(b => (int)Math.Ceiling(b.Weighing.Net.Value / MiniSkein));

    // What is short, in as few balls as the rules may let it come from and ball by ball; where all are covered, one ball for one group of
    // each kind, whichever mends most. Nobody buys a skein for each strand.
    private static List<List<(string Name, long Need)>> Options(Question asked, Outcome outcome)
    {
        var (puzzle, given) = (outcome.Plan.Puzzle, outcome.Plan.Given());
        HatPart PartOf(Item i) => puzzle.Hat.Parts[puzzle.Grouping.Groups[i.Group].EndsAt];
        (string Name, long Need) Told(Item i) => (PartOf(i).Name, i.Need);
        (string Name, long Need) Together(IEnumerable<Item> items) => (PartOf(items.MaxBy(i => (i.Need, -i.Index))!).Name, items.Sum(i => i.Need));
        var wanting = puzzle.Items.Where(i => given[i.Index] < i.Need).OrderByDescending(i => i.Need).ThenBy(i => i.Index).ToList();
        if (wanting.Count == 0)
        {
            return [.. puzzle.Items.OrderByDescending(i => i.Need).ThenBy(i => i.Index).DistinctBy(i => i.Class).Take(MostOptions).Select(i => new List<(string, long)> { Told(i) })];
        }

        // Strands of one side, and what stands beside nothing, may share; with nothing but the colour rule every other stripe may.
        bool IsSecond(Item i) => PartOf(i) is { Kind: PartKind.Strand } strand ? strand.Strand == 'b' : PartOf(i) is { Kind: PartKind.Stripe } stripe && stripe.Number % 2 == 0;
        List<(string, long)> Shared(Func<Item, bool> shares) =>
        [
            .. wanting.Where(i => !shares(i)).Select(Told),
            .. wanting.Where(shares).GroupBy(IsSecond).OrderByDescending(g => g.Sum(i => i.Need)).Select(Together),
        ];
        List<List<(string, long)>> options = [Shared(i => i.Role == Role.Free), [.. wanting.Select(Told)]];
        options = asked.Arrangement == Arrangement.AsItFalls ? [Shared(_ => true), .. options] : options;
        return [.. options.DistinctBy(o => o.Count)];
    }

    // Whole grams, up, of a plain wool that keeps a brim, in a colour of its own.
    private static Leftover Ball(int number, long need, decimal extra, LabelRatio ratio, Question asked, Outcome outcome)
    {
        var metres = Metres.FromMillimetres(need).WithAllowance(asked.AllowancePercent).Value * extra;
        var grams = Math.Clamp(Math.Ceiling(metres / ratio.MetresPerGram), 1, Weighing.MostGrams);
        return new Leftover($"\u0000bought {number}", "bought", new Weighing(Grams.From(grams), default, Grams.From(0.1m)), ratio)
        {
            Class = outcome.Hat.WeightClass,
            Fibre = Wool,
        };
    }
}
