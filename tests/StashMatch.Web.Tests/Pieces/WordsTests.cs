using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
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
        Assert.Equal("Everything is covered, but Rust misses the allowance by 0.2 m / 0.2 yd.", new Words(OnlyJust).Why());
    }

    [Fact]
    public void Under_a_half_it_says_that_it_is_more_likely_to_run_out_than_not()
    {
        var words = new Words(OnlyJust with { Why = Why.Chance, ChanceOfEnough = 0.41 });
        Assert.Equal("Covered, but more likely to run out than not. Rust is the tightest.", words.Why());
        Assert.DoesNotContain("more likely", new Words(OnlyJust with { Why = Why.Chance, ChanceOfEnough = 0.6 }).Why(), StringComparison.Ordinal);
        Assert.Contains("weigh a swatch to be sure", new Words(OnlyJust with { Why = Why.NotCalibrated, ChanceOfEnough = 0.6 }).Why(), StringComparison.Ordinal);
    }

    [Fact]
    public void Too_little_says_what_is_short_and_by_how_much()
    {
        var answer = Ask(("Oat", 2m, 2.5m));
        Assert.Equal(Verdict.No, answer.Verdict);
        Assert.Matches(@"^(Two|Three|Four|Five|Six|Seven|Eight|Nine|Ten) parts lack yarn: short by [\d.]+ m / [\d.]+ yd\.$", new Words(answer).Why());
    }

    [Fact]
    public void A_brim_prone_to_stretching_comes_with_every_cure()
    {
        var text = new Words(OnlyJust).Text(new Warning(WarningCode.BrimStretch, "brim", "Oat", CloseCall: true));
        foreach (var cure in new[] { "Oat is prone to stretching", "close call", "smaller needle", "10-15 % fewer stitches", "firmer rib", "doubled brim", "wool or nylon strand", "another leftover" })
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
                "Braid 1 and braid 2: Rust and Teal are as light as each other, so a braid of them hardly shows.",
                "Braid 3: Moss and Teal are as light as each other, so a braid of them hardly shows.",
                "One step of the scale is much against what is on or left of Moss and Oat. Weigh them on a finer scale if you can.",
                "Stripe 1 and stripe 2: Moss and Teal are close and hard to tell apart.",
            ],
            words.Notices());
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
