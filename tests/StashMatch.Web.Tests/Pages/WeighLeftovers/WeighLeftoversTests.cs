using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store;
using Xunit;
using Page = StashMatch.Web.Pages.WeighLeftovers.WeighLeftovers;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class WeighLeftoversTests : PageContext
{
    [Fact]
    public async Task A_ball_on_the_line_shows_its_metres_and_yards_and_is_saved()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Moss bank");
        Type(page, "grams", "27,5");
        Type(page, "core or bowl, grams", "4");
        Type(page, "label, as printed", "50 g/125 m");
        Assert.Contains("58.8 m / 64.2 yd", page.Find("#live").TextContent, StringComparison.Ordinal);
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Moss bank is saved", page.Find("p[role=status]").TextContent, StringComparison.Ordinal));
        var logged = Assert.Single(await Leftovers.ListAsync(TestContext.Current.CancellationToken));
        Assert.Equal(23.5m, logged.Weighing.Net.Value);
        Assert.Equal("", ByLabel(page, "name").GetAttribute("value") ?? "");
    }

    [Fact]
    public async Task What_cannot_be_read_is_said_beside_the_field_and_nothing_typed_is_lost()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Plum");
        Type(page, "grams", "1.234,5");
        Type(page, "fibre", "80% merino, 30% nylon");
        await page.Find("form.entry").SubmitAsync();
        Assert.Contains("more than one decimal sign", page.Find("#grams-message").TextContent, StringComparison.Ordinal);
        Assert.Contains("110 %, not 100 %", page.Find("#fibre-message").TextContent, StringComparison.Ordinal);
        Assert.Equal("Plum", ByLabel(page, "name").GetAttribute("value"));
        Assert.Equal("1.234,5", ByLabel(page, "grams").GetAttribute("value"));
        Assert.Empty(await Leftovers.ListAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_crumb_without_a_label_is_kept_and_left_out_of_plans()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Last inch");
        Type(page, "grams", "1.2");
        Assert.Contains("kept as a crumb", page.Find("#live").TextContent, StringComparison.Ordinal);
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Single(page.FindAll(".list li.crumb")));
        Assert.Empty(await Leftovers.ForHatsAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_same_yarn_again_takes_the_label_over_and_shows_it()
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        var page = Render<Page>();
        var button = page.FindAll("button").Single(b => b.TextContent.StartsWith("same yarn again", StringComparison.Ordinal));
        Assert.Contains("50 g / 210 m", button.TextContent, StringComparison.Ordinal);
        await button.ClickAsync();
        Assert.Equal("50 g / 210 m", ByLabel(page, "label, as printed").GetAttribute("value"));
    }

    [Fact]
    public async Task A_leftover_taken_off_the_list_can_be_put_back_and_the_demo_cleared_away()
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        var page = Render<Page>();
        Assert.Equal(24, page.FindAll(".list > li").Count);
        await page.FindAll("button").First(b => b.TextContent.StartsWith("take off the list", StringComparison.Ordinal)).ClickAsync();
        page.WaitForAssertion(() => Assert.Equal(23, page.FindAll(".list > li").Count));
        await page.FindAll("button").Single(b => b.TextContent == "put it back").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal(24, page.FindAll(".list > li").Count));
        await page.FindAll("button").Single(b => b.TextContent == "Clear the demo away").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("Nothing is weighed yet", page.Markup, StringComparison.Ordinal));
    }

    private static IElement ByLabel(IRenderedComponent<Page> page, string label)
    {
        var id = page.FindAll("label").Single(l => l.TextContent == label).GetAttribute("for");
        return page.Find($"#{id}");
    }

    private static void Type(IRenderedComponent<Page> page, string label, string text) => ByLabel(page, label).Input(text);
}
