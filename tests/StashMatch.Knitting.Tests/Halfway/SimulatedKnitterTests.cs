using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Halfway;

/// <summary>Knitters drawn from what the forecast believes: what it says nine times in ten must come about nine times in ten.</summary>
public sealed class SimulatedKnitterTests
{
    private const int Knitters = 20_000;

    [Theory]
    [InlineData(1.10, 0.10, 0.1)]
    [InlineData(1.10, 0.10, 1.0)]
    [InlineData(1.00, 0.06, 0.1)]
    public void Intervals_and_chances_hold_about_as_often_as_they_say(double factor, double spread, double step)
    {
        var usage = new Usage(factor, spread);
        var random = new Random(17);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double Read(double grams) => Math.Round(grams / step, MidpointRounding.AwayFromZero) * step;

        // Every weight that is read alike is as likely: whole steps, from about the need to 2 g over it.
        double Ball(double need) => (Math.Floor(need / step) - 0.5 + (Math.Round(2 / step) * random.NextDouble())) * step;
        var (within, of) = (new int[2], 0);
        var (said, came, likely, cameLikely, saidLikely) = (0.0, 0, 0, 0, 0.0);
        for (var k = 0; k < Knitters; k++)
        {
            var f = factor * Math.Exp(spread * Gauss());
            double Use(double bare) => 0.3 + (f * bare * (1 + (0.03 * Gauss())));

            // One ball of brim and crown, weighed after the brim; one of two stripes, not weighed again.
            double[] labels = [1 + (0.02 * Gauss()), 1 + (0.02 * Gauss())];
            double[] start = [Ball(31 * factor / 4), Ball(21 * factor / 4)];
            var (brim, crown, stripes) = (Use(20), Use(10), Use(10) + Use(10));
            var afterBrim = start[0] - (brim / (4 * labels[0]));
            double[] spare = [(start[0] * 4) - ((brim + crown) / labels[0]), (start[1] * 4) - (stripes / labels[1])];
            if (Read(afterBrim) < step)
            {
                continue;
            }

            BallInWork[] balls =
            [
                Made("a", Read(start[0]), step, usage, ("brim", 20), ("crown", 10)) with { Now = At(Read(afterBrim), step), DoneWhenWeighed = ["brim"] },
                Made("b", Read(start[1]), step, usage, ("stripe 1", 10), ("stripe 2", 10)),
            ];
            var ahead = Forecast.Of(usage, balls, 10);
            of++;
            for (var j = 0; j < 2; j++)
            {
                within[j] += (double)ahead.Balls[j].LeastSpare <= spare[j] && spare[j] <= (double)ahead.Balls[j].MostSpare ? 1 : 0;
            }

            if (ahead.Verdict != Verdict.No)
            {
                var lasts = spare[0] >= 0 && spare[1] >= 0;
                likely++;
                said += ahead.ChanceOfEnough;
                came += lasts ? 1 : 0;
                if (ahead.ChanceOfEnough is > 0.6 and < 0.9)
                {
                    (saidLikely, cameLikely) = (saidLikely + ahead.ChanceOfEnough - (lasts ? 1 : 0), cameLikely + 1);
                }
            }
        }

        Assert.True(of > 0.9 * Knitters && likely > 0.2 * Knitters && cameLikely > 500);
        Assert.InRange(within[0] / (double)of, 0.88, 0.92);
        Assert.InRange(within[1] / (double)of, 0.88, 0.92);
        Assert.InRange((said - came) / likely, -0.02, 0.02);
        Assert.InRange(saidLikely / cameLikely, -0.05, 0.05);
    }

    [Fact]
    public void What_a_finished_plan_teaches_is_the_knitters_factor()
    {
        var usage = Usage.Uncalibrated;
        var random = new Random(5);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (inside, all) = (0, 2_000);
        for (var k = 0; k < all; k++)
        {
            var f = 1.10 * Math.Exp(0.10 * Gauss());
            var balls = new List<UsedBall>();
            foreach (var id in new[] { "a", "b", "c" })
            {
                var used = (0.6 + (f * 40)) / 4 / (1 + (0.02 * Gauss()));
                var ball = Made(id, 20, 0.1, usage, ("stripe 1", 20), ("stripe 2", 20));
                balls.Add(new UsedBall(ball.Start, Grams.From((decimal)Math.Max(0, Math.Round(20 - used, 1))), ball.Uses));
            }

            var learned = UsedBall.Learn(balls)!;
            inside += Math.Abs(Math.Log(learned.Factor / f)) < 1.645 * learned.MeasureSpread ? 1 : 0;
        }

        Assert.InRange(inside / (double)all, 0.86, 0.94);
    }

    [Fact]
    public void A_finished_plan_whose_weights_cannot_be_teaches_nothing()
    {
        var ball = Made("a", 20, 0.1, Usage.Uncalibrated, ("stripe 1", 20));
        Assert.Null(UsedBall.Learn([new UsedBall(ball.Start, Grams.From(19.9m), ball.Uses)]));
        Assert.Null(UsedBall.Learn([new UsedBall(ball.Start, default, ball.Uses)]));
        Assert.Null(UsedBall.Learn([]));
    }

    private static Weighing At(double grams, double step) => new(Grams.From((decimal)grams), default, Grams.From((decimal)step));

    private static BallInWork Made(string id, double grams, double step, Usage usage, params (string Part, double Bare)[] uses) => new(
        new Leftover(id, id, At(grams, step), new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed)),
        [.. uses.Select(u => new PlannedUse(u.Part, Metres.Needed((usage.Factor * u.Bare) + 0.3), u.Bare, 0.3))]);
}
