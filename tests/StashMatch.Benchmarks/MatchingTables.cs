using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests.Oracle;

namespace StashMatch.Benchmarks;

/// <summary>The matcher against the solver, family by family, then its own growth and its share of proven answers.</summary>
internal static class MatchingTables
{
    private static readonly Arrangement[] Usual = [Arrangement.OwnColours, Arrangement.OneGround, Arrangement.AsItFalls];

    public static void AgainstTheSolver(bool isShort)
    {
        Table.Head(
            "The matcher against the fastest solver model that proved",
            "question", "questions", "ours, median", "ours, worst", "solver, median", "ratio, median", "ratio, worst", "solver proved", "we proved", "agree");
        var few = isShort ? 3 : 12;
        foreach (var leftovers in new[] { 20, 100, 300, 1_000 })
        {
            Table.Races($"covering, few depths, {leftovers} leftovers", Run(few, s => Race.ToCover(Large(leftovers, s))));
        }

        foreach (var (leftovers, stripes) in new[] { (60, 8), (60, 12), (300, 8), (300, 12), (1_000, 8), (1_000, 12) })
        {
            Table.Races(
                $"tiers 1 to 5, {leftovers} leftovers, {stripes} stripes",
                Run(few, s => Race.ToSettle(Instances.Large(leftovers, stripes, Usual[s % 3], s), patterns: leftovers <= 300 && !isShort)));
        }

        foreach (var leftovers in new[] { 20, 60 })
        {
            Table.Races($"kit of like balls, {leftovers}", Run(few, s => Race.ToSettle(Instances.Kit(leftovers, s), patterns: true)));
            Table.Races($"just enough, {leftovers} leftovers", Run(few, s => Race.ToSettle(Instances.JustEnough(leftovers, s), patterns: true)));
        }

        foreach (var stripes in new[] { 8, 12, 16, 24 })
        {
            Table.Races($"all-different depths, {stripes} stripes, 60 leftovers", Run(few, s => Race.ToSettle(Instances.Unlike(60, stripes, s), patterns: false)));
        }
    }

    /// <param name="isShort">Fewer seeds.</param>
    /// <param name="list">Whether to list what is not proven, or slow, beside the table.</param>
    public static void ProvenShare(bool isShort, bool list)
    {
        var seeds = isShort ? 150 : 1_200;
        Table.Head($"Share of answers proven best, {seeds} seeds", "family", "proven", "median", "worst");
        Share("core: few depths, 12 to 300 leftovers, 4 to 12 stripes", seeds, list, s => Instances.Large(new[] { 12, 30, 60, 120, 300 }[s % 5], 4 + (s % 9), (Arrangement)(s % 5), s));
        Share("all-different depths, 24 stripes, 60 leftovers", seeds / 60, list, s => Instances.Unlike(60, 24, s));
        foreach (var family in Enum.GetValues<Family>())
        {
            Share($"{family} (as in the tests)", seeds / 8, list, s => Instances.Of(family, 1_000 + s));
        }
    }

    public static void Growth(bool isShort)
    {
        Table.Head("Growth: tiers 1 to 5", "leftovers", "stripes", "median", "worst", "median against 60 leftovers");
        foreach (var stripes in new[] { 8, 12 })
        {
            var at60 = 0.0;
            foreach (var leftovers in new[] { 60, 1_000, 10_000 })
            {
                var times = Enumerable.Range(0, isShort ? 6 : 30).Select(s => Race.Timed(() => Inside.Settle(Race.Fresh(Instances.Large(leftovers, stripes, Usual[s % 3], s)))).Milliseconds).ToList();
                at60 = leftovers == 60 ? Table.Median(times) : at60;
                Table.Row($"{leftovers}", $"{stripes}", Table.Figure(Table.Median(times)), Table.Figure(times.Max()), Table.Times(Table.Median(times) / at60));
            }
        }
    }

    public static void Colours(bool isShort)
    {
        Table.Head("Order of colours, all else as good", "order", "questions", "ours, median", "ours, worst", "joint model, median", "joint model proved", "within 3 % of it", "furthest off");
        foreach (var order in new[] { ColourOrder.Gradient, ColourOrder.Contrast })
        {
            var (ours, theirs, gaps) = (new List<double>(), new List<double>(), new List<double>());
            for (var seed = 100; seed < (isShort ? 108 : 140); seed++)
            {
                var question = Instances.Tied(14, 8, seed);
                if (Inside.SettleWhole(question) is not { Word: not Knitting.Matching.Search.Word.No, Plan: { Proven: true } plan })
                {
                    continue;
                }

                var (milliseconds, ordered) = Race.Timed(() => Inside.InOrder(plan, order));
                var sheet = Sheet.Of(question, Race.NeedsOf(question));
                var ballOf = Inside.BallOf(ordered, sheet);
                long[] bears = [.. question.Leftovers.Select(l => plan.Puzzle.BinOf(l.Id) is >= 0 and var bin ? plan.Capacity.Of[bin] : 0)];
                var gradient = order == ColourOrder.Gradient;
                var (joint, best) = Race.Once(() => ColourOrderModel.Solve(Sheet.Of(question, Race.NeedsOf(question)), bears, plan.Puzzle.BrimWidth, sheet.Worth(bears, ballOf), gradient));
                ours.Add(milliseconds);
                theirs.Add(joint);
                if (best.Proof == Proof.Best)
                {
                    gaps.Add(Math.Abs(ColourOrderModel.SumOf(sheet, ballOf, gradient) - best.Value) / (double)best.Value);
                }
            }

            Table.Row(
                $"{order}", $"{ours.Count}", Table.Figure(Table.Median(ours)), Table.Figure(ours.Max()), Table.Figure(Table.Median(theirs)),
                Table.Share(gaps.Count, ours.Count), Table.Share(gaps.Count(g => g <= 0.03), Math.Max(1, gaps.Count)), $"{100 * gaps.DefaultIfEmpty().Max():0.0} %");
        }
    }

    public static void Memory()
    {
        Table.Head("Bytes allocated by one warm match of 60 leftovers", "question", "plan alone", "answer with repairs");
        foreach (var arrangement in Usual)
        {
            var question = Instances.Large(60, 8, arrangement, 1);
            long Bytes(Action work)
            {
                work();
                work();
                var before = GC.GetAllocatedBytesForCurrentThread();
                work();
                return GC.GetAllocatedBytesForCurrentThread() - before;
            }

            Table.Row($"{arrangement}", $"{Bytes(() => Inside.Settle(question)):N0}", $"{Bytes(() => Matcher.TryAnswer(question, out _, out _)):N0}");
        }
    }

    private static Question Large(int leftovers, int seed) => Instances.Large(leftovers, seed % 2 == 0 ? 8 : 12, Usual[seed % 3], seed);

    private static List<Race> Run(int count, Func<int, Race> race)
    {
        race(count);
        return [.. Enumerable.Range(0, count).Select(race)];
    }

    private static void Share(string name, int seeds, bool list, Func<int, Question> question)
    {
        var (proven, times) = (0, new List<double>());
        for (var seed = 0; seed < seeds; seed++)
        {
            var asked = question(seed);
            var (milliseconds, settled) = Race.Once(() => Inside.SettleWhole(asked)!);
            var plan = settled.Plan;
            proven += plan.Proven ? 1 : 0;
            if (list && (!plan.Proven || milliseconds > 100))
            {
                Console.Error.WriteLine($"{name}, seed {seed}: {asked.Arrangement}, {asked.Leftovers.Count} leftovers, {asked.Stripes} stripes: proven {plan.Proven}, {settled.Word}, rung {settled.Sureness}, {milliseconds:0} ms");
            }

            times.Add(milliseconds);
        }

        Table.Row(name, Table.Share(proven, seeds), Table.Figure(Table.Median(times)), Table.Figure(times.Max()));
    }
}
