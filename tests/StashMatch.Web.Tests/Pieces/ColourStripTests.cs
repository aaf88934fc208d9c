using Bunit;
using StashMatch.Web.Pieces;
using Xunit;

namespace StashMatch.Web.Tests.Pieces;

public sealed class ColourStripTests : BunitContext
{
    [Fact]
    public void Every_colour_is_shown_with_code_and_name_and_once_more_in_grey()
    {
        var strip = Render<ColourStrip>(p => p.Add(s => s.Stripes,
        [
            new("stripe 1", "Moss", "Mo", "#5B7A3A"), new("stripe 2", "No band", "Nb", null), new("stripe 3", "open", null, null),
        ]));
        Assert.Equal("Stripes in order: Moss (Mo), No band (Nb), open", strip.Find("[role=img]").GetAttribute("aria-label"));
        Assert.Equal(3, strip.FindAll(".strip:not(.grey) span").Count);
        Assert.Equal(["--yarn:#5B7A3A", "--yarn:transparent", "--yarn:transparent"], strip.FindAll(".strip.grey span").Select(s => s.GetAttribute("style")));
        Assert.Equal(2, strip.FindAll(".strip.grey span.none").Count);
        Assert.Equal(["Mo", "Nb", "–"], strip.FindAll(".strip-names b").Select(b => b.TextContent));
        Assert.Equal("stripe 2", strip.FindAll(".strip:not(.grey) span")[1].GetAttribute("data-part"));
    }

    [Fact]
    public void One_colour_alone_has_no_order() =>
        Assert.Equal("", Render<ColourStrip>(p => p.Add(s => s.Stripes, [new("stripe 1", "Moss", "Mo", "#5B7A3A")])).Markup.Trim());
}
