using System.Collections.Concurrent;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests.Oracle;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>Bags that grow leftover by leftover, of any yarn: nothing that is said of the question ever gets worse.</summary>
public sealed class GrowingBagTests
{
    private const int Steps = 8;
    private static readonly int Bags = Long.Form ? 300 : 60;

    [Fact]
    public void A_bag_that_grows_never_steps_back()
    {
        var (back, unprovenWords, unprovenShort, shorts, steps) = (new ConcurrentBag<string>(), 0, 0, 0, 0);
        Parallel.For(0, Bags, new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = TestContext.Current.CancellationToken }, seed =>
        {
            var random = new Random(90_000 + seed);
            var question = Drawn(seed, random);
            Standing? before = null;
            for (var step = 0; step <= Steps; step++)
            {
                question = step == 0 ? question : question with
                {
                    Leftovers = [.. question.Leftovers,
                    Balls.Drawn($"g{step}", 2 + (60 * random.NextDouble()), random)]
                };
                var now = Standing.Of(question);
                Interlocked.Increment(ref steps);
                Interlocked.Add(ref unprovenWords, now.WordProven ? 0 : 1);
                Interlocked.Add(ref unprovenShort, now.Proven || now.Short == 0 ? 0 : 1);
                Interlocked.Add(ref shorts, now.Short == 0 ? 0 : 1);
                if (before is not null && now.WorseThan(before) is { } worse)
                {
                    back.Add($"bag {seed}, step {step}: {worse}\n{Written.AsCode(question)}");
                }

                before = now;
            }
        });
        ProofFigures.Tell($"{Bags} bags grown by {Steps} leftovers: steps back in word, reach or metres short",
            $"{back.Count}; {unprovenWords} of {steps} words and {unprovenShort} of {shorts} metres short not proven", "0 back");
        Assert.True(back.IsEmpty, string.Join('\n', back.Take(2)));
    }

    private static Question Drawn(int seed, Random random)
    {
        if (seed % 3 == 2)
        {
            return Instances.Of((Family)(seed % 8), 7_000 + seed) with { Like = [] };
        }

        var question = SmallInstances.Of(7_000 + seed) with { Like = [], Locks = [], Never = [] };
        var stripes = random.Next(2, 9);
        return question.Hat is not HatDesign || !question.Hat.TryNeeds(question.Size, stripes, out _, out _)
            ? question
            : question with
            {
                Stripes = stripes,
                Arrangement = question.Arrangement == Arrangement.InTurn && stripes < 3 ? Arrangement.OwnColours
                : question.Arrangement,
                InTurn = Math.Clamp(question.InTurn, 2, Math.Max(2, stripes - 1))
            };
    }
}
