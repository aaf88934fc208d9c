using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

public sealed class TogetherCareAndPackTests
{
    [Fact]
    public void Strands_together_agree_with_the_table()
    {
        // Computed: tex adds (ISO 1144).
        foreach (var row in CheckTable.Read("strands-together", 5).Rows)
        {
            var strands = row["strands_m_per_100g"].Split('+').Select(s => decimal.Parse(s, System.Globalization.CultureInfo.InvariantCulture)).ToList();
            Assert.InRange(HeldTogether.Ratio(strands) - row.Number("together_m_per_100g"), -0.005m, 0.005m);
        }
    }

    [Fact]
    public void Sock_yarn_held_double_the_shorter_strand_governs()
    {
        // Worked by hand, all invented: A 22 g at 4.2 m/g, B 15 g at 4.0 m/g.
        Leftover Of(string id, decimal grams, decimal perGram) => new(
            id, id, new Weighing(Grams.From(grams), default, Grams.From(0.1m)), new LabelRatio(1, MassUnit.Grams, perGram, LengthUnit.Metres, RatioSource.Printed));
        var (a, b) = (Of("a", 22, 4.2m), Of("b", 15, 4.0m));
        Assert.Equal(46.2m, HeldTogether.Doubled(a).Length.Value);
        var both = HeldTogether.Of(a, b);
        Assert.Equal((60m, 32.4m, 0m), (both.Length.Value, both.Left[0].Value, both.Left[1].Value));
        Assert.Equal(205, Math.Round(both.MetresPer100Grams));
        Assert.Equal(WeightClass.Light, both.Class);
    }

    [Fact]
    public void Care_of_two_yarns_agrees_with_the_table()
    {
        // A treatment milder than the label is always acceptable (ISO 3758 / GINETEX practice); column-wise minimum is ours.
        foreach (var row in CheckTable.Read("care-merge", 5).Rows)
        {
            Assert.True(Care.TryParse(row["a"], out var a, out _) & Care.TryParse(row["b"], out var b, out _));
            Assert.Equal(row["result"], Care.Merge(a!, b!).ToString());
            Assert.Equal(row["result"], Care.Merge(b!, a!).ToString());
        }
    }

    [Fact]
    public void Colour_verdicts_agree_with_the_table()
    {
        // Figures computed; verdict thresholds are ours.
        foreach (var row in CheckTable.Read("colour-verdicts", 4).Rows)
        {
            Assert.True(YarnColour.TryParse(row["a"], out var a, out _) & YarnColour.TryParse(row["b"], out var b, out _));
            Assert.InRange(ColourDifference.Ciede2000(a.Lab, b.Lab) - row.Real("dE00"), -0.02, 0.02);
            Assert.InRange(Math.Abs(a.Lab.L - b.Lab.L) - row.Real("dL"), -0.06, 0.06);
            Assert.Equal(row["stripes"], ColourRule.Stripes(a, b));
            Assert.Equal(row["braid"], ColourRule.Braid(a, b));
        }
    }

    [Fact]
    public void The_lawful_lightest_skein_agrees_with_the_table()
    {
        // Directive 76/211/EEC annex I; absolute floor = twice the error.
        foreach (var row in CheckTable.Read("tolerable-negative-error", 7).Rows)
        {
            var (nominal, error) = (row.Number("nominal_g"), PackTolerance.ErrorGrams(row.Number("nominal_g")));
            Assert.Equal(row.Number("error_g"), error);
            Assert.Equal((row.Number("floor_g"), row.Number("absolute_floor_g")), (nominal - error, nominal - (2 * error)));
        }
    }

    [Fact]
    public void A_mistyped_gauge_or_label_is_asked_about()
    {
        LabelRatio Label(decimal metres) => new(100, MassUnit.Grams, metres, LengthUnit.Metres, RatioSource.Printed);
        Assert.False(Tightness.IsOdd(Label(400), Gauge.Of(28, 40)));
        Assert.True(Tightness.IsOdd(Label(40), Gauge.Of(28, 40)));
        Assert.True(Tightness.IsOdd(Label(1_400), Gauge.Of(10, 14)));
        Assert.True(WeightClasses.IsFarFrom(WeightClass.SuperFine, Label(200)));
        Assert.False(WeightClasses.IsFarFrom(WeightClass.Light, Label(280)));
        Assert.InRange(Tightness.UsualRows(Label(400), 28), 34, 44);
        Assert.InRange(Tightness.UsualRows(Label(200), 20), 24, 34);
    }
}
