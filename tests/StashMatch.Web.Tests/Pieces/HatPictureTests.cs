using Bunit;
using StashMatch.Knitting.Tests;
using StashMatch.Pictures;
using StashMatch.Web.Pieces;
using Xunit;

namespace StashMatch.Web.Tests.Pieces;

public sealed class HatPictureTests : BunitContext
{
    [Fact]
    public void Parts_are_stepped_to_in_knitting_order_and_told_in_it()
    {
        var needs = Samples.BrimUp.Needs("C", 6);
        var paint = needs.Parts.ToDictionary(p => p.Name, p => new PartPaint("#5B7A3A", "Mo", $"{p.Name}, Moss", false), StringComparer.Ordinal);
        var picture = Render<HatPicture>(p => p.Add(h => h.Hat, needs).Add(h => h.Paint, paint).Add(h => h.Title, "Six").AddChildContent("<a href=\"/x\">more</a>"));
        var drawing = picture.Find(".drawing");
        Assert.Equal("0", drawing.GetAttribute("tabindex"));
        Assert.Equal(needs.Parts.Select(p => p.Name), drawing.GetAttribute("data-order")!.Split('|'));
        Assert.All(needs.Parts, part => Assert.Equal(2, picture.FindAll($".hat [data-part='{part.Name}']").Count));
        Assert.StartsWith("Brim, Moss: ", picture.FindAll(".words li")[0].TextContent, StringComparison.Ordinal);
        Assert.StartsWith("Stripe 6, Moss: ", picture.FindAll(".words li")[^1].TextContent, StringComparison.Ordinal);
        Assert.Equal("more", picture.Find(".lit-line a").TextContent);
        Assert.Empty(picture.FindAll("[aria-live]"));
    }
}
