using CsCheck;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Odds;

public sealed class ChanceTests
{
    private static readonly Gen<(Usage Usage, Load[] Loads)> Hats =
        from spread in Gen.OneOf(0.0, 0.03, 0.05, 0.06, 0.12, 0.25)
        from loads in (
            from milligrams in Gen.Int[500, 100_000]
            from step in Gen.OneOf(0m, 0.01m, 0.1m, 0.5m, 1m)
            from tare in Gen.OneOf(0m, 0m, 5m)
            from source in Gen.Enum<RatioSource>()
            from share in Gen.Double[0.4, 1.1]
            select Balls.On(Balls.Of(milligrams / 1000m, step, tare, source, 10, 40), share * milligrams * 0.004)).Array[0, 12]
        select (new Usage(1.1, spread), loads);

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
    public void It_lies_between_the_product_of_the_leftovers_own_sureness_and_the_least_of_them() => Hats.Sample(
        (usage, loads) =>
        {
            var own = Array.ConvertAll(loads, l => Sureness.Of(l.Leftover, l.Length, usage));
            var joint = Chance.OfEnough(usage, loads);
            Assert.InRange(joint, own.Aggregate(1.0, (a, b) => a * b) - 1e-5, own.Append(1).Min() + 1e-5);
        },
        iter: 2_000);

    [Fact]
    public void Of_one_leftover_it_is_its_own_sureness() => Hats.Sample(
        (usage, loads) => Assert.All(loads, l => Assert.Equal(Sureness.Of(l.Leftover, l.Length, usage), Chance.OfEnough(usage, l), 1e-5)),
        iter: 1_000);

    [Fact]
    public void The_order_of_the_leftovers_changes_nothing_and_another_one_or_a_larger_load_never_helps() => Gen.Select(Hats, Gen.Double[1, 1.2]).Sample(
        (hat, times) =>
        {
            var chance = Chance.OfEnough(hat.Usage, hat.Loads);
            Assert.Equal(chance, Chance.OfEnough(hat.Usage, [.. hat.Loads.Reverse()]), 1e-12);
            Assert.True(hat.Loads.Length == 0 || Chance.OfEnough(hat.Usage, [.. hat.Loads.Skip(1)]) >= chance - 1e-12);
            Assert.True(Chance.OfEnough(hat.Usage, [.. hat.Loads.Select(l => Balls.On(l.Leftover, (double)l.Length.Value * times))]) <= chance + 1e-12);
        },
        iter: 1_000);

    [Fact]
    public void With_nothing_to_knit_the_yarn_lasts()
    {
        Assert.Equal(1, Chance.OfEnough(Usage.Uncalibrated));
        Assert.Equal(1, Chance.OfEnough(Usage.Uncalibrated, Balls.On(Balls.Of(5, 0.1m), 0)));
    }

    [Fact]
    public void Asked_for_again_and_again_it_leaves_nothing_behind()
    {
        Load[] loads = [.. Enumerable.Range(0, 12).Select(i => Balls.On(Balls.Of(6 + i, 0.1m), 20))];
        Chance.OfEnough(Usage.Uncalibrated, loads);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
        {
            Chance.OfEnough(Usage.Uncalibrated, loads);
        }

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000);
    }
}
