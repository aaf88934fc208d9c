using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using Xunit;

namespace StashMatch.Knitting.Tests.Odds;

public sealed class ChanceTests
{
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.841344746068543)]
    [InlineData(-1.959963984540054, 0.025)]
    [InlineData(3, 0.998650101968370)]
    [InlineData(-6, 9.865876450377e-10)]
    public void The_normal_distribution_has_its_tabled_values(double z, double below)
    {
        // Standard normal table (any statistics handbook); digits beyond four [memory].
        Assert.Equal(below, Normal.Below(z), 12);
    }

    [Fact]
    public void The_joint_chance_agrees_with_simulated_draws()
    {
        var usage = new Usage(1.10, 0.10);
        var loads = new[]
        {
            new Load(Samples.OfMetres("a", 24), [10, 9], 0.6),
            new Load(Samples.OfMetres("b", 40), [30], 0.3),
            new Load(Samples.OfMetres("c", 12), [9], 0.3),
        };
        const int Draws = 400_000;
        var random = new Random(11);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var enough = 0;
        for (var draw = 0; draw < Draws; draw++)
        {
            var factor = 1.10 * Math.Exp(0.10 * Gauss());
            enough += Array.TrueForAll(loads, l =>
            {
                var grams = (double)l.Leftover.Weighing.Net.Value + (0.05 * ((2 * random.NextDouble()) - 1));
                var holds = grams * 4 * (1 + (0.02 * Gauss()));
                return holds >= l.Ends + (factor * l.Bare.Sum(d => d * (1 + (0.03 * Gauss()))));
            }) ? 1 : 0;
        }

        var simulated = enough / (double)Draws;
        Assert.InRange(Chance.OfEnough(usage, loads) - simulated, -0.004, 0.004);
    }

    [Fact]
    public void With_one_leftover_and_no_other_doubt_it_is_near_the_closed_form()
    {
        // ln F normal: P(F <= held / bare) = Φ(ln(held / (factor × bare)) / spread), a wide spread drowning the 2 % and 3 %.
        var load = new Load(Samples.OfMetres("a", 130), [100], 0);
        var closed = Normal.Below(Math.Log(130 / 110.0) / Math.Sqrt((0.2 * 0.2) + (0.02 * 0.02) + (0.03 * 0.03)));
        Assert.InRange(Chance.OfEnough(new Usage(1.10, 0.20), [load]) - closed, -0.003, 0.003);
    }

    [Fact]
    public void An_uncalibrated_hat_wants_about_a_fifth_to_a_quarter_over_the_bare_metres_for_four_in_five()
    {
        // Our own design notes: 80 % chance at 1.21-1.25 × bare, for a hat of several leftovers.
        double At(double times) => Chance.OfEnough(
            Usage.Uncalibrated, [.. Enumerable.Range(0, 7).Select(i => new Load(Samples.OfMetres($"l{i}", (decimal)(30 * times)), [30], 0))]);
        Assert.True(At(1.20) < 0.80);
        Assert.True(At(1.26) > 0.80);
    }
}
