using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Odds;

/// <summary>Own sureness and joint chance against draws of what they are the chance of: within 0.002. <c>STASHMATCH_LONG=1</c> draws 60 hats more, four million times each.</summary>
public sealed class SimulatedDrawsTests
{
    private const double Within = 0.002;
    private static readonly bool Long = Environment.GetEnvironmentVariable("STASHMATCH_LONG") == "1";

    /// <summary>The named cases.</summary>
    public static TheoryData<string> Cases => [.. All.Keys];

    private static Dictionary<string, (double Spread, Load[] Loads)> All { get; } = new(StringComparer.Ordinal)
    {
        ["plenty and tight, uncalibrated"] = (0.12, [Balls.On(Balls.Of(25, 0.1m), 70), Balls.On(Balls.Of(5.6m, 0.1m), 21), Balls.On(Balls.Of(8.5m, 0.1m), 33)]),
        ["printed table"] = (0.06, [Balls.On(Balls.Of(5.3m, 0.1m), 20), Balls.On(Balls.Of(2.8m, 0.1m), 10), Balls.On(Balls.Of(1.5m, 0.1m), 5), Balls.On(Balls.Of(10.5m, 0.1m), 40)]),
        ["a scale of 1 g, with and without a tare"] = (0.12, [Balls.On(Balls.Of(6, 1), 19), Balls.On(Balls.Of(3, 1), 9), Balls.On(Balls.Of(10, 1, 20), 30)]),
        ["crumbs of 0.5 g"] = (0.05, [Balls.On(Balls.Of(0.5m, 0.1m), 1.7), Balls.On(Balls.Of(0.5m, 0.1m, 2), 1.5), Balls.On(Balls.Of(0.5m, 0.01m), 1.8), Balls.On(Balls.Of(0.5m, 1), 1)]),
        ["100 g, guessed and measured"] = (0.12, [Balls.On(Balls.Of(100, 1, source: RatioSource.Guessed), 320), Balls.On(Balls.Of(38, 1, source: RatioSource.Measured, mass: 4, metres: 10), 80)]),
        ["eight alike and tight"] = (0.12, [.. Enumerable.Range(0, 8).Select(_ => Balls.On(Balls.Of(9.3m, 0.1m), 37))]),
        ["a kit nobody weighed, the knitter known"] = (0.05, [.. Enumerable.Range(0, 5).Select(_ => Balls.On(Balls.Of(10, 0), 37))]),
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Own_sureness_and_joint_chance_agree_with_draws(string name)
    {
        var (spread, loads) = All[name];
        Compare(name, spread, loads, Long ? 8_000_000 : 1_000_000, name.Length);
    }

    [Fact]
    public void So_they_do_on_hats_drawn_at_random()
    {
        var random = new Random(20261128);
        T One<T>(params T[] of) => of[random.Next(of.Length)];
        for (var hat = 0; hat < (Long ? 60 : 2); hat++)
        {
            var loads = Enumerable.Range(0, random.Next(1, 9)).Select(_ =>
            {
                // From 0.5 g to 100 g, every octave as likely.
                var grams = Math.Round((decimal)(0.5 * Math.Pow(200, random.NextDouble())), 2);
                var ball = Balls.Of(grams, One(0.01m, 0.1m, 0.5m, 1m), One(0m, 0m, 5m), One(RatioSource.Printed, RatioSource.Printed, RatioSource.Measured, RatioSource.Guessed), 10, 40);
                return Balls.On(ball, (double)grams * 4 * (0.6 + (0.45 * random.NextDouble())));
            }).ToArray();
            Compare($"hat {hat}", One(0.05, 0.06, 0.12), loads, Long ? 4_000_000 : 1_000_000, hat);
        }
    }

    [Fact]
    public void The_cases_reach_from_unlikely_to_nearly_sure()
    {
        var chances = All.Values.Select(c => Chance.OfEnough(new Usage(1, c.Spread), c.Loads)).ToList();
        Assert.Contains(chances, c => c < 0.4);
        Assert.Contains(chances, c => c is > 0.5 and < 0.9);
        Assert.Contains(All.Values.SelectMany(c => c.Loads.Select(l => Sureness.Of(l.Leftover, l.Length, new Usage(1, c.Spread)))), c => c > 0.97);
    }

    private static void Compare(string name, double spread, Load[] loads, int draws, int seed)
    {
        var usage = new Usage(1, spread);
        var (own, joint) = Balls.Drawn(spread, loads, draws, seed);
        for (var j = 0; j < loads.Length; j++)
        {
            Assert.True(Math.Abs(own[j] - Sureness.Of(loads[j].Leftover, loads[j].Length, usage)) < Within, $"{name}: leftover {j} lasts {own[j]}");
        }

        Assert.True(Math.Abs(joint - Chance.OfEnough(usage, loads)) < Within, $"{name}: {joint}");
    }
}
