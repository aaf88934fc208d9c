using System.Xml.Linq;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class HatDrawingTests
{
    public static TheoryData<bool, string, int> Hats()
    {
        var data = new TheoryData<bool, string, int>();
        foreach (var size in new[] { "A", "C", "H" })
        {
            foreach (var stripes in new[] { 4, 7, 12 })
            {
                data.Add(true, size, stripes);
                data.Add(false, size, stripes);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Hats))]
    public void Off_the_needles_every_area_is_in_the_proportion_of_its_rows_and_stitches(bool sideToSide, string size, int stripes)
    {
        var plan = (sideToSide ? Samples.SideToSide : Samples.BrimUp).PlanOf(size, stripes);
        var perStitch = 100 / (double)(plan.Gauge.StitchesPerCm * plan.Gauge.RowsPerCm);
        foreach (var band in Bands.Of(plan))
        {
            var stitches = band.Section.Runs.Where(r => r.Pattern is not (StitchPattern.TubularEdge or StitchPattern.PickUp)).Sum(r => r.Rows * r.Stitches);
            Assert.InRange(band.Area / (stitches * perStitch), 0.98, 1.02);
        }
    }

    [Theory]
    [MemberData(nameof(Hats))]
    public void Every_part_but_the_seam_is_in_both_drawings_whatever_it_is_called(bool sideToSide, string size, int stripes)
    {
        var hat = (sideToSide ? Samples.SideToSide : Samples.BrimUp).Needs(size, stripes);
        var paint = hat.Parts.Where(p => p.Number % 3 != 1).ToDictionary(
            p => p.Name, p => new PartPaint("#5B7A3A", "<&", $"{p.Name} <script>\"&'", true, p.Number == 2), StringComparer.Ordinal);
        foreach (var svg in new[] { HatDrawing.OffTheNeedles(hat.Plan!, paint, "a", "t <b>"), HatDrawing.OnTheHead(hat, paint, "b", "t & u") })
        {
            var drawn = XDocument.Parse(svg).Descendants().Select(e => (string?)e.Attribute("data-part")).OfType<string>().ToHashSet(StringComparer.Ordinal);
            Assert.Equal(hat.Parts.Where(p => p.Kind != PartKind.Seam).Select(p => p.Name).Order(StringComparer.Ordinal), drawn.Order(StringComparer.Ordinal));
            Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_printed_hat_is_sketched_and_the_same_drawing_comes_out_twice()
    {
        var hat = Samples.Practice.Needs("C", 4);
        var none = new Dictionary<string, PartPaint>(StringComparer.Ordinal);
        var svg = HatDrawing.OnTheHead(hat, none, "x", "sketch");
        Assert.Equal(svg, HatDrawing.OnTheHead(hat, none, "x", "sketch"));
        Assert.Equal(10, XDocument.Parse(svg).Descendants().Count(e => e.Attribute("data-part") is not null));
    }

    [Fact]
    public void In_words_every_part_has_a_sentence_with_rows_and_both_units()
    {
        var hat = Samples.SideToSide.Needs("C", 6);
        var words = HatText.InOrder(hat, new Dictionary<string, PartPaint>(StringComparer.Ordinal));
        Assert.Equal(hat.Parts.Count, words.Count);
        Assert.Equal("Stripe 1: 28 rows, 7.0 cm (2.8 in) deep.", words[0]);
    }
}
