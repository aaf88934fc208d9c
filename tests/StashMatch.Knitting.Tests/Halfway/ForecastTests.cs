using CsCheck;
using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Halfway;

public sealed class ForecastTests
{
    private static HatNeeds PracticeD { get; } = Samples.Practice.Needs("D", 4);

    [Fact]
    public void A_ball_weighed_after_the_brim_is_forecast_at_its_own_rate_and_is_only_just_enough()
    {
        // Worked by hand: size D, M 18.0 g at 2.5 yd/g; after the brim 6.4 g.
        var ahead = Forecast.Of(PracticeD.Usage, [Oat(6.4m)], 10);
        var oat = Assert.Single(ahead.Balls);
        Assert.Equal(29.0m, Math.Round(oat.Used.Yards, 1));
        Assert.Equal(26.5m, Math.Round(oat.PlannedSoFar.Yards, 1));
        Assert.Equal(9.4, Math.Round((oat.Rate - 1) * 100, 1));
        Assert.Equal(16.0m, Math.Round(oat.Left.Yards, 1));
        var crown = Assert.Single(oat.Parts);
        Assert.Equal("crown", crown.Part);
        Assert.Equal(15.3m, Math.Ceiling(crown.Forecast.Yards * 10) / 10);
        Assert.Equal(0.8m, Math.Round(oat.Spare / Metres.PerYard, 1));
        Assert.Equal(0.3m, Math.Round(oat.SpareGrams, 1));
        Assert.Equal(6.1m, Math.Ceiling(crown.StopAt.Value * 10) / 10);
        Assert.Equal((Verdict.OnlyJust, Why.Allowance), (ahead.Verdict, ahead.Why));
        Assert.InRange(ahead.ChanceOfEnough, 0.80, 0.98);
        Assert.Same(oat, ahead.Weakest);
    }

    [Fact]
    public void Nothing_weighed_yet_what_is_ahead_is_the_plan()
    {
        var before = Forecast.Of(PracticeD.Usage, [Oat(null)], 10);
        var oat = Assert.Single(before.Balls);
        Assert.False(oat.Measured);
        Assert.Equal(1, oat.Rate);
        Assert.Equal(oat.Parts.Select(p => p.Planned), oat.Parts.Select(p => p.Forecast));
        Assert.Equal(45.0m, Math.Round(oat.Left.Yards, 1));
        Assert.Equal(PracticeD.Usage, before.Usage);
        Assert.Equal(Verdict.Yes, before.Verdict);

        // A tick alone moves no forecast: what is left is then reckoned.
        var ticked = Assert.Single(Forecast.Of(PracticeD.Usage, [Oat(null) with { Done = ["brim"] }], 10).Balls);
        Assert.Equal((oat.Spare, 1.0), (ticked.Spare, ticked.Rate));
        Assert.Equal("crown", Assert.Single(ticked.Parts).Part);
    }

    [Fact]
    public void With_every_part_done_nothing_is_ahead_and_it_is_a_yes()
    {
        var done = Forecast.Of(PracticeD.Usage, [Oat(0.2m) with { DoneWhenWeighed = ["brim", "crown"] }], 10);
        Assert.False(done.Anything);
        Assert.Equal((Verdict.Yes, 1.0), (done.Verdict, done.ChanceOfEnough));
    }

    [Fact]
    public void What_is_short_ahead_is_a_no_and_says_by_how_much()
    {
        // 5.5 g: used 31.25 yd against 26.5, so the crown wants 16.4 of the 13.75 yd left.
        var ahead = Forecast.Of(PracticeD.Usage, [Oat(5.5m)], 10);
        Assert.Equal((Verdict.No, Why.Short, 0.0), (ahead.Verdict, ahead.Why, ahead.ChanceOfEnough));
        Assert.Equal(2.7m, Math.Ceiling(ahead.Short.Yards * 10) / 10);
    }

    [Fact]
    public void Another_ball_learns_from_the_weighed_one_but_believes_it_less()
    {
        var moss = Ball("moss", 9, [("stripe 1", 13.9m), ("braid 1 strand a", 3.3m)]);
        var ahead = Forecast.Of(PracticeD.Usage, [Oat(6.4m), moss], 10);
        var alone = Forecast.Of(PracticeD.Usage, [moss], 10);
        Assert.InRange(ahead.Balls[1].Rate, 1.01, 1.094);
        Assert.False(ahead.Balls[1].Measured);
        Assert.True(ahead.Usage.Spread < alone.Usage.Spread);
        Assert.True(ahead.Balls[1].Need > alone.Balls[0].Need);
    }

    [Fact]
    public void A_rate_of_exactly_one_changes_no_forecast_and_no_factor()
    {
        Gen.Select(Gen.Double[1, 60], Gen.Double[1, 60], Gen.Int[20, 200]).Sample((done, next, spareDm) =>
        {
            // Chosen so that the grams used are a whole number of milligrams.
            var brim = Math.Round((decimal)done, 1);
            var crown = Math.Round((decimal)next, 1);
            var held = brim + crown + (spareDm / 10m);
            var start = Samples.OfMetres("a", held);
            var uses = new[] { Use("brim", brim), Use("crown", crown) };
            var ball = new BallInWork(start, uses) { Now = new Weighing(Grams.From((held - brim) / 4), default, Grams.From(0.1m)), DoneWhenWeighed = ["brim"] };
            var (before, after) = (Forecast.Of(Usage.PrintedBare, [ball with { Now = null }], 10), Forecast.Of(Usage.PrintedBare, [ball], 10));
            Assert.Equal(1, after.Balls[0].Rate, 12);
            Assert.Equal(before.Balls[0].Parts[^1], after.Balls[0].Parts[^1]);
            Assert.Equal(before.Balls[0].Spare, after.Balls[0].Spare);
            Assert.Equal(1, after.Usage.Factor, 9);
            Assert.True(after.Usage.Spread < before.Usage.Spread);
        });
    }

    [Fact]
    public void More_used_never_raises_the_chance_nor_betters_the_word()
    {
        Gen.Select(Gen.Int[40, 90], Gen.Int[1, 40], Gen.Int[0, 30]).Sample((leftDg, lessDg, otherDg) =>
        {
            var moss = Ball("moss", 7 + (otherDg / 10m), [("stripe 1", 13.9m), ("braid 1 strand a", 3.3m)]);
            var (more, less) = (Forecast.Of(PracticeD.Usage, [Oat(leftDg / 10m), moss], 10), Forecast.Of(PracticeD.Usage, [Oat(Math.Max(1, leftDg - lessDg) / 10m), moss], 10));
            Assert.True(less.ChanceOfEnough <= more.ChanceOfEnough + 1e-12);
            Assert.True(less.Verdict <= more.Verdict);
            Assert.True(less.Balls[1].Need >= more.Balls[1].Need);
        });
    }

    [Fact]
    public void The_weight_to_stop_at_falls_part_by_part_and_leaves_enough_for_all_that_follow()
    {
        var hat = Samples.BrimUp.Needs("F", 6);
        var ball = new BallInWork(Samples.OfMetres("a", 400), [.. hat.Parts.Where(p => p.Kind != PartKind.Strand).Select(p => PlannedUse.Of(p, p.Need(hat.Usage), hat.Usage))]);
        var parts = Forecast.Of(hat.Usage, [ball], 10).Balls[0].Parts;
        Assert.True(parts.Count > 5);
        for (var i = 0; i < parts.Count; i++)
        {
            var ahead = parts.Skip(i).Sum(p => p.Forecast.Value) / 4;
            Assert.InRange(parts[i].StopAt.Value, ahead, ahead + 0.001m);
        }
    }

    [Fact]
    public void A_planned_length_comes_apart_into_bare_metres_and_ends_held_double_or_not()
    {
        var usage = new Usage(1.10, 0.10);
        var stripe = new HatPart("stripe 1", PartKind.Stripe, 1, null, 20, default, 10, 0.3);
        var once = PlannedUse.Of(stripe, stripe.Need(usage), usage);
        Assert.Equal(10, once.Bare, 3);
        Assert.Equal(0.3, once.Ends, 3);
        var twice = PlannedUse.Of(stripe, Metres.Needed(22.6), usage);
        Assert.Equal(20, twice.Bare, 3);
        Assert.Equal(0.6, twice.Ends, 3);
        var uncut = PlannedUse.Of(stripe, Metres.Needed(11), usage);
        Assert.Equal((10.0, 0.0), (Math.Round(uncut.Bare, 3), Math.Round(uncut.Ends, 3)));
    }

    internal static BallInWork Oat(decimal? left) => Ball("oat", 18, [("brim", 26.5m), ("crown", 13.9m)]) with
    {
        Now = left is { } grams ? new Weighing(Grams.From(grams), default, Grams.From(0.1m)) : null,
        DoneWhenWeighed = left is null ? [] : ["brim"],
    };

    internal static BallInWork Ball(string id, decimal grams, IReadOnlyList<(string Part, decimal Yards)> uses) =>
        new(Samples.Yards(id, grams, 2.5m), [.. uses.Select(u => Use(u.Part, u.Yards * Metres.PerYard))]);

    private static PlannedUse Use(string part, decimal metres) => new(part, Metres.Needed((double)metres), (double)metres, 0);
}
