using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Odds;

/// <summary>The chance that nobody runs out against a million draws of what it is the chance of.</summary>
public sealed class SimulatedDrawsTests
{
    private const int Draws = 1_000_000;

    // What the integral itself may be off: 31 points over the common factor, three over the scale's band.
    private const double OfTheIntegral = 0.0005;

    /// <summary>Cases: name, seed, mean and spread of use, then the leftovers.</summary>
    public static TheoryData<string> Cases => [.. All.Keys];

    private static Dictionary<string, (Usage Usage, Load[] Loads)> All { get; } = new(StringComparer.Ordinal)
    {
        ["plenty"] = (Usage.Uncalibrated, [On(Ball(100, 0.1m), [20, 2], 0.6), On(Ball(60, 0.1m), [40], 0.3)]),
        ["tight"] = (Usage.Uncalibrated, [On(Ball(22.3m, 0.1m), [10, 9.5], 0.6), On(Ball(33.9m, 0.1m), [30], 0.3), On(Ball(10.6m, 0.1m), [9], 0.3)]),
        ["calibrated and tight"] = (new Usage(1.03, 0.05, Calibrated: true), [On(Ball(21, 0.1m), [10, 9.5], 0.6), On(Ball(32, 0.1m), [30], 0.3)]),
        ["printed table"] = (Usage.PrintedBare, [On(Ball(21, 0.1m), [12, 8], 0), On(Ball(11, 0.1m), [10], 0), On(Ball(6, 0.1m), [2, 2, 1], 0), On(Ball(42, 0.1m), [40], 0)]),
        ["coarse scale"] = (Usage.Uncalibrated, [On(Ball(24, 1), [10, 9], 0.6), On(Ball(12, 1), [9], 0.3), On(Ball(40, 1), [30], 0.3)]),
        ["coarse scale and a tare"] = (Usage.Uncalibrated, [On(Ball(24, 1, tare: 20), [10, 9], 0.6), On(Ball(40, 1, tare: 5), [30], 0.3)]),
        ["guessed ratio"] = (Usage.Uncalibrated, [On(Ball(24, 0.1m, source: RatioSource.Guessed), [10, 9], 0.6), On(Ball(40, 0.1m), [30], 0.3)]),
        ["measured ratio"] = (Usage.Uncalibrated, [On(Ball(24, 1, source: RatioSource.Measured), [10, 9], 0.6)]),
        ["seven alike"] = (Usage.Uncalibrated, [.. Enumerable.Range(0, 7).Select(_ => On(Ball(37, 0.1m), [30], 0.3))]),
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_agrees_with_a_million_draws(string name)
    {
        var (usage, loads) = All[name];
        var random = new Random(name.Length);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var facts = Array.ConvertAll(loads, l => (
            Grams: (double)l.Leftover.Weighing.Net.Value,
            Band: (double)l.Leftover.Weighing.ScaleStep.Value * (l.Leftover.Weighing.Tare.Value > 0 ? 1 : 0.5),
            PerGram: (double)l.Leftover.Ratio.MetresPerGram,
            Ratio: l.Leftover.Ratio.Source switch
            {
                RatioSource.Guessed => 0.12,
                RatioSource.Measured => Math.Max(0.02, (double)l.Leftover.Weighing.ScaleStep.Value / 2 / Math.Sqrt(3) / (double)l.Leftover.Ratio.MassInGrams),
                _ => 0.02,
            }));
        var enough = 0;
        for (var draw = 0; draw < Draws; draw++)
        {
            var factor = usage.Factor * Math.Exp(usage.Spread * Gauss());
            var lasts = true;
            for (var j = 0; j < loads.Length && lasts; j++)
            {
                var f = facts[j];
                var holds = (f.Grams + (f.Band * ((2 * random.NextDouble()) - 1))) * f.PerGram * (1 + (f.Ratio * Gauss()));
                foreach (var bare in loads[j].Bare)
                {
                    holds -= factor * bare * (1 + (0.03 * Gauss()));
                }

                lasts = holds >= loads[j].Ends;
            }

            enough += lasts ? 1 : 0;
        }

        var simulated = enough / (double)Draws;
        var standardError = Math.Sqrt(simulated * (1 - simulated) / Draws);
        var chance = Chance.OfEnough(usage, loads);
        Assert.InRange(chance - simulated, -(4 * standardError) - OfTheIntegral, (4 * standardError) + OfTheIntegral);
    }

    [Fact]
    public void The_cases_reach_from_unlikely_to_nearly_sure()
    {
        var chances = All.Values.Select(c => Chance.OfEnough(c.Usage, c.Loads)).ToList();
        Assert.Contains(chances, c => c < 0.5);
        Assert.Contains(chances, c => c is > 0.5 and < 0.9);
        Assert.Contains(chances, c => c > 0.99);
    }

    [Fact]
    public void With_use_known_exactly_it_is_the_product_of_normals()
    {
        // No common factor left: each leftover lasts with Φ((held − ends − factor × bare) / spread), and they are independent. A scale of 0.001 g has no say.
        Load[] loads = [On(Ball(24, 0.001m), [10, 11], 0.6), On(Ball(31, 0.001m), [28], 0.3)];
        double One(double held, double ends, double[] bare) =>
            Normal.Below((held - ends - (1.05 * bare.Sum())) / Math.Sqrt(Math.Pow(0.02 * held, 2) + bare.Sum(d => Math.Pow(1.05 * 0.03 * d, 2))));
        Assert.Equal(One(24, 0.6, [10, 11]) * One(31, 0.3, [28]), Chance.OfEnough(new Usage(1.05, 0), loads), 5);
    }

    [Theory]
    [InlineData(0.12)]
    [InlineData(0.15)]
    [InlineData(0.20)]
    [InlineData(0.30)]
    [InlineData(0.50)]
    public void With_a_wide_spread_one_leftover_nears_the_closed_form(double spread)
    {
        // ln F normal: P(F ≤ held / bare) = Φ(ln(held / (factor × bare)) / s), s² = spread² + 0.02² + 0.03² to first order.
        var closed = Normal.Below(Math.Log(118 / 110.0) / Math.Sqrt((spread * spread) + (0.02 * 0.02) + (0.03 * 0.03)));
        Assert.InRange(Chance.OfEnough(new Usage(1.10, spread), [On(Ball(118, 0.001m), [100], 0)]) - closed, -0.002, 0.002);
    }

    private static Leftover Ball(decimal metres, decimal step, decimal tare = 0, RatioSource source = RatioSource.Printed) => new(
        "l", "l", new Weighing(Grams.From((metres / 4) + tare), Grams.From(tare), Grams.From(step)), new LabelRatio(10, MassUnit.Grams, 40, LengthUnit.Metres, source));

    private static Load On(Leftover leftover, double[] bare, double ends) => new(leftover, bare, ends);
}
