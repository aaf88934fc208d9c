using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>Held double by a lock, and leftovers joined within a part. Figures of the practice hat, size C; all invented.</summary>
public sealed class HeldAndJoinedTests
{
    // 12.0 yd of a stripe.
    private const long Stripe = 10_973;

    private static readonly Leftover A = Sock("a", 22, 4.2m);
    private static readonly Leftover B = Sock("b", 15, 4.0m);

    private static readonly Leftover[] Plain =
    [
        Samples.Yards("oat", 20, 2.5m), Samples.Yards("moss", 9, 2.4m), Samples.Yards("plum", 7.5m, 2.5m), Samples.Yards("rust", 8, 2.3m), Samples.Yards("teal", 12, 2.5m),
    ];

    [Fact]
    public void Stripe_1_of_two_sock_yarns_held_together_takes_its_length_of_each()
    {
        var answer = Ask([new("stripe 1", "a") { HeldDouble = true }, new("stripe 1", "b") { HeldDouble = true }]);
        var part = answer.Parts.Single(p => p.Part.Name == "stripe 1");
        Assert.True(part.HeldDouble);
        Assert.Equal([("a", Stripe), ("b", Stripe)], part.All.Select(f => (f.Leftover, f.Metres.Millimetres)));
        Assert.Equal(2 * Stripe, part.Need.Millimetres);
        Assert.Equal(92_400 - Stripe, answer.Leftovers.Single(l => l.Leftover.Id == "a").Left.Millimetres);
        Assert.Equal(60_000 - Stripe, answer.Leftovers.Single(l => l.Leftover.Id == "b").Left.Millimetres);
        Assert.Contains(answer.Warnings, w => w is { Code: WarningCode.WeightClassMix, Leftover: "a" });
        Assert.NotEqual(Verdict.No, answer.Verdict);
    }

    [Fact]
    public void Held_double_on_itself_one_ball_gives_both_strands()
    {
        var answer = Ask([new("stripe 1", "a") { HeldDouble = true }]);
        var part = answer.Parts.Single(p => p.Part.Name == "stripe 1");
        Assert.Equal([("a", 2 * Stripe)], part.All.Select(f => (f.Leftover, f.Metres.Millimetres)));
        Assert.Equal(92_400 - (2 * Stripe), answer.Leftovers.Single(l => l.Leftover.Id == "a").Left.Millimetres);
    }

    [Fact]
    public void A_strand_too_short_leaves_the_stripe_short_by_what_it_lacks()
    {
        var answer = Ask([new("stripe 1", "a") { HeldDouble = true }, new("stripe 1", "c") { HeldDouble = true }], Sock("c", 2, 4.0m));
        var part = answer.Parts.Single(p => p.Part.Name == "stripe 1");
        Assert.Equal(Verdict.No, answer.Verdict);
        Assert.Equal(Stripe - 8_000, part.Short.Millimetres);
    }

    [Fact]
    public void Leftovers_joined_hold_their_sum_less_two_tails_for_each_join()
    {
        var joined = Joined.AsOne("j", Samples.OfMetres("a", 8), Samples.OfMetres("b", 7), Samples.OfMetres("c", 6));
        Assert.Equal(21_000 - 600, joined.Held.Millimetres);
        Assert.Equal((0.1m, 0.15m), (joined.Weighing.ScaleStep.Value, joined.Weighing.BandGrams));
        Assert.Equal("a then b then c", joined.Name);
        Assert.Throws<ArgumentException>(() => Joined.AsOne("j", Samples.OfMetres("a", 8)));
        Assert.Throws<ArgumentException>(() => Joined.AsOne("j", Samples.OfMetres("a", 8), Samples.OfMetres("b", 0.2m)));
    }

    [Fact]
    public void Two_halves_of_a_near_match_are_offered_joined_where_neither_is_enough()
    {
        var rust = YarnColour.FromRgb(0xB0, 0x53, 0x2E);
        var halves = new[] { Samples.Yards("r1", 3.6m, 2.3m), Samples.Yards("r2", 4, 2.3m) }.Select(l => l with { Colour = rust });
        Leftover[] bag = [.. Plain.Where(l => l.Id != "rust"), .. halves];
        var question = new Question(Samples.Practice, "C", bag);
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        Assert.Equal(Verdict.No, answer.Verdict);
        var repair = Assert.Single(answer.Repairs, r => r.Code == RepairCode.JoinNearMatch);
        Assert.Equal(["r1", "r2"], new[] { repair.Leftover, repair.OtherLeftover }.Order(StringComparer.Ordinal));
        Assert.NotEqual(Verdict.No, repair.Verdict);
    }

    [Fact]
    public void Two_colours_of_one_set_are_no_near_match()
    {
        Leftover[] halves =
        [
            Samples.Yards("r1", 3.6m, 2.3m) with { Colour = YarnColour.FromRgb(0xB0, 0x53, 0x2E), Lot = "swap set" },
            Samples.Yards("r2", 4, 2.3m) with { Colour = YarnColour.FromRgb(0x1F, 0x70, 0x78), Lot = "swap set" },
        ];
        Assert.True(Matcher.TryAnswer(new Question(Samples.Practice, "C", [.. Plain.Where(l => l.Id != "rust"), .. halves]), out var answer, out _, TestContext.Current.CancellationToken));
        Assert.Equal(Verdict.No, answer.Verdict);
        Assert.DoesNotContain(answer.Repairs, r => r.Code == RepairCode.JoinNearMatch);
    }

    private static Leftover Sock(string id, decimal grams, decimal metresPerGram) => new(
        id, id, new Weighing(Grams.From(grams), default, Grams.From(0.1m)), new LabelRatio(1, MassUnit.Grams, metresPerGram, LengthUnit.Metres, RatioSource.Printed))
    {
        Class = WeightClass.SuperFine,
    };

    private static Answer Ask(IReadOnlyList<Pairing> locks, params Leftover[] more)
    {
        var question = new Question(Samples.Practice, "C", [.. Plain, A, B, .. more]) { Locks = locks };
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        return answer;
    }
}
