using AngleSharp.Dom;
using Bunit;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Store.Data;
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
        Type(page, "core or bowl", "4");
        Type(page, "label, as printed", "50 g/125 m");
        Assert.Contains("58.8 m / 64.2 yd", page.Find("#live").TextContent, StringComparison.Ordinal);
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Moss bank is saved", Said(page), StringComparison.Ordinal));
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

    [Fact]
    public async Task A_leftover_is_weighed_again_in_its_place_core_and_all()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", Weighed(27.5m, 4), Label), cancel: TestContext.Current.CancellationToken);
        var page = Render<Page>();
        await Button(page, "weigh again").ClickAsync();
        Assert.Equal("4", page.Find("#core-moss").GetAttribute("value"));
        ByLabel(page, "weighs now, grams").Input("14,x");
        await page.Find("form.again").SubmitAsync();
        Assert.Contains("Grams is not a number", page.Find("#wrong-moss").TextContent, StringComparison.Ordinal);
        Assert.Equal("14,x", ByLabel(page, "weighs now, grams").GetAttribute("value"));
        ByLabel(page, "weighs now, grams").Input("14,0");
        await page.Find("form.again").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Moss now weighs 10.0 g", Said(page), StringComparison.Ordinal));
        Assert.Empty(page.FindAll("form.again"));
        Assert.Equal("10.0 g", page.Find(".list .figure").TextContent);
        Assert.Equal(2, Assert.Single(await Leftovers.ListAsync(TestContext.Current.CancellationToken)).Weighings);
    }

    [Fact]
    public async Task A_leftover_knitted_up_stays_on_the_list_out_of_hats_until_put_back()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", Weighed(27.5m, 4), Label), cancel: TestContext.Current.CancellationToken);
        var page = Render<Page>();
        await Button(page, "knitted up").ClickAsync();
        page.WaitForAssertion(() => Assert.StartsWith("knitted up", page.Find(".list .about").TextContent, StringComparison.Ordinal));
        Assert.Empty(await Leftovers.ForHatsAsync(TestContext.Current.CancellationToken));
        await Button(page, "put it back").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("It is back", Said(page), StringComparison.Ordinal));
        Assert.Single(await Leftovers.ForHatsAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_save_the_store_does_not_take_is_never_called_saved_and_keeps_what_was_typed()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Moss");
        Type(page, "grams", "6");
        await SqlAsync("ALTER TABLE Ledger RENAME TO Elsewhere");
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("What you typed is still here", page.Find("form.entry").TextContent, StringComparison.Ordinal));
        Assert.DoesNotContain("is saved", Said(page), StringComparison.Ordinal);
        Assert.Equal("Moss", ByLabel(page, "name").GetAttribute("value"));
        await SqlAsync("ALTER TABLE Elsewhere RENAME TO Ledger");
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Moss is saved", Said(page), StringComparison.Ordinal));
        Assert.Single(await Leftovers.ListAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Enter_pressed_twice_logs_one_leftover()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Moss");
        Type(page, "grams", "6");
        await Task.WhenAll(page.Find("form.entry").SubmitAsync(), page.Find("form.entry").SubmitAsync());
        page.WaitForAssertion(() => Assert.Contains("Moss is saved", Said(page), StringComparison.Ordinal));
        Assert.Single(await Leftovers.ListAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_scale_step_used_last_is_there_the_next_evening()
    {
        await ReadyAsync();
        Assert.Equal("1", ByLabel(Render<Page>(), "scale step, grams").GetAttribute("value"));
        await DisposeComponentsAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", Weighed(27.5m, 4), Label), cancel: TestContext.Current.CancellationToken);
        Assert.Equal("0.1", ByLabel(Render<Page>(), "scale step, grams").GetAttribute("value"));
    }

    [Fact]
    public async Task The_frame_of_a_band_says_where_its_ratio_comes_from()
    {
        await ReadyAsync();
        foreach (var source in Enum.GetValues<RatioSource>())
        {
            await Leftovers.WeighAsync(
                new NewLeftover($"{source} one", Weighed(20, 0), new LabelRatio(50, MassUnit.Grams, 125, LengthUnit.Metres, source)),
                cancel: TestContext.Current.CancellationToken);
        }

        var page = Render<Page>();
        Assert.Equal("50 g / 125 m", page.Find(".band.printed .ratio").TextContent);
        Assert.Equal("50 g / 125 m, measured", page.Find(".band.measured .ratio").TextContent);
        Assert.Equal("50 g / 125 m, guessed", page.Find(".band.guessed .ratio").TextContent);
    }

    private static LabelRatio Label => new(50, MassUnit.Grams, 125, LengthUnit.Metres, RatioSource.Printed);

    private static Weighing Weighed(decimal grams, decimal tare) => new(Grams.From(grams), Grams.From(tare), Grams.From(0.1m));

    private static IElement Button(IRenderedComponent<Page> page, string text) =>
        page.FindAll("button").First(b => b.TextContent.StartsWith(text, StringComparison.Ordinal));

    private static string Said(IRenderedComponent<Page> page) => page.Find("p.said").TextContent;

    private async Task SqlAsync(string sql)
    {
        await using var context = await Services.GetRequiredService<IDbContextFactory<StashContext>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
        await context.Database.ExecuteSqlRawAsync(sql, TestContext.Current.CancellationToken);
    }

    private static IElement ByLabel(IRenderedComponent<Page> page, string label)
    {
        var id = page.FindAll("label").Single(l => l.TextContent == label).GetAttribute("for");
        return page.Find($"#{id}");
    }

    private static void Type(IRenderedComponent<Page> page, string label, string text) => ByLabel(page, label).Input(text);
}
