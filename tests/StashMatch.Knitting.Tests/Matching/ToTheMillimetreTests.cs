using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Tests.Oracle;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>One part and one leftover: each rung, the reserve and the brim's sets turn exactly where they should.</summary>
public sealed class ToTheMillimetreTests
{
    private static readonly Usage Known = new(1, 0.05, Calibrated: true);

    /// <summary>Leftovers of each kind of label and scale.</summary>
    public static TheoryData<string> Kinds => [.. Leftovers.Keys];

    private static Dictionary<string, Leftover> Leftovers { get; } = new(StringComparer.Ordinal)
    {
        ["printed, fine scale"] = Weighed(20, 0, 0.1m, RatioSource.Printed, 50),
        ["printed, coarse scale"] = Weighed(37, 0, 1, RatioSource.Printed, 50),
        ["printed, coarse scale, on a core"] = Weighed(60, 12, 1, RatioSource.Printed, 50),
        ["guessed"] = Weighed(25, 0, 0.1m, RatioSource.Guessed, 50),
        ["measured"] = Weighed(25, 0, 0.1m, RatioSource.Measured, 1),
        ["in doubt by its scale alone"] = Weighed(9, 0, 1, RatioSource.Printed, 50),
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_part_of_a_rungs_capacity_reaches_it_and_a_millimetre_more_does_not(string kind)
    {
        var leftover = Leftovers[kind];
        var rungs = new Rungs(Sheet.Of(Ask(leftover, 1_000), Hat(1_000).Needs("X", 1)));
        foreach (var rung in Rungs.All)
        {
            var most = rungs.Capacity(0, rung);
            var asked = rungs.InDoubt(0) ? 0.97m : 0.80m;
            var (at, over) = (Standing.Of(Ask(leftover, most)), Standing.Of(Ask(leftover, most + 1)));
            Assert.Equal(((double)rung, (double)rung), (at.Answer.Sureness, at.Answer.Reach));
            Assert.Equal((double)Rungs.All.Where(r => r < rung).Append(0.5m).Max(), over.Answer.Sureness);
            Assert.Equal(rung >= asked ? Verdict.Yes : Verdict.OnlyJust, at.Answer.Verdict);
            Assert.Equal(rung > asked ? Verdict.Yes : Verdict.OnlyJust, over.Answer.Verdict);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void All_that_is_held_is_enough_by_the_label_and_a_millimetre_more_is_short(string kind)
    {
        var held = Leftovers[kind].Held.Millimetres;
        var (all, over) = (Standing.Of(Ask(Leftovers[kind], held)), Standing.Of(Ask(Leftovers[kind], held + 1)));
        Assert.Equal((Word.ByTheLabel, 0.5), all.Sure);
        Assert.Equal((Word.No, 0.0, 1L), (over.Sure.Word, over.Sure.Reach, over.Short));
    }

    [Theory]
    [InlineData(20)]
    [InlineData(33.3)]
    [InlineData(100)]
    public void The_reserve_is_kept_to_the_millimetre(double percent)
    {
        var leftover = Leftovers["printed, fine scale"];
        var most = (long)Math.Floor(leftover.Held.Millimetres / (1 + (percent / 100)));
        Question With(long need) => Ask(leftover, need) with { AllowancePercent = (decimal)percent };
        Assert.Equal((Verdict.Yes, Why.Covered), Read(Standing.Of(With(most))));
        Assert.Equal((Verdict.OnlyJust, Why.Allowance), Read(Standing.Of(With(most + 1))));
    }

    [Fact]
    public void The_brim_takes_what_keeps_shape_before_what_relaxes_before_what_nobody_knows_before_what_stretches()
    {
        var bag = new[] { "100% wool", "100% acrylic", "", "100% alpaca" }.Select((fibre, i) => Weighed(20 + i, 0, 0.1m, RatioSource.Printed, 50) with
        {
            Id = $"l{i}",
            Fibre = FibreBlend.TryParse(fibre, out var blend, out _) ? blend : FibreBlend.Unknown,
        }).ToList();
        for (var first = 0; first < bag.Count; first++)
        {
            var answer = Standing.Of(Ask(bag[first], 30_000) with { Leftovers = bag[first..] }).Answer;
            Assert.Equal($"l{first}", answer.Parts[0].From!.Leftover);
        }
    }

    [Fact]
    public void A_wider_set_of_yarns_for_the_brim_is_taken_only_for_a_better_word()
    {
        Leftover Of(string id, decimal grams, string fibre) => Weighed(grams, 0, 0.1m, RatioSource.Printed, 50) with
        {
            Id = id,
            Fibre = FibreBlend.TryParse(fibre, out var blend, out _) ? blend : FibreBlend.Unknown
        };

        // 80 m last for 72 m with a little over 0.95 by themselves, for 78 m with 0.65.
        Answer From(long need) => Standing.Of(Ask(Of("wool", 20, "100% wool"), need) with
        {
            Leftovers = [Of("wool", 20, "100% wool"),
            Of("alpaca", 60, "100% alpaca")],
            Target = 0.90
        }).Answer;
        Assert.Equal(("wool", Verdict.Yes, 0.95, 0.99), Figures(From(72_000)));
        Assert.Equal(("alpaca", Verdict.Yes, 0.99, 0.99), Figures(From(78_000)));
        static (string, Verdict, double, double) Figures(Answer a) => (a.Parts[0].From!.Leftover, a.Verdict, a.Sureness, a.Reach);
    }

    private static (Verdict, Why) Read(Standing standing) => (standing.Answer.Verdict, standing.Answer.Why);

    private static Question Ask(Leftover leftover, long need) => new(Hat(need), "X", [leftover])
    {
        Stripes = 1,
        AllowancePercent = 0,
        Target = 0.80,
        Arrangement = Arrangement.AsItFalls
    };

    private static PrintedHat Hat(long need) => new()
    {
        Name = "one part",
        WeightClass = WeightClass.SuperFine,
        AllowanceIncluded = false,
        Weighed = Known,
        Sizes = [new PrintedSize("X", null, [new PrintedLine("brim", "M", need / 1000m)])],
    };

    private static Leftover Weighed(decimal gross, decimal tare, decimal step, RatioSource source, decimal mass) => new(
        "l", "l", new Weighing(Grams.From(gross), Grams.From(tare), Grams.From(step)), new LabelRatio(mass, MassUnit.Grams, mass * 4, LengthUnit.Metres,
            source))
    {
        Class = WeightClass.SuperFine,
        Fibre = FibreBlend.TryParse("100% wool", out var wool, out _) ? wool : FibreBlend.Unknown,
    };
}
