using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Tests.Oracle;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>Rules that random questions seldom turn on, each in the smallest question that does.</summary>
public sealed class RuleByRuleTests
{
    [Fact]
    public void Strands_are_covered_before_the_seam_though_the_seam_is_longer()
    {
        var answer = Ask(Of(["stripe 1", "braid 1 strand a", "seam"], [10, 3, 4], 10, 4.5m));
        Assert.Equal(0, ShortOf(answer, "braid 1 strand a"));
        Assert.Equal(4_000 - 1_500, ShortOf(answer, "seam"));
    }

    [Fact]
    public void The_crown_is_covered_before_a_longer_stripe()
    {
        var answer = Ask(Of(["stripe 1", "crown"], [12, 11], 12.5m));
        Assert.Equal(0, ShortOf(answer, "crown"));
        Assert.True(ShortOf(answer, "stripe 1") > 0);
    }

    [Fact]
    public void The_longest_of_what_is_short_gets_the_longest_remainder()
    {
        var answer = Ask(Of(["stripe 1", "stripe 2"], [9, 12], 8, 5) with { Blend = true });
        Assert.Equal((4_000, 4_000), (ShortOf(answer, "stripe 1"), ShortOf(answer, "stripe 2")));
    }

    [Fact]
    public void Without_a_brim_the_thread_is_kept_from_the_stripes_all_the_same()
    {
        var hat = Samples.BrimUp with { Brim = null, Braids = new Braids(BraidPlaces.BetweenStripes, StrandSource.Scraps, 1), StripeCounts = null };
        var question = new Question(hat, "A", [Ball("a", 300, 0), Ball("b", 100, 1), Ball("c", 100, 2)]) { Stripes = 3, Arrangement = Arrangement.OneThread };
        var answer = Ask(question);
        Assert.Equal(Verdict.No, answer.Verdict);
        Assert.NotEqual(Verdict.No, Ask(question with { Leftovers = [.. question.Leftovers, Ball("d", 100, 3)] }).Verdict);
    }

    [Fact]
    public void By_position_a_fresh_leftover_is_not_the_same_as_one_like_it_with_something_on_it()
    {
        // 4 + 6 on each: the second 4 has to go on the fresh one of two like leftovers, after it was tried on the other.
        Assert.Equal(Found.Yes, ByPosition(Coloured(Of(["stripe 1", "stripe 2", "stripe 3", "stripe 4"], [4, 4, 6, 6], 10, 10), 0, 0) with { Blend = true }));
    }

    [Fact]
    public void By_position_like_lengths_of_other_colours_are_not_the_same()
    {
        // All three like in length, the first two in colour too: stripe 2 has to come from the third.
        var question = Of(["stripe 1", "stripe 2"], [9, 9], 10, 10, 10);
        Assert.Equal(Found.No, ByPosition(Coloured(question, 0, 0, 0)));
        Assert.Equal(Found.Yes, ByPosition(Coloured(question, 0, 0, 1)));
    }

    [Fact]
    public void By_position_leftovers_a_lock_tells_apart_are_not_the_same()
    {
        // Both like; stripe 2 may not come from the first, so stripe 1 has to.
        var question = Coloured(Of(["stripe 1", "stripe 2"], [9, 9], 10, 10), 0, 0) with { Blend = true };
        Assert.Equal(Found.Yes, ByPosition(question with { Never = [new Pairing("stripe 2", "l0")] }));
        Assert.Equal(Found.Yes, ByPosition(question with { Never = [new Pairing("stripe 2", "l1")] }));
    }

    [Fact]
    public void By_position_a_stripe_of_its_own_shares_with_no_brim_whichever_is_put_first()
    {
        var question = Of(["brim", "stripe 1"], [5, 5], 20) with { Arrangement = Arrangement.OwnColours };
        Assert.Equal(Found.No, ByPosition(question));
        Assert.Equal(Found.Yes, ByPosition(question with { Arrangement = Arrangement.AsItFalls }));
        Assert.Equal(Found.Yes, ByPosition(Of(["brim", "crown", "stripe 1"], [5, 5, 5], 10, 5) with { Arrangement = Arrangement.OwnColours }));
    }

    private static Found ByPosition(Question question)
    {
        Assert.True(question.Hat.TryNeeds("X", question.Stripes!.Value, out var hat, out _));
        return Inside.ByPosition(question, hat);
    }

    private static Question Coloured(Question question, params int[] colours) =>
        question with { Leftovers = [.. question.Leftovers.Select((l, i) => Ball(l.Id, l.Held.Value, colours[i]))] };

    private static Question Of(string[] parts, int[] metres, params decimal[] held) => new(
        new PrintedHat
        {
            Name = "small",
            WeightClass = WeightClass.SuperFine,
            AllowanceIncluded = false,
            Sizes = [new PrintedSize("X", null, [.. parts.Select((p, i) => new PrintedLine(p, $"Y{i}", metres[i]))])],
        },
        "X",
        [.. held.Select((m, i) => Ball($"l{i}", m, i))])
    {
        Stripes = parts.Count(p => p.StartsWith("stripe", StringComparison.Ordinal)),
        Arrangement = Arrangement.AsItFalls,
    };

    private static Leftover Ball(string id, decimal metres, int colour) => Samples.OfMetres(id, metres) with
    {
        Colour = YarnColour.FromRgb((byte)(20 + (70 * (colour % 4))), (byte)(200 - (60 * colour)), 90),
    };

    private static long ShortOf(Answer answer, string part) => answer.Parts.First(p => p.Part.Name == part).Short.Millimetres;

    private static Answer Ask(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        return answer;
    }
}
