using CsCheck;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Odds;

public sealed class LeastChanceTests
{
    private static readonly Gen<(Usage Usage, Leftover[] Skeins, long[] Most, double[] Shares, int[] Parts)> Drawn =
        from spread in Gen.Int[0, 15]
        from count in Gen.Int[1, 9]
        from grams in Gen.Int[40, 600].Array[9]
        from step in Gen.Int[0, 4].Array[9]
        from source in Gen.Int[0, 2].Array[9]
        from rung in Gen.Int[0, 30]
        from shares in Gen.Double[0, 1].Array[9]
        from full in Gen.Int[0, 2].Array[9]
        from parts in Gen.Int[1, 5].Array[9]
        let skeins = Enumerable.Range(0, count).Select(i => Skein(i, grams[i], step[i], (RatioSource)source[i])).ToArray()
        select (
            new Usage(1.1, spread / 100.0),
            skeins,
            skeins.Select(s => s.Held.Millimetres * 100 / (100 + rung)).ToArray(),
            shares.Zip(full, (s, f) => f == 0 ? 1 : s).ToArray(),
            parts);

    [Fact]
    public void No_way_to_share_out_is_less_likely_than_the_least() => Drawn.Sample(
        drawn =>
        {
            // Each skein takes a share of its most, in a few like parts with a pair of tails among them.
            var loads = new List<Load>();
            var whole = 0L;
            for (var i = 0; i < drawn.Skeins.Length; i++)
            {
                var metres = drawn.Most[i] * drawn.Shares[i] / 1000;
                var ends = Math.Min(0.4, metres);
                var bare = (metres - ends) / drawn.Usage.Factor;
                whole += (long)Math.Ceiling(metres * 1000);
                loads.Add(new Load(drawn.Skeins[i], [.. Enumerable.Repeat(bare / drawn.Parts[i], drawn.Parts[i])], ends));
            }

            var least = new LeastChance(drawn.Usage, drawn.Skeins.Zip(drawn.Most)).Of(whole);
            var chance = Chance.OfEnough(drawn.Usage, loads);
            Assert.True(least <= chance + 1e-9, $"{least} over {chance}");
        },
        iter: 3_000);

    [Fact]
    public void With_plenty_to_spare_the_least_is_enough_to_be_sure_of_a_yes_and_with_none_it_is_not()
    {
        Leftover[] skeins = [Skein(0, 200, 0, RatioSource.Printed), Skein(1, 200, 0, RatioSource.Printed), Skein(2, 200, 0, RatioSource.Printed)];
        double At(int rung, int share)
        {
            var most = skeins.Select(s => s.Held.Millimetres * 100 / (100 + rung)).ToList();
            return new LeastChance(Usage.Uncalibrated, skeins.Zip(most)).Of(most.Sum() * share / 100);
        }

        Assert.InRange(At(25, 100), 0.9, 1);
        Assert.InRange(At(0, 100), 0, 0.5);
        Assert.True(At(10, 30) > At(10, 100));
        Assert.Equal(1, At(10, 0), 1e-9);
    }

    private static Leftover Skein(int i, int tenths, int step, RatioSource source) => new(
        $"s{i}",
        $"s{i}",
        new Weighing(Grams.From(tenths / 10m), default, Grams.From(new[] { 0.001m, 0.1m, 1, 2, 3.6m }[step])),
        new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, source));
}
