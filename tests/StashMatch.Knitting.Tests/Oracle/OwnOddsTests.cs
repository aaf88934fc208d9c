using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The program's closed forms against the same model summed up by brute arithmetic and drawn a million times.</summary>
public sealed class OwnOddsTests
{
    private static readonly Usage[] Usages = [Usage.Uncalibrated, Usage.PrintedBare, new(1.03, 0.05, Calibrated: true), new(1.2, 0)];

    [Fact]
    public void A_leftover_alone_lasts_as_its_model_says()
    {
        foreach (var (leftover, usage) in Cases())
        {
            var held = (double)leftover.Ratio.MetresIn(leftover.Weighing.Net.Value);
            foreach (var share in new[] { 0.3, 0.6, 0.8, 0.9, 1.0, 1.1, 1.5 })
            {
                var load = Metres.Needed(held * share);
                Assert.Equal(OwnOdds.Of(leftover, usage).Lasts((double)load.Value / held), Sureness.Of(leftover, load, usage), 1e-6);
            }
        }
    }

    [Fact]
    public void A_leftover_bears_at_each_rung_what_the_model_says_to_the_millimetre()
    {
        var (same, all) = (0, 0);
        foreach (var (leftover, usage) in Cases())
        {
            var (odds, held) = (OwnOdds.Of(leftover, usage), leftover.Held.Millimetres);
            foreach (var rung in Rungs.All)
            {
                var ours = (long)decimal.Floor(held * (decimal)odds.Rounded().LargestShare((double)rung));
                var theirs = Sureness.Capacity(leftover, usage, Rung.Of((double)rung)).Millimetres;
                Assert.True(Math.Abs(theirs - ours) <= 1, $"{theirs} for {ours} mm at {rung}, {leftover.Weighing}, {leftover.Ratio.Source}, {odds}");
                (same, all) = (same + (theirs == ours ? 1 : 0), all + 1);

                // Rounding is on the safe side and costs little: a 64th of an octave of the band, a millionth of the metres, a millimetre.
                var unrounded = Search(l => odds.Lasts(l / (double)held) >= (double)rung, held);
                Assert.InRange(unrounded - theirs, 0, 2 + (held * (1e-6 + (0.011 * odds.Band))));
            }
        }

        ProofFigures.Tell("capacities at each rung within a millimetre of a search over whole millimetres; the same to the millimetre",
            Proofs.Percent(same, all), "all within 1 mm");
        Assert.True(same >= 0.999 * all, $"{same} of {all} to the millimetre");
    }

    [Fact]
    public void Own_and_joint_chances_are_those_of_a_million_draws()
    {
        var (draws, worst) = (Long.Form ? 1_000_000 : 200_000, 0.0);
        for (var seed = 0; seed < (Long.Form ? 40 : 10); seed++)
        {
            var random = new Random(seed);
            var usage = Usages[seed % Usages.Length];
            var loads = Enumerable.Range(0, 1 + (seed % 6)).Select(i => (Leftover: Balls.Drawn($"l{i}", 0.5 + (100 * random.NextDouble()), random),
                Share: 0.6 + (0.4 * random.NextDouble()))).ToList();
            var odds = loads.ConvertAll(l => (OwnOdds.Of(l.Leftover, usage), l.Share));
            var needs = loads.ConvertAll(l => Metres.Needed((double)l.Leftover.Ratio.MetresIn(l.Leftover.Weighing.Net.Value) * l.Share));
            var drawn = OwnOdds.Drawn(odds, draws, seed);
            var standardError = Math.Sqrt(Math.Max(drawn * (1 - drawn), 1e-4) / draws);
            Assert.InRange(OwnOdds.AllLast(odds) - drawn, -4 * standardError, 4 * standardError);
            var alone = OwnOdds.Drawn([odds[0]], draws, seed + 1_000);
            Assert.InRange(Sureness.Of(loads[0].Leftover, needs[0], usage) - alone, -(4 * standardError) - 0.001, (4 * standardError) + 0.001);
            worst = Math.Max(worst, Math.Abs(OwnOdds.AllLast(odds) - drawn));
        }

        ProofFigures.Tell($"own and joint chance against {draws:N0} draws, worst difference", FormattableString.Invariant($"{worst:0.0000}"), "0.002");
        Assert.True(!Long.Form || worst <= 0.002, $"{worst}");
    }

    private static long Search(Func<long, bool> lasts, long most)
    {
        var (low, high) = (0L, most);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = lasts(middle) ? (middle, high) : (low, middle);
        }

        return low;
    }

    // Balls of half a gram to 100 g on scales of 0.01 to 5 g, labels of each kind, with and without a core.
    private static IEnumerable<(Leftover Leftover, Usage Usage)> Cases()
    {
        var random = new Random(7);
        for (var i = 0; i < (Long.Form ? 400 : 60); i++)
        {
            yield return (Balls.Drawn("l", 2 + (400 * random.NextDouble() * random.NextDouble()), random), Usages[i % Usages.Length]);
        }

        foreach (var step in new[] { 0.01m, 0.1m, 1m, 5m })
        {
            foreach (var grams in new[] { 0.5m, 1, 3, 100 })
            {
                var reading = Math.Max(grams, step);
                yield return (new Leftover("l", "l", new Weighing(Grams.From(reading), default, Grams.From(step)), new LabelRatio(50, MassUnit.Grams,
                    200, LengthUnit.Metres, RatioSource.Printed)), Usages[0]);
            }
        }
    }
}
