using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Halfway;

public sealed class OffersTests
{
    private static HatNeeds PracticeD { get; } = Samples.Practice.Needs("D", 4);

    [Fact]
    public void The_crown_is_offered_in_the_stripe_colour_with_most_to_spare_and_a_round_sooner()
    {
        var (teal, rust) = (ForecastTests.Ball("teal", 20, [("stripe 3", 13.9m), ("braid 2 strand a", 3.3m)]), ForecastTests.Ball("rust", 12, [("stripe 4", 13.9m), ("braid 2 strand b", 3.3m)]));
        var ahead = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(6.4m), teal, rust], 10);
        Assert.Equal(Verdict.OnlyJust, ahead.Verdict);
        var offers = Offers.For(PracticeD, ahead, 10, [], TestContext.Current.CancellationToken);
        Assert.Equal([(OfferKind.BallOfTheHat, "crown", "teal"), (OfferKind.DecreaseSooner, "crown", null)], offers.Select(o => (o.Kind, o.Part, o.Leftover)));
        Assert.Equal(Verdict.Yes, offers[0].Verdict);
        Assert.Null(offers[1].Saves);
    }

    [Fact]
    public void Leftovers_that_would_serve_are_the_matchers_with_their_verdict_and_those_too_short_are_not_named()
    {
        Leftover[] others = [Samples.Yards("long", 10, 2.5m), Samples.Yards("short", 5, 2.5m), Samples.Yards("tight", 6.3m, 2.5m), Samples.Yards("thick", 30, 2.5m, WeightClass.Bulky)];
        var ahead = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(5.5m)], 10);
        Assert.Equal(Verdict.No, ahead.Verdict);
        var offers = Offers.For(PracticeD, ahead, 10, others, TestContext.Current.CancellationToken).Where(o => o.Kind == OfferKind.OtherLeftover).ToList();
        Assert.Equal([("long", Verdict.Yes), ("tight", Verdict.OnlyJust)], offers.Select(o => (o.Leftover, o.Verdict)).OrderByDescending(o => o.Verdict));
    }

    [Fact]
    public void Where_the_rounds_are_known_a_round_sooner_says_what_it_saves()
    {
        var hat = (Samples.BrimUp with { Crown = new Crown(8, CrownYarn.Own), Braids = new Braids() }).Needs("F", 4);
        var crown = hat.Parts.Single(p => p.Kind == PartKind.Crown);
        var brim = hat.Parts.Single(p => p.Kind == PartKind.Brim);
        var need = (crown.Need(hat.Usage) + brim.Need(hat.Usage)).Value;
        var ball = new BallInWork(Samples.OfMetres("a", need * 1.03m), [.. new[] { brim, crown }.Select(p => PlannedUse.Of(p, p.Need(hat.Usage), hat.Usage))]);
        var ahead = Forecast.Of(hat.Usage, [ball], 10);
        Assert.Equal(Verdict.OnlyJust, ahead.Verdict);
        var offer = Offers.For(hat, ahead, 10, [], TestContext.Current.CancellationToken).Single(o => o.Kind == OfferKind.DecreaseSooner);

        // The first plain round among the decreases has 8 stitches fewer than the body.
        var stitches = hat.Plan!.Sections.Single(s => s.Kind == SectionKind.Crown).Runs.First(r => r.Pattern == StitchPattern.Stockinette).Stitches;
        Assert.Equal(stitches * LoopLength.MetresPerStitch(hat.Plan.Gauge) * 1.10, (double)offer.Saves!.Value.Value, 2);
        Assert.True(offer.ChanceOfEnough > ahead.ChanceOfEnough);
    }

    [Fact]
    public void A_yes_is_offered_nothing()
    {
        var ahead = Forecast.Of(PracticeD.Usage, [ForecastTests.Oat(null)], 10);
        Assert.Empty(Offers.For(PracticeD, ahead, 10, [Samples.Yards("long", 10, 2.5m)], TestContext.Current.CancellationToken));
    }
}
