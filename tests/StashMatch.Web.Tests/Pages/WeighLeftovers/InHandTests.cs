using AngleSharp.Dom;
using Bunit;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using Xunit;
using Page = StashMatch.Web.Pages.WeighLeftovers.WeighLeftovers;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class InHandTests : PageContext
{
    [Fact]
    public async Task Knitted_up_is_undone_from_its_history_on_a_page_opened_anew()
    {
        await ReadyAsync();
        var id = await Leftovers.WeighAsync(new NewLeftover("Moss", new Weighing(Grams.From(25), default, Grams.From(1)), new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed)), null, TestContext.Current.CancellationToken);
        await Leftovers.KnitUpAsync(id, TestContext.Current.CancellationToken);
        var page = Render<Page>();
        Assert.Equal("knitted up, nothing left", page.Find(".list .length").TextContent);
        Assert.DoesNotContain("25.0 g", page.Find(".list").TextContent, StringComparison.Ordinal);
        await Button(page, "details").ClickAsync();
        Assert.StartsWith("Knitted up, nothing left", page.Find("dialog .reading").TextContent, StringComparison.Ordinal);
        page.WaitForAssertion(() => Button(page, "undo: knitted up"));
        await Button(page, "undo: knitted up").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("Undone: Moss, knitted up", Said(page), StringComparison.Ordinal));
        Assert.Equal(25m, (await Leftovers.FindAsync(id, TestContext.Current.CancellationToken))!.Left.Value);
    }

    [Fact]
    public async Task A_step_undone_from_its_history_is_not_undone_again_from_the_line_above()
    {
        await ReadyAsync();
        var id = await Leftovers.WeighAsync(new NewLeftover("Moss", new Weighing(Grams.From(25), default, Grams.From(1)), null), null, TestContext.Current.CancellationToken);
        await Leftovers.ReweighAsync(id, new Weighing(Grams.From(20), default, Grams.From(1)), TestContext.Current.CancellationToken);
        var page = Render<Page>();
        await Button(page, "knitted up").ClickAsync();
        page.WaitForAssertion(() => Button(page, "undo: Moss knitted up"));
        await Button(page, "details").ClickAsync();
        page.WaitForAssertion(() => Button(page, "undo: knitted up"));
        await Button(page, "undo: knitted up").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("Undone: Moss, knitted up", Said(page), StringComparison.Ordinal));
        Assert.DoesNotContain(page.FindAll("button"), b => b.TextContent.StartsWith("undo: ", StringComparison.Ordinal));
        Assert.Equal(20m, (await Leftovers.FindAsync(id, TestContext.Current.CancellationToken))!.Left.Value);
    }

    private static IElement Button(IRenderedComponent<Page> page, string text) =>
        page.FindAll("button").First(b => b.TextContent.StartsWith(text, StringComparison.Ordinal));

    private static string Said(IRenderedComponent<Page> page) => page.Find("p.said").TextContent;
}
