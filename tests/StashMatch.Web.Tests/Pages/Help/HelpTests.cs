using Bunit;
using StashMatch.Web.Pages.Help;
using Xunit;
using Page = StashMatch.Web.Pages.Help.Help;

namespace StashMatch.Web.Tests.Pages.Help;

public sealed class HelpTests : PageContext
{
    [Theory]
    [InlineData("tension", "gauge")]
    [InlineData("Cast Off", "bind off")]
    [InlineData("stocking stitch", "stockinette")]
    [InlineData("put-up", "label")]
    [InlineData("scrap", "leftover")]
    [InlineData("4-ply", "fingering (4-ply)")]
    [InlineData("chunky", "bulky")]
    [InlineData("stash", "bag")]
    public void A_thing_is_found_by_its_other_word(string other, string ours)
    {
        GoTo($"/help?find={Uri.EscapeDataString(other)}");
        Assert.Contains(Render<Page>().FindAll("dd strong"), s => s.TextContent == ours);
    }

    [Fact]
    public void Every_word_stands_in_order_with_a_place_of_its_own()
    {
        var page = Render<Page>();
        var words = page.FindAll("section:first-of-type dt").Select(t => t.TextContent).ToList();
        Assert.True(words.Count > 60);
        Assert.Equal(words.Order(StringComparer.OrdinalIgnoreCase), words);
        var places = page.FindAll("dl div[id]").Select(d => d.Id).ToList();
        Assert.Equal(places.Distinct(StringComparer.Ordinal), places);
        Assert.Contains("put-up", places);
    }

    [Fact]
    public void A_word_nobody_knows_leads_to_all_of_them()
    {
        GoTo("/help?find=zeppelin");
        var page = Render<Page>();
        Assert.Contains("That word is not here", page.Find(".band").TextContent, StringComparison.Ordinal);
        Assert.Equal("/help", page.Find(".band a").GetAttribute("href"));
        Assert.NotEmpty(HelpWords.Found(" "));
    }
}
