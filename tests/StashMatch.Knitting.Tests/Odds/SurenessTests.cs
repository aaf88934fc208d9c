using CsCheck;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Odds;

public sealed class SurenessTests
{
    private static readonly string[] Columns = ["p60", "p70", "p80", "p85", "p90", "p93", "p95", "p97", "p98", "p99"];

    private static readonly Gen<(decimal Step, decimal Tare, RatioSource Source, Usage Usage)> Kinds =
        from step in Gen.OneOf(0.01m, 0.1m, 0.2m, 0.5m, 1m, 2m, 5m)
        from tare in Gen.OneOf(0m, 4.2m, 20m)
        from source in Gen.Enum<RatioSource>()
        from spread in Gen.OneOf(0.0, 0.03, 0.05, 0.06, 0.12, 0.2)
        select (step, tare, source, new Usage(1.10, spread));

    [Fact]
    public void What_a_leftover_bears_at_each_rung_is_right_to_the_millimetre()
    {
        foreach (var row in CheckTable.Read("capacity", 11).Rows)
        {
            var source = Enum.Parse<RatioSource>(row["label"], ignoreCase: true);
            var tare = row.Number("tare_g");
            var leftover = Balls.Of(row.Number("gross_g") - tare, row.Number("step_g"), tare, source, row.Number("mass_g"), row.Number("length_m"));
            var usage = new Usage(1, row.Real("spread"));
            Assert.Equal(leftover.Held, Sureness.Capacity(leftover, usage, Rung.ByTheLabel));
            Assert.Equal(
                Columns.Select(c => (c, (long)row.Number(c))),
                Columns.Zip(Rung.All.Skip(1), (c, r) => (c, Sureness.Capacity(leftover, usage, r).Millimetres)));
        }
    }

    [Fact]
    public void The_rungs_are_by_the_label_and_ten_chances_from_0_60_to_0_99()
    {
        Assert.Equal([0.50, 0.60, 0.70, 0.80, 0.85, 0.90, 0.93, 0.95, 0.97, 0.98, 0.99], Rung.All.Select(r => r.Chance));
        Assert.Equal((0.50, 0.60, 0.80, 0.90, 0.99), (Rung.ByTheLabel.Chance, Rung.OnlyJust.Chance, Rung.LeastTarget.Chance, Rung.UsualTarget.Chance, Rung.Highest.Chance));
        Assert.False(Rung.TryOf(0.91, out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rung.Of(0.91));
    }

    [Theory]
    [InlineData(0.80, 0.97)]
    [InlineData(0.90, 0.97)]
    [InlineData(0.95, 0.97)]
    [InlineData(0.97, 0.98)]
    [InlineData(0.98, 0.99)]
    [InlineData(0.99, 0.99)]
    public void A_leftover_in_doubt_must_reach_0_97_or_the_rung_above_the_target(double target, double asked)
    {
        Assert.Equal(asked, Rung.AskedFor(Rung.Of(target), inDoubt: true).Chance);
        Assert.Equal(target, Rung.AskedFor(Rung.Of(target), inDoubt: false).Chance);
    }

    // By hand. Printed: the band may be √(0.05² − 0.02²) × √3 = 7.94 % of the grams. Measured: 0.5 g / √3 / 4 g = 7.2 %.
    [Theory]
    [InlineData(0.64, 0.1, 0, RatioSource.Printed, 100, false)]
    [InlineData(0.62, 0.1, 0, RatioSource.Printed, 100, true)]
    [InlineData(1.27, 0.1, 3, RatioSource.Printed, 100, false)]
    [InlineData(1.25, 0.1, 3, RatioSource.Printed, 100, true)]
    [InlineData(12.7, 1, 0, RatioSource.Printed, 100, false)]
    [InlineData(12.5, 1, 0, RatioSource.Printed, 100, true)]
    [InlineData(18.9, 1, 8, RatioSource.Printed, 100, false)]
    [InlineData(18.8, 1, 8, RatioSource.Printed, 100, true)]
    [InlineData(100, 0.1, 0, RatioSource.Guessed, 100, true)]
    [InlineData(100, 1, 0, RatioSource.Measured, 4, true)]
    [InlineData(100, 1, 0, RatioSource.Measured, 8, false)]
    [InlineData(0.2, 0, 0, RatioSource.Printed, 100, false)]
    public void A_leftover_is_in_doubt_when_label_and_scale_together_leave_over_5_per_cent(
        double grams, double step, double tare, RatioSource source, double mass, bool inDoubt) =>
        Assert.Equal(inDoubt, LengthDoubt.Of(Balls.Of((decimal)grams, (decimal)step, (decimal)tare, source, (decimal)mass, 4 * (decimal)mass)).IsLarge);

    [Fact]
    public void A_measured_ratio_is_never_trusted_more_than_a_printed_one()
    {
        // Ten metres of 100 g on a 0.01 g scale: the scale would say 0.003 %.
        var (measured, printed) = (Balls.Of(30, 0.01m, source: RatioSource.Measured), Balls.Of(30, 0.01m));
        Assert.Equal(0.02, LengthDoubt.Of(measured).Label);
        Assert.All(Rung.All, r => Assert.Equal(Sureness.Capacity(printed, Usage.PrintedBare, r), Sureness.Capacity(measured, Usage.PrintedBare, r)));
    }

    [Fact]
    public void On_a_printed_table_nine_in_ten_asks_for_9_6_per_cent_and_uncalibrated_for_1_29_of_the_bare_metres()
    {
        // A large ball on a fine scale. By hand: √(6² + 1.5² + 2² + 3²) = 7.16 %, × 1.2816, e^ = 1.096; √(12² + 1.5² + 2² + 3²) = 12.61 %, e^ = 1.175, × 1.10 = 1.293.
        var ball = Balls.Of(100, 0.01m);
        double At(Usage usage) => (double)(ball.Held.Value / Sureness.Capacity(ball, usage, Rung.UsualTarget).Value);
        Assert.Equal(1.096, At(new Usage(1, 0.06)), 0.001);
        Assert.Equal(1.293, 1.10 * At(new Usage(1.10, 0.12)), 0.001);
    }

    [Fact]
    public void More_grams_on_the_same_scale_and_label_never_bear_less_at_any_rung() => Gen.Select(Kinds, Gen.Int[1, 200_000], Gen.Int[1, 20_000]).Sample(
        (kind, milligrams, more) =>
        {
            var (one, other) = (Ball(kind, milligrams), Ball(kind, milligrams + more));
            foreach (var rung in Rung.All)
            {
                Assert.True(Sureness.Capacity(one, kind.Usage, rung) <= Sureness.Capacity(other, kind.Usage, rung), $"{milligrams} mg and {more} more at {rung.Chance}");
            }
        },
        iter: 1_000);

    [Fact]
    public void A_narrower_band_never_bears_a_smaller_share()
    {
        // Every band there can be, of a kilogram on a 0.001 g scale to a milligram on a 100 g one.
        foreach (var (label, spread) in new[] { (0.02, 0.0), (0.02, 0.06), (0.02, 0.12), (0.0722, 0.12), (0.12, 0.05), (0.12, 0.3) })
        {
            foreach (var rung in Rung.All)
            {
                var wider = 0;
                for (var octaves = 18.0; octaves > -22; octaves -= 1 / 64.0)
                {
                    var share = Sureness.ShareMillionths(new LengthDoubt(Math.Pow(2, octaves) * 0.9999, label), spread, rung);
                    Assert.True(share >= wider, $"{label}, {spread}, {rung.Chance}: {share} after {wider} at 2^{octaves}");
                    wider = share;
                }
            }
        }
    }

    [Fact]
    public void A_leftover_bears_less_at_a_higher_rung_and_lasts_there_as_surely_as_the_rung_says() => Gen.Select(Kinds, Gen.Int[50, 200_000]).Sample(
        (kind, milligrams) =>
        {
            var ball = Ball(kind, milligrams);
            var lower = ball.Held;
            foreach (var rung in Rung.All.Skip(1))
            {
                var bears = Sureness.Capacity(ball, kind.Usage, rung);
                Assert.True(bears <= lower);
                Assert.True(Sureness.Of(ball, bears, kind.Usage) >= rung.Chance - 1e-9, $"{milligrams} mg at {rung.Chance}");

                // A fiftieth more is too much for it, where the scale's band is not most of it: no more is kept back than the rounding of the band asks for.
                var over = Metres.FromMillimetres((bears.Millimetres * 51 / 50) + 2);
                Assert.True(LengthDoubt.Of(ball).Band > 0.3 || Sureness.Of(ball, over, kind.Usage) < rung.Chance, $"{milligrams} mg at {rung.Chance}, {over}");
                lower = bears;
            }
        },
        iter: 1_000);

    [Fact]
    public void A_skein_nobody_weighed_has_no_band()
    {
        // Φ(ln(20 × 4 / 70) / √(0.06² + 0.015² + 0.02² + 0.03²)) = Φ(1.8656) = 0.9690, from a standard normal table.
        Assert.Equal(0.9690, Sureness.Of(Balls.Of(20, 0), Metres.FromMillimetres(70_000), Usage.PrintedBare), 0.0002);
        Assert.Equal((0m, 0m), (Balls.Of(20, 0).Weighing.BandGrams, Balls.Of(20, 0).Weighing.ChanceBandGrams));
    }

    [Fact]
    public void The_band_shown_stays_half_a_step_while_the_chance_counts_a_whole_one_from_1_gram_on()
    {
        (decimal, decimal) Bands(decimal step, decimal tare) => Balls.Of(30, step, tare).Weighing is var w ? (w.BandGrams, w.ChanceBandGrams) : default;
        Assert.Equal((0.05m, 0.05m), Bands(0.1m, 0));
        Assert.Equal((0.1m, 0.1m), Bands(0.1m, 4));
        Assert.Equal((0.25m, 0.25m), Bands(0.5m, 0));
        Assert.Equal((0.5m, 1m), Bands(1, 0));
        Assert.Equal((1m, 1.5m), Bands(1, 4));
        Assert.Equal((1m, 2m), Bands(2, 0));
    }

    private static Leftover Ball((decimal Step, decimal Tare, RatioSource Source, Usage Usage) kind, int milligrams) =>
        Balls.Of(milligrams / 1000m, kind.Step, kind.Tare, kind.Source, 10, 40);
}
