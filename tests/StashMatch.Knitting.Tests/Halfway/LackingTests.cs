using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Halfway;

public sealed class LackingTests
{
    private static HatNeeds PracticeD { get; } = Samples.Practice.Needs("D", 4);

    public static TheoryData<Arrangement, int> Ways => new(from way in Enum.GetValues<Arrangement>() from yarns in Enumerable.Range(0, 8) select (way, yarns));

    [Theory]
    [MemberData(nameof(Ways))]
    public void Each_part_lacks_what_the_answer_said_it_lacks(Arrangement arrangement, int yarns)
    {
        var hat = Samples.BrimUp with { Braids = new Braids() };
        Leftover[] bag = [.. Enumerable.Range(0, yarns + 1).Select(i => Samples.OfMetres($"y{i}", 14 + (9 * ((i * 5) % 7))))];
        Assert.True(Matcher.TryAnswer(new Question(hat, "C", bag) { Stripes = 5, Arrangement = arrangement, Blend = true }, out var answer, out _, TestContext.Current.CancellationToken));
        var given = answer.Parts.ToDictionary(p => p.Part.Name, p => Metres.FromMillimetres(p.All.Sum(a => a.Metres.Millimetres)), StringComparer.Ordinal);
        var lacking = PartLacking.Of(answer.Hat, arrangement, 3, [], p => given[p]);
        Assert.Equal(answer.Parts.Where(p => p.Short.Millimetres > 0).Select(p => (p.Part.Name, p.Short)), lacking.Select(l => (l.Part, l.Planned)));
    }

    [Fact]
    public void What_no_leftover_gives_is_a_no_with_its_length_and_no_chance()
    {
        var covered = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(null)], 10);
        var ahead = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(null)], 10, [Lacks("stripe 1", 16.4m), Lacks("stripe 3", 20)]);
        Assert.Equal((Verdict.Yes, Verdict.No, Why.Short, 0.0), (covered.Verdict, ahead.Verdict, ahead.Why, ahead.ChanceOfEnough));
        Assert.Equal(36.4m, ahead.Short.Value);
        Assert.Equal(["stripe 3", "stripe 1"], ahead.Shortages.Select(s => s.Part?.Part));
        Assert.True(Forecast.Of(PracticeD.Usage, [], 10, [Lacks("stripe 1", 1)]).Anything);

        // A heavy hand lacks more of it.
        var heavy = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(5.5m)], 10, [Lacks("stripe 1", 16.4m)]);
        Assert.True(heavy.Lacking[0].Forecast.Value > 16.8m);
        Assert.Equal(16.4m, heavy.Lacking[0].Planned.Value);
    }

    [Fact]
    public void The_longest_shortage_is_helped_though_the_word_stays_no()
    {
        var stripe = PracticeD.Parts.Single(p => p.Name == "stripe 3").Need(PracticeD.Usage);
        var ahead = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(null), ForecastTests.Ball("teal", 20, [("stripe 2", 13.9m)])], 10, [Lacks("stripe 1", 2), new("stripe 3", stripe, stripe)]);
        var offers = Offers.For(PracticeD, ahead, 10, [Samples.Yards("long", 10, 2.5m), Samples.Yards("short", 2, 2.5m)], TestContext.Current.CancellationToken);
        Assert.Equal([(OfferKind.BallOfTheHat, "stripe 3", "teal"), (OfferKind.OtherLeftover, "stripe 3", "long")], offers.Select(o => (o.Kind, o.Part, o.Leftover)));
        Assert.All(offers, o => Assert.Equal((Verdict.No, 2m), (o.Verdict, o.Short.Value)));

        // With nothing else lacking it is enough then.
        var last = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(null)], 10, [new("stripe 3", stripe, stripe)]);
        Assert.Equal(Verdict.Yes, Assert.Single(Offers.For(PracticeD, last, 10, [Samples.Yards("long", 10, 2.5m)], TestContext.Current.CancellationToken)).Verdict);
    }

    [Fact]
    public void Of_two_short_balls_the_shorter_one_is_helped_whichever_is_the_tighter_by_share()
    {
        // Oat lacks 2 yd of 40.4, moss 1.5 of 3: the tighter by share, but not the worse.
        var ahead = Forecast.Of(PracticeD.Usage, [ForecastTests.Ball("oat", 15.36m, [("brim", 26.5m), ("crown", 13.9m)]), ForecastTests.Ball("moss", 0.6m, [("braid 1 strand a", 3)])], 10);
        Assert.Equal(("moss", "oat"), (ahead.Weakest!.Ball.Start.Id, ahead.Shortages[0].Ball!.Ball.Start.Id));
        var offers = Offers.For(PracticeD, ahead, 10, [Samples.Yards("long", 10, 2.5m)], TestContext.Current.CancellationToken);
        Assert.Contains(offers, o => (o.Kind, o.Part, o.Leftover) == (OfferKind.OtherLeftover, "crown", "long"));
    }

    [Fact]
    public void Where_to_stop_leaves_out_what_is_put_by_for_a_later_part()
    {
        var oat = Assert.Single(Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(null)], 10).Balls);
        // 40.4 and 26.5 yd at 2.5 yd to the gram, each rounded up to the millimetre and the milligram.
        Assert.Equal((16.161m, 10.601m), (oat.StopAt("brim", null)!.Value.Value, oat.StopAt("brim", "crown")!.Value.Value));
        Assert.Null(oat.StopAt("crown", "crown"));
        Assert.All(oat.Parts, p => Assert.InRange(oat.StopAt(p.Part, null)!.Value.Milligrams - p.StopAt.Milligrams, 0, 0));
    }

    private static PartLacking Lacks(string part, decimal metres) => new(part, Metres.Held(metres), Metres.Held(metres));
}
