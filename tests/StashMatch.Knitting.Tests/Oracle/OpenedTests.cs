using System.Collections.Concurrent;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>What stands in a grid, in a kit's table or beside a repair is what the question says when it is opened.</summary>
public sealed class OpenedTests
{
    private static readonly int Drawn = Long.Form ? 1_000 : 200;
    private static readonly Arrangement[] Arrangements = Enum.GetValues<Arrangement>();

    [Fact]
    public void A_cell_of_a_grid_says_what_its_question_says()
    {
        var asked = Draw("grid cells against the opened question", seed =>
        {
            var random = new Random(seed);
            var hat = HatOf(random);
            var bag = Enumerable.Range(0, random.Next(1, 16)).Select(i => Balls.Drawn($"l{i:00}", 3 + (70 * random.NextDouble()), random)).ToList();
            var allowance = new[] { 0m, 10, 20 }[random.Next(3)];
            var counts = new[] { random.Next(1, 5), random.Next(5, 9) };
            return FromThisBag.Cells(hat, bag, ["A", "F"], counts, Arrangements, allowance, TestContext.Current.CancellationToken)
                .OrderBy(_ => random.Next()).Take(4)
                .Select(c => (
                    FromThisBag.QuestionOf(hat, c.Size, c.Stripes, c.Arrangement, bag, allowance),
                    (Func<Answer?, string?>)(a => a is null ? (c.Cannot is null ? "cannot be knitted" : null)
                        : Differ((c.Verdict, c.Why, c.Sureness, c.Reach, c.Short), (a.Verdict, a.Why, a.Sureness, a.Reach, a.Short)))));
        });
        Assert.Equal(Drawn, asked);
    }

    [Fact]
    public void A_cell_of_a_kit_says_what_its_question_says()
    {
        var asked = Draw("kit cells against the opened question", seed =>
        {
            var random = new Random(seed);
            var hat = HatOf(random);
            var kit = new Kit("kit", [.. Enumerable.Range(0, random.Next(1, 5)).Select(i => SkeinOf($"s{i}", random))]);
            var question = new KitQuestion(hat, ["A", "F"], [random.Next(1, 5), random.Next(5, 9)], Arrangements);
            return KitCheck.Of(question, [kit], TestContext.Current.CancellationToken)[0].OrderBy(_ => random.Next()).Take(2).SelectMany(c =>
                new[] { (c, c.Nominal, Kit: kit.AtNominal()), (c, c.Lightest, Kit: kit.AtLightest(null)) })
                .Select(c => (
                    FromThisBag.QuestionOf(hat, c.c.Size, c.c.Stripes, c.c.Arrangement, c.Kit, question.AllowancePercent),
                    (Func<Answer?, string?>)(a => a is null || c.Item2 is null ? (a is null == c.Item2 is null ? null : "cannot be knitted")
                        : Differ((c.Item2.Verdict, c.Item2.Short), (a.Verdict, a.Short)))));
        });
        Assert.Equal(Drawn, asked);
    }

    [Fact]
    public void A_repair_says_what_its_question_says()
    {
        var asked = Draw("repairs against the opened question", seed =>
        {
            var question = seed % 2 == 0 ? SmallInstances.Of(20_000 + seed) : Instances.Of((Family)(seed / 2 % 8), 20_000 + seed);
            return Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken) && answer.Repairs.Count > 0
                ? answer.Repairs.OrderBy(r => new Random(seed).Next()).Take(4).Select(r => (
                    r.Code == RepairCode.WeighSwatch ? Known(r.Changed) : r.Changed,
                    (Func<Answer?, string?>)(a => a is null ? $"{r.Code}: cannot be knitted"
                        : Differ((r.Code, r.Verdict), (r.Code, a.Verdict)) ?? (Comparison.WordOf(a) > Comparison.WordOf(answer) ? null
                            : $"{r.Code} reaches no better word: {Comparison.WordOf(a)}"))))
                : [];
        });
        Assert.Equal(Drawn, asked);
    }

    // What a swatch may end in: the same need, known as well as a swatch can tell.
    private static Question Known(Question question) => question.Hat is HatDesign design && design.Usage.Spread > 0.05
        ? question with { Hat = design with { Usage = design.Usage with { Spread = 0.05, Calibrated = true } } } : question;

    private static string? Differ<T>(T cell, T opened)
        where T : struct => cell.Equals(opened) ? null : $"{cell} opens as {opened}";

    // Draws until so many have been opened, and fails with all that differ.
    private static int Draw(string what, Func<int, IEnumerable<(Question Question, Func<Answer?, string?> Differs)>> drawn)
    {
        var (opened, wrong, cancel) = (0, new ConcurrentBag<string>(), TestContext.Current.CancellationToken);
        Parallel.ForEach(Enumerable.Range(0, 20 * Drawn).SelectMany(s => drawn(s).Select(d => (Seed: s, d.Question, d.Differs))).Take(Drawn),
            new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = cancel }, d =>
        {
            Interlocked.Increment(ref opened);
            if (d.Differs(Matcher.TryAnswer(d.Question, out var answer, out _, cancel) ? answer : null) is { } told)
            {
                wrong.Add($"{d.Seed}: {told}\n{Written.AsCode(d.Question)}");
            }
        });
        ProofFigures.Tell(what, $"{wrong.Count} of {opened} differ", "0");
        Assert.True(wrong.IsEmpty, $"{wrong.Count} of {opened} differ\n{string.Join('\n', wrong.Order(StringComparer.Ordinal).Take(3))}");
        return opened;
    }

    private static HatDesign HatOf(Random random) => (random.Next(2) == 0 ? Samples.SideToSide : Samples.BrimUp) with
    {
        StripeCounts = null,
        Braids = new Braids(BraidPlaces.BetweenStripes, (StrandSource)random.Next(2)),
        Usage = random.Next(3) == 0 ? new Usage(1.04, 0.05, Calibrated: true) : Usage.Uncalibrated,
    };

    private static KitSkein SkeinOf(string name, Random random)
    {
        var like = Balls.Drawn(name, 60, random);
        return new KitSkein(name, Grams.From(new[] { 5, 10, 20, 50 }[random.Next(4)]), random.Next(1, 5), new LabelRatio(100, MassUnit.Grams, 400,
            LengthUnit.Metres, RatioSource.Printed))
        { Colour = like.Colour, Fibre = like.Fibre, Class = WeightClass.SuperFine };
    }
}
