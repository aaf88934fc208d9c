using System.Xml.Linq;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class HatDrawingTests
{
    private const string Hostile = "<script>&\"'\u0001\ud800]]>--";

    [Fact]
    public void Every_part_is_there_once_in_both_drawings() => Assert.All(Paints.Plans(1, 4, 6, 24), plan =>
    {
        var paint = Paints.For(plan.Parts);
        var names = plan.Parts.Select(p => p.Name).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(names, Parts(HatDrawing.OffTheNeedles(plan, paint, "x", "a hat")));
        Assert.Equal(names, Parts(HatDrawing.OnTheHead(plan, paint, "x", "a hat")));
    });

    [Fact]
    public void Missing_paint_and_hostile_words_leave_it_well_formed() => Assert.All(Paints.Plans(3, 12), plan =>
    {
        var hostile = plan.Parts.Where((_, i) => i % 2 == 0).ToDictionary(
            p => p.Name, _ => new PartPaint("\"/><script>", Hostile, Hostile, true), StringComparer.Ordinal);
        foreach (var drawing in new[]
        {
            HatDrawing.OffTheNeedles(plan, hostile, Hostile, Hostile), HatDrawing.OnTheHead(plan, hostile, Hostile, Hostile),
            HatDrawing.Sketch(plan.Parts, hostile, Hostile, Hostile),
        })
        {
            var names = XDocument.Parse(drawing).Descendants().Select(e => e.Name.LocalName).ToList();
            Assert.DoesNotContain("script", names);
            Assert.DoesNotContain("NaN", drawing, StringComparison.Ordinal);
        }
    });

    [Fact]
    public void The_sketch_holds_every_printed_part_and_its_bands_grow_with_their_lengths()
    {
        var parts = Samples.Practice.Needs("C", 4).Parts;
        Assert.Equal(parts.Select(p => p.Name).Order(StringComparer.Ordinal), Parts(HatDrawing.Sketch(parts, Paints.For(parts), "s", "a hat")));
        HatPart[] yarns =
        [
            new("A", PartKind.Yarn, 0, null, 0, default, 10, 0), new("B", PartKind.Yarn, 0, null, 0, default, 30, 0), new("C", PartKind.Yarn, 0, null, 0, default, 0, 0),
        ];
        var areas = WornHat.Of(yarns).Body.Select(p => p.Area).ToList();
        Assert.True(areas[1] > 1.5 * areas[0] && areas[0] > 100 * areas[2], string.Join(' ', areas));
        Assert.Equal(["A", "B", "C"], Parts(HatDrawing.Sketch(yarns, Paints.For(yarns), "s", "a hat")));
        Assert.Empty(Parts(HatDrawing.Sketch([], Paints.For([]), "s", "a hat")));
    }

    [Fact]
    public void The_same_hat_is_drawn_the_same()
    {
        var plan = Samples.BrimUp.PlanOf("C", 6);
        var paint = Paints.For(plan.Parts);
        Assert.Equal(HatDrawing.OnTheHead(plan, paint, "x", "t"), HatDrawing.OnTheHead(plan, paint, "x", "t"));
        Assert.Equal(HatDrawing.OffTheNeedles(plan, paint, "x", "t"), HatDrawing.OffTheNeedles(plan, paint, "x", "t"));
    }

    [Fact]
    public void Ids_carry_the_prefix_and_the_title_names_the_drawing()
    {
        var plan = Samples.SideToSide.PlanOf("C", 6);
        var svg = XDocument.Parse(HatDrawing.OnTheHead(plan, Paints.For(plan.Parts), "here", "Six stripes")).Root!;
        Assert.Equal("here-title", svg.Attribute("aria-labelledby")!.Value);
        Assert.Equal("Six stripes", svg.Elements().First().Value);
        Assert.All(svg.Descendants().Attributes("id"), a => Assert.StartsWith("here-", a.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void A_gap_is_hatched_and_a_short_part_keeps_its_colour()
    {
        var plan = Samples.SideToSide.PlanOf("C", 6);
        var paint = Paints.For(plan.Parts);
        paint.Remove("stripe 2");
        paint["stripe 3"] = paint["stripe 3"] with { Short = true };
        var parts = XDocument.Parse(HatDrawing.OnTheHead(plan, paint, "x", "t")).Descendants().Where(e => e.Attribute("data-part") is not null).ToList();
        var gap = parts.Single(e => e.Attribute("data-part")!.Value == "stripe 2");
        Assert.DoesNotContain(gap.Descendants(), e => e.Attribute("class")?.Value == "yarn");
        Assert.Contains("no yarn yet", gap.Elements().First().Value, StringComparison.Ordinal);
        var reaching = parts.Single(e => e.Attribute("data-part")!.Value == "stripe 3").Descendants().Select(e => e.Attribute("class")?.Value).ToList();
        Assert.Contains("yarn", reaching);
        Assert.Contains("gap", reaching);
    }

    [Fact]
    public void Off_the_needles_a_short_part_is_open_from_where_its_leftover_ends()
    {
        var plan = Samples.SideToSide.PlanOf("C", 6);
        var paint = Paints.For(plan.Parts);
        paint["stripe 3"] = paint["stripe 3"] with { Short = true, Lacks = 0.25 };
        paint["brim"] = paint["brim"] with { Short = true, Lacks = 0.5 };
        var root = XDocument.Parse(HatDrawing.OffTheNeedles(plan, paint, "x", "t")).Root!;
        double Of(string part, string half, string side) => double.Parse(
            root.Descendants().Single(e => e.Attribute("id")?.Value == $"x-{half}-{part}").Elements().Single().Attribute(side)!.Value, System.Globalization.CultureInfo.InvariantCulture);

        // A quarter of the stripe's width, half of the brim's depth; each clip stands over its edge by a unit or two.
        Assert.InRange(Of("stripe-3", "open", "width") / (Of("stripe-3", "open", "width") + Of("stripe-3", "knitted", "width")), 0.235, 0.265);
        Assert.InRange(Of("brim", "open", "height") / (Of("brim", "open", "height") + Of("brim", "knitted", "height")), 0.48, 0.52);
        Assert.True(Of("stripe-3", "open", "x") > Of("stripe-3", "knitted", "x"));
        Assert.True(Of("brim", "open", "y") > Of("brim", "knitted", "y"));
    }

    [Fact]
    public void Parts_are_numbered_in_knitting_order_and_codes_stand_on_slips()
    {
        var plan = Samples.SideToSide.PlanOf("C", 6);
        var parts = XDocument.Parse(HatDrawing.OffTheNeedles(plan, Paints.For(plan.Parts), "x", "t")).Descendants().Where(e => e.Attribute("data-part") is not null).ToList();
        IEnumerable<string> TextsOf(string part) => parts.Single(e => e.Attribute("data-part")!.Value == part).Elements().Where(e => e.Name.LocalName == "text").Select(e => e.Value);
        Assert.Equal(["1", "Mo"], TextsOf("stripe 1").Order(StringComparer.Ordinal));
        Assert.Equal(["2·3"], TextsOf("braid 1 strand a"));
        Assert.Contains("4", TextsOf("stripe 2"));
        Assert.Contains("16", TextsOf("stripe 6"));
        Assert.Equal(["18 brim", "Oa"], TextsOf("brim"));
    }

    [Fact]
    public void A_pom_pom_sits_on_the_worn_hat_where_there_is_one()
    {
        var plan = Samples.BrimUp.PlanOf("C", 6);
        var paint = Paints.For(plan.Parts);
        Assert.DoesNotContain("pom-pom", HatDrawing.OnTheHead(plan, paint, "x", "t"), StringComparison.Ordinal);
        paint["pom-pom"] = new PartPaint("#E2D3B2", "Oa", "pom-pom, Oat", false);
        var root = XDocument.Parse(HatDrawing.OnTheHead(plan, paint, "x", "t")).Root!;
        Assert.Single(root.Descendants(), e => e.Attribute("data-part")?.Value == "pom-pom");
        Assert.StartsWith("Pom-pom, Oat: ", HatText.InOrder(plan, paint)[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_worn_hat_shows_its_stitches_only_on_yarn()
    {
        var plan = Samples.SideToSide.PlanOf("C", 6);
        int Stitched(IReadOnlyDictionary<string, PartPaint> paint) => XDocument.Parse(HatDrawing.OnTheHead(plan, paint, "x", "t")).Descendants()
            .Where(e => e.Attribute("class")?.Value == "stitches").Sum(e => e.Attribute("d")!.Value.Count(c => c == 'M'));
        var paint = Paints.For(plan.Parts);
        var all = Stitched(paint);
        Assert.True(all > 600, $"{all}");
        Assert.Equal(0, Stitched(Paints.For([])));
        paint.Remove("stripe 3");
        Assert.InRange(Stitched(paint), 100, all - 100);
    }

    [Fact]
    public void In_words_every_section_is_told_in_knitting_order()
    {
        var plan = Samples.SideToSide.PlanOf("C", 6);
        var words = HatText.InOrder(plan, Paints.For(plan.Parts));
        Assert.Equal(6 + 5 + 2, words.Count);
        Assert.StartsWith("Stripe 1, Mo: ", words[0], StringComparison.Ordinal);
        Assert.Contains("10.0 cm (3 7/8 in) as knitted, folded to 5.0 cm (2 in)", words[^1], StringComparison.Ordinal);
        Assert.Contains("no yarn yet", HatText.InOrder(plan, Paints.For([]))[3], StringComparison.Ordinal);
    }

    private static IEnumerable<string> Parts(string drawing) => XDocument.Parse(drawing).Descendants()
        .Select(e => e.Attribute("data-part")?.Value).OfType<string>().Order(StringComparer.Ordinal);
}
