using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Tests;
using StashMatch.Web.Pieces;
using Xunit;

namespace StashMatch.Web.Tests.Pieces;

public sealed class WordsTests
{
    // The practice hat in size C; only Rust misses the allowance: 16.1 yd held, 16.28 wanted.
    private static readonly Answer OnlyJust = Ask(("Oat", 20m, 2.5m), ("Moss", 9m, 2.4m), ("Plum", 7.5m, 2.5m), ("Rust", 7m, 2.3m), ("Teal", 12m, 2.5m));

    [Fact]
    public void Only_just_names_the_leftover_that_misses_the_allowance_and_by_how_much()
    {
        Assert.Equal(Verdict.OnlyJust, OnlyJust.Verdict);
        Assert.Equal("There is enough, but Rust leaves about 0.2 m less in reserve than you asked.", new Words(OnlyJust).Why());
    }

    [Fact]
    public void Under_a_half_it_says_that_it_is_more_likely_to_run_out_than_not()
    {
        var words = new Words(OnlyJust with { Why = Why.Chance, ChanceOfEnough = 0.41 });
        Assert.Equal("There is enough by the label, but the yarn is more likely to run out.", words.Why());
        var surer = OnlyJust with { ChanceOfEnough = 0.68, Leftovers = [.. OnlyJust.Leftovers.Select(l => l with { OwnSureness = l.Leftover.Id == "Rust" ? 0.83 : 0.99, ShortOfReserve = default })] };
        Assert.Equal("There is enough, with your reserve, but knitters differ: Rust lasts 8 times in 10.", new Words(surer with { Why = Why.Chance }).Why());
        Assert.Equal(
            "There is enough, with your reserve, but knitters differ: Rust lasts 8 times in 10. Weigh a swatch to be surer.", new Words(surer with { Why = Why.NotCalibrated }).Why());
    }

    [Fact]
    public void Too_few_leftovers_are_counted_so_that_anybody_can_check()
    {
        var few = OnlyJust with { Why = Why.TooFewLeftovers, TooFew = new(5, 3, Metres.FromMillimetres(13_600)) };
        Assert.Equal("Four stripes and a brim need five colours; you have three.", new Words(few).Why());
        Assert.Equal("This hat needs seven yarns of 14 m or more; you have three.", new Words(few with { TooFew = few.TooFew with { Wanted = 7 } }).Why());
    }

    [Fact]
    public void Too_little_says_what_is_short_and_by_how_much()
    {
        Answer Lacking(int stripes) => OnlyJust with
        {
            Verdict = Verdict.No,
            Why = Why.Short,
            Short = Metres.FromMillimetres(2_400 * stripes),
            Parts = [.. OnlyJust.Parts.Select(p => p.Part.Kind == PartKind.Stripe && p.Part.Number <= stripes ? p with { Short = Metres.FromMillimetres(2_400) } : p)],
        };
        Assert.Equal("Four parts are short of yarn, by 10 m in all.", new Words(Lacking(4)).Why());
        Assert.Equal("Stripe 1 is short by 3 m.", new Words(Lacking(1)).Why());
    }

    [Fact]
    public void A_brim_prone_to_stretching_comes_with_every_cure()
    {
        var text = new Words(OnlyJust).Text(new Warning(WarningCode.BrimStretch, "brim", "Oat", CloseCall: true));
        foreach (var cure in new[] { "Oat may stretch in the brim", "close call", "smaller needle", "10 to 15 % fewer stitches", "firmer rib", "folded brim", "wool or nylon strand", "another leftover" })
        {
            Assert.Contains(cure, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_braid_is_named_once_and_like_warnings_are_said_once()
    {
        Warning Same(int braid, string a, string b) => new(WarningCode.BraidSameValue, $"braid {braid} strand a", a, $"braid {braid} strand b", b);
        var words = new Words(OnlyJust with
        {
            Warnings =
            [
                Same(1, "Rust", "Teal"), Same(2, "Teal", "Rust"), Same(3, "Moss", "Teal"), new(WarningCode.CoarseScale, "stripe 1", "Moss"), new(WarningCode.CoarseScale, "stripe 2", "Oat"),
                new(WarningCode.LowContrast, "stripe 1", "Moss", "stripe 2", "Teal"),
            ],
        });
        Assert.Equal(
            [
                "Braid 1 and braid 2: Rust and Teal are equally light, so the braid hardly shows.",
                "Braid 3: Moss and Teal are equally light, so the braid hardly shows.",
                "Your scale is too coarse for balls as small as Moss and Oat. Use a finer scale if you can.",
                "Stripe 1 and stripe 2: Moss and Teal are hard to tell apart.",
            ],
            words.Notices());
    }

    // 14.8 yd and a tenth on top are 16.28 yd: Rust at 6.9 g holds 15.87 yd and lacks 0.41 yd, Plum at 6 g holds 15 yd and lacks 1.28 yd.
    [Fact]
    public void Of_several_that_miss_the_reserve_the_closest_is_named_with_its_own_lack()
    {
        var both = Ask(("Oat", 20m, 2.5m), ("Moss", 9m, 2.4m), ("Plum", 6m, 2.5m), ("Rust", 6.9m, 2.3m), ("Teal", 12m, 2.5m));
        Assert.Equal("There is enough, but Plum leaves about 1.2 m less in reserve than you asked.", new Words(both).Why());
    }

    [Fact]
    public void Every_warning_caution_and_repair_is_a_sentence()
    {
        var words = new Words(OnlyJust);
        var texts = Enum.GetValues<WarningCode>().Select(c => words.Text(new Warning(c, "braid 1 strand a", "Moss", "braid 1 strand b", "Plum")))
            .Concat(Enum.GetValues<CautionCode>().Select(Words.Text))
            .Concat(Enum.GetValues<RepairCode>().Select(c => words.Text(new Repair(c, Verdict.Yes, 0.9)
            {
                Changed = null!,
                Part = "brim",
                Leftover = "Moss",
                Arrangement = Arrangement.OneGround,
                Stripes = 4,
                Size = "B",
                BuyGrams = 20,
                OtherPart = "stripe 2",
                OtherLeftover = "Plum",
                RowsMoved = 2,
                BrimDepth = Knitting.Quantities.Centimetres.From(4),
                BindOff = Knitting.Hats.EdgeKind.Ordinary,
            })));
        Assert.All(texts, t =>
        {
            Assert.Matches("^[A-Z].*[.?]$", t);
            Assert.DoesNotMatch("(?i)sorry|great|oops|hurry|only now|should have|!", t);
        });
    }

    private static Answer Ask(params (string Name, decimal Grams, decimal YardsPerGram)[] bag)
    {
        var question = new Question(Samples.Practice, "C", [.. bag.Select(l => Samples.Yards(l.Name, l.Grams, l.YardsPerGram))])
        {
            Locks = bag.Length < 5 ? [] : [new("M", "Oat"), new("S1", "Moss"), new("S2", "Plum"), new("S3", "Rust"), new("S4", "Teal")],
        };
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        return answer;
    }
}
