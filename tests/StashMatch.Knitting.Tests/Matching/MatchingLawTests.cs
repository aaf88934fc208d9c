using CsCheck;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

public sealed class MatchingLawTests
{
    private static readonly Gen<Leftover[]> Bags =
        from metres in Gen.Int[2_000, 120_000].Array[1, 14]
        from red in Gen.Byte.Array[14]
        from green in Gen.Byte.Array[14]
        select metres.Select((mm, i) => Samples.OfMetres($"l{i:00}", mm / 1000m) with
        {
            Colour = YarnColour.FromRgb(red[i], green[i], (byte)(40 * i % 256)),
        }).ToArray();

    private static readonly Gen<Question> Questions =
        from bag in Bags
        from brimUp in Gen.Bool
        from neighbours in Gen.Bool
        from size in Gen.Int[0, 7].Select(i => "ABCDEFGH"[i].ToString())
        from stripes in Gen.Int[4, 8]
        from arrangement in Gen.Enum<Arrangement>()
        select new Question(
            (brimUp ? Samples.BrimUp : Samples.SideToSide) with
            {
                Braids = new Braids(BraidPlaces.BetweenStripes, neighbours ? StrandSource.Neighbours : StrandSource.Scraps),
            },
            size,
            bag)
        {
            Stripes = stripes,
            Arrangement = arrangement,
        };

    [Fact]
    public void What_goes_in_and_what_is_left_is_what_is_held() => Questions.Sample(
        question =>
        {
            var answer = Ask(question);
            Checker.Check(answer, question);
            foreach (var l in answer.Leftovers)
            {
                Assert.Equal(l.Leftover.Held, l.Used + l.Left);
                Assert.Equal(l.Used.Millimetres, answer.Parts.Where(p => p.From?.Leftover == l.Leftover.Id).Sum(p => p.From!.Metres.Millimetres));
            }

            Assert.All(answer.Parts, p => Assert.Equal(p.Need.Millimetres, (p.From?.Metres.Millimetres ?? 0) + p.Short.Millimetres));
        },
        iter: 300);

    [Fact]
    public void The_order_of_the_leftovers_changes_nothing() => Gen.Select(Questions, Gen.Int[0, 1000]).Sample(
        (question, turn) =>
        {
            var shuffled = question.Leftovers.OrderBy(l => (l.Id.GetHashCode(StringComparison.Ordinal) ^ turn) % 97).ToList();
            var (one, other) = (Ask(question), Ask(question with { Leftovers = shuffled }));
            Assert.Equal(one.Parts, other.Parts);
            Assert.Equal((one.Verdict, one.ChanceOfEnough, one.WeakestLeftover), (other.Verdict, other.ChanceOfEnough, other.WeakestLeftover));
        },
        iter: 200);

    [Fact]
    public void Another_leftover_never_makes_a_covered_hat_uncovered() => Gen.Select(Questions, Gen.Int[2, 120], Gen.Byte).Sample(
        (question, metres, red) =>
        {
            var more = Samples.OfMetres("zz", metres) with { Colour = YarnColour.FromRgb(red, 90, 30) };
            var (without, with) = (Ask(question), Ask(question with { Leftovers = [.. question.Leftovers, more] }));
            Assert.True(without.Verdict == Verdict.No || with.Verdict != Verdict.No);
        },
        iter: 200);

    [Fact]
    public void A_looser_colour_rule_never_hurts() => Questions.Sample(
        question =>
        {
            var (strict, loose) = (Ask(question), Ask(question with { Blend = true }));
            Assert.True(strict.Verdict == Verdict.No || loose.Verdict != Verdict.No);
        },
        iter: 200);

    [Fact]
    public void A_larger_size_never_needs_less_in_all() => Gen.Select(Gen.Bool, Gen.Bool, Gen.Int[4, 12], Gen.Int[0, 6]).Sample(
        (brimUp, neighbours, stripes, at) =>
        {
            var hat = (brimUp ? Samples.BrimUp : Samples.SideToSide) with
            {
                Braids = new Braids(BraidPlaces.BetweenStripes, neighbours ? StrandSource.Neighbours : StrandSource.Scraps),
            };
            Assert.True(InAll(hat, at + 1, stripes) >= InAll(hat, at, stripes));
        },
        iter: 500);

    private static long InAll(HatDesign hat, int size, int stripes) =>
        hat.Needs(hat.Sizes[size].Size, stripes).Parts.Sum(p => p.Need(hat.Usage).Millimetres);

    private static Answer Ask(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        return answer;
    }
}
