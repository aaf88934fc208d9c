using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>The practice hat by its printed table; figures worked by hand, all invented.</summary>
public sealed class PracticeHatTests
{
    private static readonly Leftover[] Five =
    [
        Samples.Yards("oat", 20, 2.5m), Samples.Yards("moss", 9, 2.4m), Samples.Yards("plum", 7.5m, 2.5m),
        Samples.Yards("rust", 7, 2.3m), Samples.Yards("teal", 12, 2.5m),
    ];

    private static readonly Pairing[] Locked =
        [new("M", "oat"), new("S1", "moss"), new("S2", "plum"), new("S3", "rust"), new("S4", "teal")];

    [Fact]
    public void Size_C_is_only_just_and_only_rust_misses_the_allowance()
    {
        var answer = Ask(new Question(Samples.Practice, "C", Five) { Locks = Locked });
        Assert.Equal((Verdict.OnlyJust, Why.Allowance), (answer.Verdict, answer.Why));
        Assert.Equal("rust", answer.WeakestLeftover);
        Assert.Equal(8.7m, answer.MarginPercent);
        var left = answer.Leftovers.ToDictionary(l => l.Leftover.Id, l => l.Left, StringComparer.Ordinal);
        Assert.Equal(15.3m, Math.Round(left["oat"].Yards, 1));
        Assert.Equal(6.8m, Math.Round(left["moss"].Yards, 1));
        Assert.Equal(3.95m, Math.Round(left["plum"].Yards, 2));
        Assert.Equal(1.3m, Math.Round(left["rust"].Yards, 1));
        Assert.Equal(15.2m, Math.Round(left["teal"].Yards, 1));
        Assert.Single(answer.Leftovers, l => l.Used.WithAllowance(10) > l.Leftover.Held);
    }

    [Fact]
    public void Unlocked_it_is_only_just_as_well()
    {
        var answer = Ask(new Question(Samples.Practice, "C", Five));
        Assert.Equal((Verdict.OnlyJust, Why.Allowance), (answer.Verdict, answer.Why));
        Assert.True(answer.ProvenBest);
        Assert.Equal("oat", answer.Parts.First(p => p.Part.Name == "brim").From!.Leftover);
    }

    [Fact]
    public void Oat_in_braid_2_in_place_of_rust_makes_it_a_yes()
    {
        var answer = Ask(new Question(Samples.Practice, "C", Five) { Locks = [.. Locked, new("braid 2 strand a", "oat")] });
        Assert.Equal("oat", answer.Parts.First(p => p.Part.Name == "braid 2 strand a").From!.Leftover);
        Assert.Equal(Verdict.Yes, answer.Verdict);
        var before = Ask(new Question(Samples.Practice, "C", Five) { Locks = Locked });
        var repair = Assert.Single(before.Repairs, r => r.Code == RepairCode.MoveOne);
        Assert.Equal(Verdict.Yes, repair.Verdict);
    }

    [Fact]
    public void The_brim_takes_the_yarn_that_keeps_its_shape_and_with_that_kept_back_the_one_there_is_with_a_warning()
    {
        static FibreBlend Of(string text) => FibreBlend.TryParse(text, out var blend, out var message) ? blend : throw new InvalidOperationException(message);
        var alpaca = Samples.Yards("alpaca", 25, 2.2m) with { Fibre = Of("100% alpaca") };
        var wool = Samples.Yards("wool", 16, 2.5m) with { Fibre = Of("100% wool") };
        var both = Ask(new Question(Samples.Practice, "C", [.. Five.Skip(1), alpaca, wool]));
        Assert.Equal("wool", both.Parts[0].From!.Leftover);
        Assert.DoesNotContain(both.Warnings, w => w.Code == WarningCode.BrimStretch);
        var one = Ask(new Question(Samples.Practice, "C", [.. Five.Skip(1), alpaca]));
        Assert.Equal("alpaca", one.Parts[0].From!.Leftover);
        Assert.Contains(one.Warnings, w => w.Code == WarningCode.BrimStretch && w.Leftover == "alpaca");
    }

    private static Answer Ask(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        return answer;
    }
}
