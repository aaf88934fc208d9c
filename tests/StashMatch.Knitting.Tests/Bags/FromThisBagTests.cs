using CsCheck;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Bags;

public sealed class FromThisBagTests
{
    private static readonly string[] Fibres = ["100% wool", "100% alpaca", "unknown", "75% superwash wool, 25% nylon"];

    private static readonly Gen<Leftover[]> Bags =
        from metres in Gen.Int[2_000, 110_000].Array[0, 14]
        from red in Gen.Byte.Array[14]
        from fibre in Gen.Int[0, 3].Array[14]
        select metres.Select((mm, i) => Samples.OfMetres($"l{i:00}", mm / 1000m) with
        {
            Colour = i % 5 == 4 ? null : YarnColour.FromRgb(red[i], (byte)(60 * i % 256), (byte)(255 - red[i])),
            Fibre = FibreBlend.TryParse(Fibres[fibre[i]], out var blend, out _) ? blend : FibreBlend.Unknown,
        }).ToArray();

    private static readonly Gen<Hat> Hats =
        from kind in Gen.Int[0, 2]
        from neighbours in Gen.Bool
        select kind switch
        {
            0 => (Hat)Samples.Practice with { WeightClass = WeightClass.SuperFine },
            1 => Samples.BrimUp with { Braids = new Braids(BraidPlaces.BetweenStripes, neighbours ? StrandSource.Neighbours : StrandSource.Scraps) },
            _ => Samples.SideToSide with { Braids = new Braids(BraidPlaces.BetweenStripes, neighbours ? StrandSource.Neighbours : StrandSource.Scraps) },
        };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void A_cell_is_the_answer_given_to_its_question() => Gen.Select(Bags, Hats, Gen.Int[0, 20]).Sample(
        (bag, hat, allowance) =>
        {
            var sizes = new[] { hat.SizeNames[0], hat.SizeNames[^1] };
            int[]? counts = hat is PrintedHat ? null : [2, 4, 7, 40];
            var cells = FromThisBag.Cells(hat, bag, sizes, counts, Enum.GetValues<Arrangement>(), allowance, Stop);
            Assert.Equal(sizes.Length * (counts?.Length ?? 1) * 5, cells.Count);
            foreach (var cell in cells)
            {
                var question = FromThisBag.QuestionOf(hat, cell.Size, cell.Stripes, cell.Arrangement, bag, allowance);
                if (!Matcher.TryAnswer(question, out var answer, out var why, Stop))
                {
                    Assert.Equal((Verdict.No, Why.CannotBeKnitted, why.Reason), (cell.Verdict, cell.Why, cell.Cannot?.Reason));
                    continue;
                }

                Assert.Null(cell.Cannot);
                Assert.Equal(
                    (answer.Verdict, answer.Why, answer.Sureness, answer.Reach, answer.Short),
                    (cell.Verdict, cell.Why, cell.Sureness, cell.Reach, cell.Short));
            }
        },
        iter: 25);

    [Fact]
    public void The_order_of_the_leftovers_changes_no_cell() => Bags.Sample(
        bag =>
        {
            var (there, back) = (Cells(bag), Cells([.. bag.Reverse()]));
            Assert.Equal(there, back);
        },
        iter: 40);

    [Fact]
    public void A_count_the_hat_cannot_have_is_a_cell_that_says_so()
    {
        var cell = Assert.Single(FromThisBag.Cells(Samples.SideToSide, [], ["C"], [13], [Arrangement.OwnColours], 10, Stop));
        Assert.Equal((Verdict.No, Why.CannotBeKnitted, (string?)null), (cell.Verdict, cell.Why, cell.WeakestPart));
        Assert.Contains("4 to 12 stripes", cell.Cannot!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Best_first_is_the_better_verdict_then_the_higher_reach_then_the_one_that_lacks_less_then_more_stripes()
    {
        BagCell Cell(Verdict verdict, double reach, long shortMm, int stripes, bool cannot = false) => new("C", stripes, Arrangement.OwnColours)
        {
            Verdict = verdict,
            Why = Why.Covered,
            Reach = reach,
            Short = Metres.FromMillimetres(shortMm),
            Cannot = cannot ? new CannotBeKnitted("stripes", "no") : null,
        };
        BagCell[] best =
        [
            Cell(Verdict.Yes, 0.98, 0, 4), Cell(Verdict.Yes, 0.95, 0, 9), Cell(Verdict.Yes, 0.95, 0, 5), Cell(Verdict.Yes, 0.90, 0, 12),
            Cell(Verdict.OnlyJust, 0.99, 0, 4), Cell(Verdict.No, 0, 50, 4), Cell(Verdict.No, 0, 900, 12), Cell(Verdict.No, 0, 0, 2, cannot: true),
        ];
        Assert.Equal(best, FromThisBag.BestFirst([.. best.Reverse()]));
    }

    [Fact]
    public void It_stops_when_told_to() => Assert.ThrowsAny<OperationCanceledException>(() =>
        FromThisBag.Cells(Samples.SideToSide, [], ["C"], null, FromThisBag.Usual, 10, new CancellationToken(canceled: true)));

    [Fact]
    public void Two_leftovers_of_one_id_are_refused() => Assert.Throws<ArgumentException>(() =>
        FromThisBag.Cells(Samples.SideToSide, [Samples.OfMetres("a", 3), Samples.OfMetres("a", 4)], ["C"], null, FromThisBag.Usual, 10, Stop));

    private static IReadOnlyList<BagCell> Cells(Leftover[] bag) =>
        FromThisBag.Cells(Samples.SideToSide, bag, ["A", "F"], [4, 6], FromThisBag.Usual, 10, Stop);
}
