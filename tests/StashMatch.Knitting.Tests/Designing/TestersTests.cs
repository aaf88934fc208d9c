using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Designing;

/// <summary>Testers and their figures are invented.</summary>
public sealed class TestersTests
{
    private static readonly WrittenGauge Written = new(22, 30);

    [Fact]
    public void The_practice_testers_in_size_C_make_S1_17_yards_or_16_metres_and_T3_is_set_aside_and_named()
    {
        // 6.1 g at 2.5 yd/g = 15.25 yd; × 1.10 = 16.775 yd = 15.34 m.
        var judged = Testers.Judge(Samples.Practice, [Sheet("T1", 6.1m), Sheet("T2", 5.8m), Sheet("T3", 7.3m) with { StitchesPer10Cm = 20, ExtraRounds = 2 }]);
        Assert.Equal([("T1", SetAside.No), ("T2", SetAside.No), ("T3", SetAside.Gauge)], judged.Readings.Select(r => (r.Result.Tester, r.Why)));
        var largest = Assert.Single(judged.Weighed.Largest);
        Assert.Equal(("T1", "S1", FigureSource.Tester), (largest.Who, largest.Piece.Name, largest.Source));
        Assert.InRange(largest.Used.Yards, 15.25m, 15.252m);

        var rows = Yardage.Table(Samples.Practice, ["C", "D", "E"], null, 10, judged.Weighed);
        var s1 = rows[0].Pieces.Single(p => p.Piece.Name == "S1").Figure;
        Assert.Equal((17, 16, FigureSource.Tester), (s1.WholeYards, s1.WholeMetres, s1.Source));
        Assert.Equal(FigureSource.Estimated, rows[0].Pieces.Single(p => p.Piece.Name == "M").Figure.Source);
        Assert.All(rows.Skip(1).SelectMany(r => r.Pieces), p => Assert.Equal(FigureSource.Estimated, p.Figure.Source));
        Assert.Equal(FigureSource.Estimated, rows[0].Whole.Source);
    }

    [Fact]
    public void A_size_nobody_knitted_stays_estimated_even_where_its_figures_are_those_of_one_knitted()
    {
        var twin = Samples.Practice with { Sizes = [.. Samples.Practice.Sizes, Samples.Practice.Sizes[2] with { Size = "twin of C" }] };
        var judged = Testers.Judge(twin, [Sheet("T1", 6.1m)]);
        var rows = Yardage.Table(twin, ["C", "twin of C"], null, 10, judged.Weighed);
        Assert.Contains(rows[0].Pieces, p => p.Figure.Source == FigureSource.Tester);
        Assert.All(rows[1].Pieces, p => Assert.Equal(FigureSource.Estimated, p.Figure.Source));
    }

    [Fact]
    public void Whoever_did_not_knit_it_as_written_is_set_aside_whatever_the_figure()
    {
        var odd = new[]
        {
            Sheet("wide", 6) with { StitchesPer10Cm = 20.8m }, Sheet("just", 6) with { StitchesPer10Cm = 20.9m },
            Sheet("tall", 6) with { RowsPer10Cm = 31.6m }, Sheet("more", 6) with { ExtraRounds = 1 }, Sheet("fewer", 6) with { ExtraRounds = -1 },
            Sheet("other", 6) with { OtherYarn = true }, Sheet("silent", 6),
        };
        Assert.Equal(
            [SetAside.Gauge, SetAside.No, SetAside.Gauge, SetAside.Rounds, SetAside.Rounds, SetAside.Yarn, SetAside.No],
            Testers.Judge(Samples.Practice, odd).Readings.Select(r => r.Why));
    }

    [Fact]
    public void From_five_testers_on_one_far_from_the_others_is_set_aside_with_a_score_and_four_are_never_compared()
    {
        TesterResult[] five = [Sheet("a", 5.8m), Sheet("b", 6.0m), Sheet("c", 6.1m), Sheet("d", 5.9m), Sheet("e", 9.0m)];
        var judged = Testers.Judge(Samples.Practice, five);
        var far = Assert.Single(judged.Readings, r => r.Why == SetAside.FarFromOthers);
        Assert.Equal("e", far.Result.Tester);

        // Median 6.0, distances 0.2 0 0.1 0.1 3.0, MAD 0.1: 0.6745 × 3.0 / 0.1 = 20.2.
        Assert.InRange(far.Score!.Value, 20.1, 20.4);
        Assert.Equal("c", Assert.Single(judged.Weighed.Largest).Who);
        Assert.All(Testers.Judge(Samples.Practice, five[1..]).Readings, r => Assert.Equal(SetAside.No, r.Why));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    public void Grams_out_of_all_proportion_are_set_aside_however_many_testers_there_are(int others)
    {
        // 14.8 yd are reckoned, 5.92 g at 2.5 yd to a gram: 3.5 g are × 0.591, 3.6 × 0.608, 9.4 × 1.588, 9.5 × 1.605; 6.1 g are 0.215 oz, × 0.036.
        TesterResult[] sound = [.. Enumerable.Range(0, others).Select(i => Sheet($"T{i}", 5.9m + (i * 0.05m)))];
        const SetAside Out = SetAside.Proportion;
        foreach (var (grams, why) in new[] { (0.215m, Out), (3.5m, Out), (3.6m, SetAside.No), (9.4m, SetAside.No), (9.5m, Out) })
        {
            var judged = Testers.Judge(Samples.Practice, [.. sound, Sheet("odd", grams)]);
            var odd = Assert.Single(judged.Readings, r => r.Result.Tester == "odd");
            Assert.Equal(why == SetAside.No && others == 5 ? SetAside.FarFromOthers : why, odd.Why);
            if (why == SetAside.Proportion)
            {
                Assert.NotEqual("odd", Assert.Single(judged.Weighed.Largest).Who);
                Assert.Equal(others, Assert.Single(judged.Factors).Testers);
            }
        }
    }

    [Fact]
    public void The_same_tester_and_size_twice_counts_once_and_the_later_sheet_does()
    {
        var judged = Testers.Judge(Samples.Practice, [Sheet("Ada", 7.0m), Sheet("Bea", 5.8m), Sheet(" ada", 6.1m), Sheet("Ada", 6.3m) with { Size = "D" }]);
        Assert.Equal([SetAside.Again, SetAside.No, SetAside.No, SetAside.No], judged.Readings.Select(r => r.Why));
        Assert.Equal(6.1m * 2.5m, judged.Weighed.Largest.Single(l => l.Size == "C").Used.Yards, 2);
    }

    [Fact]
    public void Scores_agree_with_a_worked_example()
    {
        // Data attributed to Iglewicz and Hoaglin 1993; the scores as worked in a published notebook that follows them.
        var scores = ModifiedZ.Of([2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3]);
        double[] worked = [-1.57383333, 0.6745, -0.22483333, 0.22483333, -0.6745, -1.57383333, -0.6745, 0.6745, 25.85583333, 26.3055];
        Assert.All(scores.Zip(worked), s => Assert.Equal(s.Second, s.First, 6));
    }

    [Fact]
    public void Like_readings_do_not_make_a_small_step_of_the_scale_an_outlier()
    {
        TesterResult[] alike = [Sheet("a", 6), Sheet("b", 6), Sheet("c", 6), Sheet("d", 6), Sheet("e", 6.1m)];
        Assert.All(Testers.Judge(Samples.Practice, alike).Readings, r => Assert.Equal(SetAside.No, r.Why));
        Assert.All(ModifiedZ.Of([3, 3, 3]), s => Assert.Equal(0, s));
    }

    [Fact]
    public void A_factor_comes_with_an_interval_from_two_testers_on()
    {
        // 5.8 and 6.1 g of 2.5 yd/g against 14.8 yd: 0.9797 and 1.0304; mean 1.0051, sd 0.03583, t 6.314: ± 0.160.
        var two = Assert.Single(Testers.Judge(Samples.Practice, [Sheet("T1", 6.1m), Sheet("T2", 5.8m)]).Factors);
        Assert.Equal(("S1", 2), (two.Pool, two.Testers));
        Assert.InRange(two.Mean, 1.0050, 1.0052);
        Assert.InRange(two.High!.Value - two.Mean, 0.159, 0.161);
        var one = Assert.Single(Testers.Judge(Samples.Practice, [Sheet("T1", 6.1m)]).Factors);
        Assert.Null(one.Low);
    }

    [Fact]
    public void A_stripe_weighed_in_a_measured_hat_speaks_for_those_just_like_it_and_for_no_other_count_or_size()
    {
        var label = new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed);
        var sheet = new TesterResult("Ada", "C", 6, label, Grams.From(0.1m), [new("stripe 3", Grams.From(20), Grams.From(14.6m))]) { ByDesigner = true };
        var judged = Testers.Judge(Samples.SideToSide, [sheet]);
        var rows = Yardage.Table(Samples.SideToSide, ["C", "D"], [6, 7], 10, judged.Weighed);
        var stripes = rows[0].Parts.Where(p => p.Part.Kind == PartKind.Stripe).ToList();
        Assert.Equal([FigureSource.Estimated, FigureSource.Knitted, FigureSource.Knitted, FigureSource.Knitted, FigureSource.Knitted, FigureSource.Estimated], stripes.Select(p => p.Figure.Source));
        Assert.Equal(5.4 * 4 * 1.1, stripes[2].Figure.Metres, 6);
        Assert.Equal(23.76m, stripes[2].Planned.Value);
        Assert.All(rows.Skip(1).SelectMany(r => r.Parts), p => Assert.Equal(FigureSource.Estimated, p.Figure.Source));
    }

    private static TesterResult Sheet(string who, decimal grams) => new(
        who, "C", 4, new LabelRatio(1, MassUnit.Grams, 2.5m, LengthUnit.Yards, RatioSource.Printed), Grams.From(0.1m), [new("S1", Grams.From(grams + 4), Grams.From(4))])
    {
        StitchesPer10Cm = 22,
        RowsPer10Cm = 30,
        Written = Written,
    };
}
