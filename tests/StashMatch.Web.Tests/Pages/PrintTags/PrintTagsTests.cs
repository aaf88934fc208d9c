using Bunit;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using Xunit;
using Page = StashMatch.Web.Pages.PrintTags.PrintTags;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.PrintTags;

public sealed class PrintTagsTests : PageContext
{
    [Fact]
    public async Task A_tag_has_its_fixed_places_and_the_frame_of_its_ratio()
    {
        await ReadyAsync();
        foreach (var source in Enum.GetValues<RatioSource>())
        {
            await WeighAsync($"{source} one", 20.5m, new LabelRatio(4, MassUnit.Ounces, 190, LengthUnit.Yards, source));
        }

        var page = Render<Page>();
        Assert.Equal(["tag guessed", "tag measured", "tag printed"], page.FindAll(".tag").Select(t => t.ClassName).Order(StringComparer.Ordinal));
        var tag = page.Find(".tag.measured");
        Assert.Equal(("Mo", "Measured one", "20.5 g", "4 oz / 190 yd, measured", "31.4 m / 34.3 yd"), (Place(tag, "code"), Place(tag, "called"), Place(tag, "grams"), Place(tag, "ratio"), Place(tag, "length")));
        Assert.Equal("4 oz / 190 yd", Place(page.Find(".tag.printed"), "ratio"));
        Assert.Contains("green #", Place(tag, "more"), StringComparison.Ordinal);
        Assert.Contains("weighed 2", Place(tag, "more"), StringComparison.Ordinal);

        // The frame, the hole and the yarn's colour are drawn, so that they are printed without backgrounds too; the notches are cut into the measured frame alone.
        Assert.Equal("#4E8A47", tag.QuerySelector(".thread rect")!.GetAttribute("fill"));
        Assert.All(page.FindAll(".tag"), t => Assert.Equal(2, t.QuerySelectorAll(".hole circle").Length));
        var outlines = page.FindAll(".tag").ToDictionary(t => t.ClassName!, t => t.QuerySelector(".frame path")!.GetAttribute("d")!.Count(char.IsAsciiLetter), StringComparer.Ordinal);
        Assert.Equal((5, 5, 11), (outlines["tag printed"], outlines["tag guessed"], outlines["tag measured"]));
    }

    [Fact]
    public async Task The_tags_are_those_asked_for_and_none_of_what_is_knitted_up()
    {
        await ReadyAsync();
        foreach (var name in new[] { "Moss", "Oat", "Rust" })
        {
            await WeighAsync(name, 20, null);
        }

        await Leftovers.KnitUpAsync("rust", TestContext.Current.CancellationToken);
        Assert.Equal(2, Render<Page>().FindAll(".tag").Count);
        GoTo("/leftovers/tags?words=oat");
        Assert.Equal("Oat", Place(Assert.Single(Render<Page>().FindAll(".tag")), "called"));
        GoTo("/leftovers/tags?leftover=moss&leftover=rust");
        Assert.Equal(2, Render<Page>().FindAll(".tag").Count);
        GoTo("/leftovers/tags?leftover=nobody&order=sideways");
        Assert.Contains("so there is no tag to print", Render<Page>().Markup, StringComparison.Ordinal);
    }

    private static string Place(AngleSharp.Dom.IElement tag, string place) => tag.QuerySelector($".{place}")!.TextContent;

    private Task<string> WeighAsync(string name, decimal grams, LabelRatio? ratio) => Leftovers.WeighAsync(
        new NewLeftover(name, new Weighing(Grams.From(grams), default, Grams.From(0.1m)), ratio) { Colour = YarnColour.FromRgb(0x4E, 0x8A, 0x47) },
        cancel: TestContext.Current.CancellationToken);
}
