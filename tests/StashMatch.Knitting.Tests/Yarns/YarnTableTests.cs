using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

public sealed class YarnTableTests
{
    [Fact]
    public void Linear_density_agrees_with_the_table()
    {
        // Exact definitions: ISO 1144 (tex), 1 yd = 0.9144 m, 1 lb = 453.59237 g, 840 and 560 yd hanks.
        foreach (var row in CheckTable.Read("linear-density", 11).Rows)
        {
            var ratio = new LabelRatio(100, MassUnit.Grams, row.Number("metres_per_100g"), LengthUnit.Metres, RatioSource.Printed);
            Near(row.Real("tex"), ratio.Tex);
            Near(row.Real("dtex"), ratio.Decitex);
            Near(row.Real("denier"), ratio.Denier);
            Near(row.Real("nm"), ratio.MetricCount);
            Assert.InRange(ratio.CottonCount - row.Number("ne_c"), -0.00006m, 0.00006m);
            Assert.InRange(ratio.WorstedCount - row.Number("ne_worsted"), -0.00006m, 0.00006m);
            Near(row.Real("yd_per_100g"), ratio.MetresPer100Grams / Metres.PerYard);
            Near(row.Real("yd_per_oz"), ratio.MetresPerGram * Grams.PerOunce / Metres.PerYard);
            var inOunces = new LabelRatio(1, MassUnit.Ounces, row.Number("yd_per_oz"), LengthUnit.Yards, RatioSource.Printed);
            Near(row.Real("metres_per_100g"), inOunces.MetresPer100Grams);
        }
    }

    [Fact]
    public void Label_to_length_agrees_with_the_table()
    {
        // Exact definitions.
        foreach (var row in CheckTable.Read("label-to-length", 4).Rows)
        {
            var ratio = new LabelRatio(row.Number("label_grams"), MassUnit.Grams, row.Number("label_length_m"), LengthUnit.Metres, RatioSource.Printed);
            var held = Metres.Held(ratio.MetresIn(row.Number("grams")));
            Assert.Equal(row.Number("metres"), held.Value);
            Assert.InRange(held.Yards - row.Number("yards"), -0.0006m, 0.0006m);
        }
    }

    [Fact]
    public void The_scale_band_agrees_with_the_table()
    {
        // Half a scale step either way; computed.
        foreach (var row in CheckTable.Read("scale-band", 4).Rows)
        {
            var ratio = new LabelRatio(100, MassUnit.Grams, row.Number("metres_per_100g"), LengthUnit.Metres, RatioSource.Printed);
            var leftover = new Leftover("x", "x", new Weighing(Grams.From(row.Number("grams")), default, Grams.From(row.Number("step_g"))), ratio);
            Assert.Equal(row.Number("low_m"), leftover.HeldAtLeast.Value);
            Assert.Equal(row.Number("high_m"), leftover.HeldAtMost.Value);
        }
    }

    [Fact]
    public void Weight_classes_agree_with_the_guideline()
    {
        // Craft Yarn Council, Standard Yarn Weight System: stockinette stitches per 4 in; 23-24 belongs to 2 and 3.
        foreach (var row in CheckTable.Read("weight-class-gauge", 8).Rows)
        {
            var own = (WeightClass)(int)row.Number("class");
            Assert.Equal(row["name"], WeightClasses.Name(own));
            Assert.Contains(own, WeightClasses.ForGauge(row.Number("sts_per_4in_low")));
            Assert.Contains(own, WeightClasses.ForGauge(row.Number("sts_per_4in_high")));
            Assert.DoesNotContain(own, WeightClasses.ForGauge(row.Number("sts_per_4in_high") + 1));
        }

        Assert.Equal([WeightClass.Fine, WeightClass.Light], WeightClasses.ForGauge(23));
    }

    [Fact]
    public void The_brim_index_agrees_with_the_table()
    {
        // Our own rule.
        foreach (var row in CheckTable.Read("brim-index", 16).Rows)
        {
            var singles = row["yarn"].Contains("singles", StringComparison.Ordinal);
            var text = row["yarn"].Replace(", singles", "", StringComparison.Ordinal);
            Assert.True(FibreBlend.TryParse(text, out var blend, out var message), message);
            var rating = BrimRule.Rate(blend, false, singles ? YarnMake.Singles : YarnMake.Plied);
            Assert.Equal(row.Number("index"), rating.Index);
            Assert.Equal(row["class"], rating.Keeping.ToString().ToLowerInvariant());
            Assert.Equal(row["close_call"] == "yes", rating.CloseCall);
        }
    }

    [Fact]
    public void Size_edges_agree_with_the_table()
    {
        // Edges of our own size table; 57.4 and 56.0 are the ANSUR II medians of men and women.
        foreach (var row in CheckTable.Read("size-edges", 10).Rows)
        {
            var letter = HatSizes.LetterFor(Centimetres.From(row.Number("head_cm")));
            Assert.Equal(row["size"] is "smaller" or "larger" ? null : row["size"], letter);
        }

        Assert.Equal("ABCDEFGH", string.Concat(HatSizes.Default.Select(s => s.Size)));
    }

    [Fact]
    public void The_default_sizes_are_worked_out_for_these_heads()
    {
        Assert.Equal([48, 50, 52, 54, 55, 57, 59, 61], HatSizes.Default.Select(s => s.Head!.Value.Value));
        Assert.All(HatSizes.Default, s => Assert.Equal(s.Size, HatSizes.LetterFor(s.Head!.Value)));
        Assert.Equal((46.8m, 20.8m), (HatSizes.Default[2].Circumference.Value, HatSizes.Default[2].Height.Value));
        Assert.Equal("toddler", HatSizes.For("A"));
        Assert.Null(HatSizes.For("Z"));
    }

    [Fact]
    public void Every_row_of_the_seed_data_has_a_source()
    {
        foreach (var file in Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "seed-data"), "*.json"))
        {
            using var json = System.Text.Json.JsonDocument.Parse(File.ReadAllText(file));
            Assert.NotEqual(0, json.RootElement.GetArrayLength());
            Assert.All(json.RootElement.EnumerateArray(), row => Assert.NotEqual("", row.GetProperty("source").GetString()));
        }
    }

    private static void Near(double expected, decimal actual) => Assert.InRange((double)actual / expected, 1 - 6e-5, 1 + 6e-5);
}
