using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>A good answer spoilt by hand in one place at a time: the checker sees each.</summary>
public sealed class CheckerTests
{
    private static readonly Leftover[] Bag =
    [
        Ball("a", 200, 200, 30, 30), Ball("b", 200, 30, 180, 40), Ball("c", 200, 40, 40, 200), Ball("d", 200, 230, 220, 40),
        Ball("e", 200, 20, 20, 20), Ball("f", 200, 240, 240, 240), Ball("g", 200, 150, 60, 170), Ball("h", 200, 202, 32, 31),
    ];

    private static readonly Question Asked = new(Samples.SideToSide, "A", Bag) { Stripes = 4, Arrangement = Arrangement.OwnColours };

    [Fact]
    public void A_good_answer_passes()
    {
        var answer = Answered(Asked);
        Assert.Equal(Verdict.Yes, answer.Verdict);
        Checker.Check(answer, Asked);
    }

    [Fact]
    public void What_goes_in_and_what_is_short_is_the_need() =>
        Sees("what goes in and what is short are not the need", a => WithPart(a, "stripe 2", p => p with { From = p.From! with { Metres = p.From.Metres - Metres.FromMillimetres(1) } }));

    [Fact]
    public void What_goes_in_and_what_is_left_is_what_is_held() => Sees(
        "what goes in and what is left are not what is held",
        a => a with { Leftovers = [.. a.Leftovers.Select(l => l.Used.Millimetres > 0 ? l with { Left = l.Left + Metres.FromMillimetres(1) } : l)] });

    [Fact]
    public void What_is_used_is_what_goes_in() => Sees(
        "what goes in and what is left are not what is held",
        a => a with { Leftovers = [.. a.Leftovers.Select(l => l.Used.Millimetres > 0 ? l with { Used = l.Used - Metres.FromMillimetres(1), Left = l.Left + Metres.FromMillimetres(1) } : l)] });

    [Fact]
    public void The_hat_is_short_by_the_sum_of_its_parts() => Sees("not short by the sum", a => a with { Short = Metres.FromMillimetres(5) });

    [Fact]
    public void A_no_and_a_shortfall_go_together() => Sees("a no and a shortfall go together", a => a with { Verdict = Verdict.No });

    [Fact]
    public void Next_door_stripes_are_not_of_one_leftover() => Sees("read as one colour", a => Swapped(a, "stripe 2", FromOf(a, "stripe 1")), Asked with { Arrangement = Arrangement.AsItFalls });

    [Fact]
    public void Next_door_stripes_are_not_of_like_colours()
    {
        var locks = new Pairing[] { new("stripe 1", "a"), new("stripe 2", "b"), new("stripe 3", "c") };
        Sees("stripe 1 and stripe 2 read as one colour", a => Swapped(a, "stripe 2", "h"), Asked with { Locks = locks }, Asked with { Locks = [locks[0]] });
    }

    [Fact]
    public void A_braids_strands_are_not_of_one_leftover() => Sees(
        "braid 1 strand a and braid 1 strand b read as one colour", a => Swapped(a, "braid 1 strand b", FromOf(a, "braid 1 strand a")), Asked with { Arrangement = Arrangement.AsItFalls });

    [Fact]
    public void Leftovers_that_take_turns_are_told_apart_next_door_or_not()
    {
        var asked = Asked with { Stripes = 6, Arrangement = Arrangement.InTurn, InTurn = 4 };
        Sees("stripe 1 and stripe 3 read as one colour", a => Swapped(a, "stripe 3", FromOf(a, "stripe 1")), asked);
    }

    [Fact]
    public void A_stripe_has_a_leftover_of_its_own() => Sees("does not have a leftover of its own", a => Swapped(a, "stripe 3", FromOf(a, "stripe 1")));

    [Fact]
    public void A_stripe_shares_none_with_the_brim() => Sees("does not have a leftover of its own", a => Swapped(a, "stripe 3", FromOf(a, "brim")));

    [Fact]
    public void One_ground_is_one_leftover() => Sees("are one part from two leftovers", a => Swapped(a, "stripe 3", OtherThan(a, "stripe 1")), Asked with { Arrangement = Arrangement.OneGround, Leftovers = [.. Bag, Ball("i", 400, 90, 90, 90)] });

    [Fact]
    public void One_thread_is_one_leftover_and_no_stripe_is_knitted_from_it()
    {
        var asked = Asked with { Arrangement = Arrangement.OneThread };
        Sees("are one part from two leftovers", a => Swapped(a, "braid 2 strand a", OtherThan(a, "braid 1 strand a")), asked);
        Sees("stripe 3 is knitted from the thread", a => Swapped(a, "stripe 3", FromOf(a, "brim")), asked);
    }

    [Fact]
    public void Leftovers_that_take_turns_come_round_again() => Sees("stripe 1 and stripe 3 are one part from two leftovers", a => Swapped(a, "stripe 3", OtherThan(a, "stripe 1")), Asked with { Arrangement = Arrangement.InTurn, InTurn = 2 });

    [Fact]
    public void A_yes_holds_the_allowance() => Throws("another reserve is short", Answered(Asked), Asked with { AllowancePercent = 100_000 });

    [Fact]
    public void Each_leftover_of_a_yes_is_as_sure_as_was_asked() => Throws("a yes less sure than was asked", Answered(Asked) is var a ? a with { Sureness = 0.8 } : a, Asked);

    [Fact]
    public void Each_leftover_is_as_sure_as_it_is_said_to_be() => Sees(
        "another own sureness",
        a => a with { Leftovers = [.. a.Leftovers.Select(l => l.Used.Millimetres > 0 ? l with { OwnSureness = l.OwnSureness - 0.01 } : l)] });

    [Fact]
    public void No_plan_is_surer_than_its_weakest_leftover() => Sees("the joint chance is not between", a => a with { ChanceOfEnough = 1.01 });

    [Fact]
    public void A_part_comes_from_the_leftover_it_is_kept_to()
    {
        var answer = Answered(Asked);
        Throws("not from the leftover it is kept to", answer, Asked with { Locks = [new Pairing("stripe 1", FromOf(answer, "stripe 2"))] });
    }

    [Fact]
    public void A_part_comes_from_none_it_must_not_be_from()
    {
        var answer = Answered(Asked);
        Throws("from one it must not be", answer, Asked with { Never = [new Pairing("stripe 1", FromOf(answer, "stripe 1"))] });
    }

    [Fact]
    public void Another_weight_class_goes_in_by_a_lock_alone()
    {
        var answer = Answered(Asked);
        var heavier = Asked with { Leftovers = [.. Bag.Select(l => l.Id == FromOf(answer, "stripe 1") ? l with { Class = WeightClass.Bulky } : l)] };
        Throws("another weight class", answer, heavier);
        Checker.Check(answer, heavier with { Locks = [new Pairing("stripe 1", FromOf(answer, "stripe 1"))] });
    }

    private static void Sees(string broken, Func<Answer, Answer> spoil, Question? asked = null, Question? checkedAgainst = null)
    {
        var answer = Answered(asked ?? Asked);
        Throws(broken, spoil(answer), checkedAgainst ?? asked ?? Asked);
    }

    private static void Throws(string broken, Answer answer, Question question) =>
        Assert.Contains(broken, Assert.Throws<InvalidOperationException>(() => Checker.Check(answer, question)).Message, StringComparison.Ordinal);

    private static Answer Answered(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        Assert.NotEqual(Verdict.No, answer.Verdict);
        return answer;
    }

    private static string FromOf(Answer answer, string part) => answer.Parts.First(p => p.Part.Name == part).From!.Leftover;

    // One that nothing goes into yet, of no like colour.
    private static string OtherThan(Answer answer, string part) => answer.Leftovers.Select(l => l.Leftover.Id).Concat(Bag.Select(l => l.Id)).First(id => id != "h" && id != FromOf(answer, part) && answer.Parts.All(p => p.From?.Leftover != id));

    private static Answer WithPart(Answer answer, string part, Func<PartAnswer, PartAnswer> change) =>
        answer with { Parts = [.. answer.Parts.Select(p => p.Part.Name == part ? change(p) : p)] };

    // The part from another leftover, all sums kept right, so that only the rule in question is broken.
    private static Answer Swapped(Answer answer, string part, string to)
    {
        var moved = WithPart(answer, part, p => p with { From = p.From! with { Leftover = to } });
        return moved with
        {
            Leftovers = [.. moved.Leftovers.Select(l =>
            {
                var used = moved.Parts.SelectMany(p => p.All).Where(a => a.Leftover == l.Leftover.Id).Sum(a => a.Metres.Millimetres);
                var held = Math.Max(used, l.Leftover.Held.Millimetres);
                Assert.Equal(held, l.Leftover.Held.Millimetres);
                return l with { Used = Metres.FromMillimetres(used), Left = Metres.FromMillimetres(held - used) };
            })],
        };
    }

    private static Leftover Ball(string id, decimal metres, byte red, byte green, byte blue) => Samples.OfMetres(id, metres) with { Colour = YarnColour.FromRgb(red, green, blue) };
}
