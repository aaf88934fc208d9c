using AngleSharp.Dom;
using Bunit;
using Xunit;
using Page = StashMatch.Web.Pages.WeighLeftovers.WeighLeftovers;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class EntryLineTests : PageContext
{
    [Fact]
    public async Task A_word_for_no_colour_is_named_and_typing_goes_on()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Moss");
        Type(page, "grams", "12 g");
        Type(page, "colour", "moonlight");
        await page.Find("form.entry").SubmitAsync();
        Assert.Contains("Colour must be a colour such as cream", page.Find("#colour-message").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".choice"));
        await page.Find("button.choose").ClickAsync();
        Assert.Contains("burgundy", page.Find(".choice").TextContent, StringComparison.Ordinal);
        Type(page, "colour", "light brown");
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Moss is saved", Said(page), StringComparison.Ordinal));
        Assert.Equal((12m, "#BDA999"), ((await Leftovers.ListAsync(TestContext.Current.CancellationToken))[0].Weighing.Net.Value, (await Leftovers.ListAsync(TestContext.Current.CancellationToken))[0].Colour!.Value.Hex));
    }

    private static IElement ByLabel(IRenderedComponent<Page> page, string label)
    {
        var id = page.FindAll("label").Single(l => l.TextContent == label).GetAttribute("for");
        return page.Find($"#{id}");
    }

    private static void Type(IRenderedComponent<Page> page, string label, string text) => ByLabel(page, label).Input(text);

    private static string Said(IRenderedComponent<Page> page) => page.Find("p.said").TextContent;
}
