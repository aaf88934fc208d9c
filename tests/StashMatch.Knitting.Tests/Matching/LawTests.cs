using System.Collections.Concurrent;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Tests.Oracle;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>
/// What must hold between the answers to two questions, with every fibre, scale, label, reserve and arrangement, of knitters known and
/// unknown. An answer that says it is only the best found may fall short of any of these, so a pair counts where both are proven.
/// </summary>
public sealed class LawTests
{
    private static readonly int Times = Long.Form ? 600 : 60;

    [Fact]
    public void The_order_of_the_leftovers_changes_nothing() => Hold(
        (q, random) => q with { Leftovers = [.. q.Leftovers.OrderBy(_ => random.Next())] },
        (one, other) => !one.Answer.Parts.SequenceEqual(other.Answer.Parts) ? "other parts"
            : Same(one, other) ?? (one.Answer.Sureness == other.Answer.Sureness && one.Answer.TooFew == other.Answer.TooFew ? null : "another rung"));

    [Fact]
    public void The_order_of_a_printed_tables_lines_changes_nothing_that_is_said_of_the_question() => Hold(
        (q, random) => q.Hat is PrintedHat ? WithLines(q, lines => [.. lines.OrderBy(_ => random.Next())]) : null, Same);

    [Fact]
    public void Another_leftover_of_any_yarn_never_hurts() => Hold(
        (q, random) => q with { Leftovers = [.. q.Leftovers, Balls.Drawn("zz", 1 + (80 * random.NextDouble()), random)] }, NoWorse);

    [Fact]
    public void More_grams_on_the_same_scale_and_label_never_hurt() => Hold(
        (q, random) => Change(q, random, l => l with
        {
            Weighing = new Weighing(l.Weighing.Gross + Grams.From(l.Weighing.ScaleStep.Value * random.Next(1,
            40)), l.Weighing.Tare, l.Weighing.ScaleStep)
        }), NoWorse);

    [Fact]
    public void A_part_that_takes_less_never_hurts() => Hold(
        (q, random) => q.Hat is PrintedHat
            ? random.Next(100) is var at ? WithLines(q, lines => [.. lines.Select((l, i) => i == at % lines.Count ? l with { Length = l.Length * 0.8m }
                : l)]) : null
            : q with
            {
                Hat = (HatDesign)q.Hat with
                {
                    Usage = ((HatDesign)q.Hat).Usage with
                    {
                        Factor = ((HatDesign)q.Hat).Usage.Factor * (
                0.8 + (0.2 * random.NextDouble()))
                    }
                }
            },
        NoWorse);

    [Fact]
    public void Less_reserve_never_hurts() => Hold((q, random) => q with { AllowancePercent = q.AllowancePercent * random.Next(10) / 10 }, NoWorse);

    [Fact]
    public void A_lower_target_never_hurts() => Hold((q, random) => q with
    {
        Target = Math.Min(q.Target,
        (double)Rungs.All[random.Next(2, Rungs.All.Count)])
    }, NoWorse);

    [Fact]
    public void A_looser_colour_rule_never_hurts() => Hold((q, _) => q with { Blend = true }, NoWorse);

    [Fact]
    public void What_is_known_better_never_hurts() => Hold(
        (q, _) => q with
        {
            Hat = q.Hat is HatDesign d ? d with { Usage = d.Usage with { Spread = d.Usage.Spread / 2 } }
            : ((PrintedHat)q.Hat) with { Weighed = ((PrintedHat)q.Hat).AsPrinted with { Spread = 0.03 } }
        }, NoWorse);

    [Fact]
    public void A_leftover_of_known_colour_wound_into_two_never_helps_where_anything_may_go_anywhere() => Hold(
        (q, random) =>
        {
            var whole = q.Leftovers[random.Next(q.Leftovers.Count)];
            var (step, net) = (whole.Weighing.ScaleStep.Value, whole.Weighing.Net.Value);
            var first = Math.Floor(net / step * (decimal)random.NextDouble()) * step;
            if (whole.Colour is null || first <= 0 || first >= net || q.Arrangement != Arrangement.AsItFalls || q.Locks.Concat(q.Never).Any(p =>
                p.Leftover == whole.Id))
            {
                return null;
            }

            Leftover Of(string id, decimal grams) => whole with
            {
                Id = id,
                Weighing = new Weighing(Grams.From(grams) + whole.Weighing.Tare,
                whole.Weighing.Tare, whole.Weighing.ScaleStep)
            };
            return q with { Leftovers = [.. q.Leftovers.Where(l => l.Id != whole.Id), Of("z1", first), Of("z2", net - first)] };
        },
        (whole, split) => whole.WorseThan(split));

    [Fact]
    public void Everything_three_times_as_long_stands_alike() => Hold(
        // What is finished and what is still useful is fixed in metres, so how tidy it is cannot be asked from outside.
        (q, _) => q.Hat is not PrintedHat ? null : WithLines(
            q with
            {
                Leftovers = [.. q.Leftovers.Select(l => l with { Ratio = new LabelRatio(l.Ratio.Mass, l.Ratio.MassUnit, l.Ratio.Length * 3,
                l.Ratio.LengthUnit, l.Ratio.Source), Class = l.ClassOrGuess })]
            },
            lines => [.. lines.Select(l => l with { Length = l.Length * 3 })]),
        (one, three) => !one.Proven || !three.Proven || (three.Sure == one.Sure && three.Answer.Sureness == one.Answer.Sureness
            && Math.Abs(three.Short - (3 * one.Short)) <= 3 * one.Answer.Leftovers.Count) ? null : "not alike");

    [Fact]
    public void With_the_count_left_open_it_is_the_best_of_all_counts()
    {
        for (var seed = 0; seed < Times / 4; seed++)
        {
            var random = new Random(seed);
            var (least, most) = (1 + random.Next(3), 4 + random.Next(3));
            var hat = Samples.SideToSide with { StripeCounts = new StripeCounts(least, most), Construction = (Construction)random.Next(3) };
            var asked = new Question(hat, "ACFH"[random.Next(4)].ToString(),
                [.. Enumerable.Range(0, random.Next(2, 9)).Select(i => Balls.Drawn($"l{i}", 4 + (90 * random.NextDouble()), random))])
            {
                Arrangement = new[] { Arrangement.OwnColours, Arrangement.OneGround, Arrangement.OneThread, Arrangement.AsItFalls }[random.Next(4)],
            };
            var open = Standing.Of(asked);
            var counts = Enumerable.Range(least, most - least + 1)
                .Select(n => Matcher.TryAnswer(asked with { Stripes = n }, out _, out _, TestContext.Current.CancellationToken)
                    ? Standing.Of(asked with { Stripes = n }) : null).OfType<Standing>().ToList();
            var best = counts.MaxBy(s => (s.Sure, -s.Short, s.Answer.Hat.Stripes))!;
            Assert.True(!counts.TrueForAll(c => c.Proven) || (best.Sure, best.Short, best.Answer.Hat.Stripes) == (open.Sure, open.Short,
                open.Answer.Hat.Stripes), $"{seed}: {open} of {open.Answer.Hat.Stripes}, where it is {best} of {best.Answer.Hat.Stripes}");
        }
    }

    [Fact]
    public void What_goes_in_and_what_is_left_is_what_is_held()
    {
        foreach (var question in Drawn().Take(Times))
        {
            var answer = Standing.Of(question).Answer;
            Checker.Check(answer, question);
            foreach (var l in answer.Leftovers)
            {
                Assert.Equal(l.Leftover.Held, l.Used + l.Left);
                Assert.Equal(l.Used.Millimetres, answer.Parts.SelectMany(p => p.All).Where(a => a.Leftover == l.Leftover.Id).Sum(a => a.Metres.Millimetres));
            }
        }
    }

    [Fact]
    public void A_larger_size_never_needs_less_in_all()
    {
        foreach (var (brimUp, neighbours, stripes, at) in from b in new[] { true, false }
                                                          from n in new[] { true, false }
                                                          from s in Enumerable.Range(4,
            9)
                                                          from a in Enumerable.Range(0, 7)
                                                          select (b, n, s, a))
        {
            var hat = (brimUp ? Samples.BrimUp : Samples.SideToSide) with
            {
                Braids = new Braids(BraidPlaces.BetweenStripes, neighbours
                ? StrandSource.Neighbours : StrandSource.Scraps)
            };
            long InAll(int size) => hat.Needs(hat.Sizes[size].Size, stripes).Parts.Sum(p => p.Need(hat.Usage).Millimetres);
            Assert.True(InAll(at + 1) >= InAll(at));
        }
    }

    private static string? NoWorse(Standing before, Standing after) => after.WorseThan(before);

    private static string? Same(Standing one, Standing other) => one.WorseThan(other) ?? other.WorseThan(one);

    // Small questions and large ones by turns.
    private static IEnumerable<Question> Drawn() =>
        Enumerable.Range(0, 100_000).Select(i => i % 3 < 2 ? SmallInstances.Of(5_000 + i) with { Like = [] } : Instances.Of((Family)(i / 3 % 8), 5_000 + i));

    private static Question? Change(Question q, Random random, Func<Leftover, Leftover> change)
    {
        var at = random.Next(q.Leftovers.Count);
        return q with { Leftovers = [.. q.Leftovers.Select((l, i) => i == at ? change(l) : l)] };
    }

    private static Question WithLines(Question q, Func<IReadOnlyList<PrintedLine>, PrintedLine[]> change)
    {
        var hat = (PrintedHat)q.Hat;
        return q with { Hat = hat with { Sizes = [hat.Sizes[0] with { Lines = change(hat.Sizes[0].Lines) }] } };
    }

    private static void Hold(Func<Question, Random, Question?> change, Func<Standing, Standing, string?> wrong)
    {
        var (seen, proven, broken) = (0, 0, new ConcurrentBag<(int, string)>());
        var pairs = Drawn().Select((q, i) => (Seed: i, One: q, Other: change(q, new Random(i)))).Where(p => p.Other is not null).Take(Times);
        Parallel.ForEach(pairs, new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = TestContext.Current.CancellationToken }, pair =>
        {
            var (one, other) = (Standing.Of(pair.One), Standing.Of(pair.Other!));
            Interlocked.Increment(ref seen);
            Interlocked.Add(ref proven, one.Proven && other.Proven ? 1 : 0);
            if (wrong(one, other) is { } told)
            {
                broken.Add((pair.Seed, $"{pair.Seed}: {told}\n{one}\n{other}\n{Written.AsCode(pair.One)}{Written.AsCode(pair.Other!)}"));
            }
        });
        ProofFigures.Tell($"law: {TestContext.Current.TestMethod!.MethodName.Replace('_', ' ')}",
            $"{broken.Count} broken, both answers proven in {Proofs.Percent(proven, seen)}", "0 broken");
        Assert.True(broken.IsEmpty, broken.IsEmpty ? "" : $"{broken.Count} broken, the first: {broken.MinBy(b => b.Item1).Item2}");
        Assert.True(proven * 10 >= seen * 9, $"{proven} of {seen} pairs proven");
    }
}
