using CsCheck;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Designing;

/// <summary>Testers and figures are invented.</summary>
public sealed class TestersUseTests
{
    private static readonly HatDesign Hat = Samples.SideToSide;

    [Fact]
    public void Five_testers_near_one_factor_draw_the_hats_factor_there_and_narrow_its_spread()
    {
        var use = Of(["Ada", "Bea", "Cem", "Dot", "Eli"], [1.01, 1.01, 1.01, 1.01, 1.01]);
        Assert.Equal(["Ada", "Bea", "Cem", "Dot", "Eli"], use.Testers);
        Assert.Equal(1.01, use.Mean, 3e-3);

        // Worked by hand: (ln 1.10 + 5 ln 1.01) / 6 = 0.02417.
        Assert.Equal(Math.Exp(0.02417), use.Usage.Factor, 3e-3);

        // 4 × 0.0072 from before, 5/6 × (ln 1.01 - ln 1.10)² from the distance: 0.03487 / 9 × 7/6 = 0.00452, of which the root is 0.0672.
        Assert.Equal(0.0672, use.Usage.Spread, 1e-3);
        Assert.True(use.Usage.Calibrated);
    }

    [Fact]
    public void Testers_who_differ_leave_the_next_knitter_less_sure_than_testers_who_agree() =>
        Assert.True(Of(["A", "B", "C"], [0.9, 1.1, 1.3]).Usage.Spread > 1.5 * Of(["A", "B", "C"], [1.1, 1.1, 1.1]).Usage.Spread);

    [Theory]
    [InlineData(true, 1.0, 1.1, 1.2)]
    [InlineData(true, 1.1)]
    [InlineData(false, 0.68, 0.68, 0.68, 0.68, 0.68)]
    [InlineData(false, 1.6, 1.6, 1.6, 1.6, 1.6)]
    [InlineData(false, 0.7, 1.1, 1.7)]
    public void A_factor_far_from_what_hats_take_or_less_sure_than_a_fifth_is_not_offered(bool offered, params double[] factors)
    {
        var use = Of([.. factors.Select((_, i) => $"T{i}")], factors);
        Assert.Equal(offered, use.MayBeOffered);
    }

    [Fact]
    public void One_tester_counts_once_however_many_sheets_come_back()
    {
        var twice = Of(["Ada", "Ada", "Bea"], [1.0, 1.0, 1.2]);
        Assert.Equal(["Ada", "Bea"], twice.Testers);
        Assert.Equal(Of(["Ada", "Bea"], [1.0, 1.2]).Usage.Factor, twice.Usage.Factor, 1e-4);
    }

    [Fact]
    public void Who_is_set_aside_says_nothing_and_nobody_kept_is_nothing_at_all()
    {
        var off = Result("Off", 3.0) with { StitchesPer10Cm = 22 };
        var judged = Testers.Judge(Hat, [Result("Ada", 1.0), off]);
        Assert.Equal(["Ada"], TestersUse.Of(Hat.Usage, judged)!.Testers);
        Assert.Null(TestersUse.Of(Hat.Usage, Testers.Judge(Hat, [off])));
    }

    [Fact]
    public void The_factor_lies_between_what_was_known_and_what_was_weighed_and_taking_it_over_does_not_change_it() => Gen.Double[0.8, 1.5].Array[1, 6].Sample(
        factors =>
        {
            var names = factors.Select((_, i) => $"T{i}").ToArray();
            var use = Of(names, factors);
            Assert.InRange(use.Usage.Factor, Math.Min(1.10, use.Mean) - 1e-9, Math.Max(1.10, use.Mean) + 1e-9);
            Assert.InRange(use.Usage.Spread, 0.03, 0.5);

            // The hat reckoned with it says the same of its testers: the bare metres are not its business.
            var after = Hat with { Usage = use.Usage };
            var again = TestersUse.Of(Usage.Uncalibrated, Testers.Judge(after, [.. names.Zip(factors, Result)]))!;
            Assert.Equal(use.Usage.Factor, again.Usage.Factor, 1e-9);
        },
        iter: 200);

    private static TestersUse Of(string[] names, double[] factors) => TestersUse.Of(Hat.Usage, Testers.Judge(Hat, [.. names.Zip(factors, Result)]))!;

    // A brim and a stripe that took so many times their bare metres, and their tails.
    private static TesterResult Result(string who, double factor)
    {
        var label = new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed);
        TesterPart Weighed(string name)
        {
            var piece = Piece.Of(Hat.Needs("C", 6)).Single(p => p.Name == name);
            return new TesterPart(name, Grams.From(100), Grams.From(100 - Math.Round((decimal)((piece.BareMetres * factor) + piece.EndsMetres) / 4, 2)));
        }

        return new TesterResult(who, "C", 6, label, Grams.From(0.01m), [Weighed("brim"), Weighed("stripe 2")]);
    }
}
