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
        Type(page, "weight of core or bowl (taken off)", "4");
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
        Type(page, "grams", "1234.5");
        Assert.Empty(page.FindAll("#grams-message"));
        Assert.NotEmpty(page.FindAll("#fibre-message"));
        Assert.Empty(await Leftovers.ListAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_crumb_without_a_label_is_kept_and_left_out_of_plans()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Last inch");
        Type(page, "grams", "1.2");
        Assert.Contains("No label yet", page.Find("#live").TextContent, StringComparison.Ordinal);
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Single(page.FindAll(".list .crumb")));
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
        Assert.Equal(24, page.FindAll(".list > li.row").Count);
        await Button(page, "details").ClickAsync();
        await Button(page, "delete").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal(23, page.FindAll(".list > li.row").Count));
        await Button(page, "undo: ").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal(24, page.FindAll(".list > li.row").Count));
        await page.FindAll("button").Single(b => b.TextContent == "Remove the demo").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("Nothing is weighed yet", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_leftover_is_weighed_again_core_and_all()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", Weighed(27.5m, 4), Label), cancel: TestContext.Current.CancellationToken);
        var page = Render<Page>();
        await Button(page, "weigh again").ClickAsync();
        Assert.Equal("4", page.Find("#core-moss").GetAttribute("value"));
        ByLabel(page, "weighs now, grams").Input("14,x");
        await page.Find("form.again").SubmitAsync();
        Assert.Contains("Grams must be a number", page.Find("#wrong-moss").TextContent, StringComparison.Ordinal);
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
        page.WaitForAssertion(() => Assert.Equal("knitted up, nothing left", page.Find(".list .length").TextContent));
        Assert.Empty(await Leftovers.ForHatsAsync(TestContext.Current.CancellationToken));
        await Button(page, "undo: ").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("Undone: Moss knitted up", Said(page), StringComparison.Ordinal));
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
        var page = Render<Page>();
        Assert.Equal("1", ByLabel(page, "my scale shows every … g").GetAttribute("value"));
        Type(page, "name", "Moss");
        Type(page, "grams", "27.5");
        Type(page, "my scale shows every … g", "0.1");
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Moss is saved", Said(page), StringComparison.Ordinal));
        await DisposeComponentsAsync();
        Assert.Equal("0.1", ByLabel(Render<Page>(), "my scale shows every … g").GetAttribute("value"));
    }

    [Fact]
    public async Task Several_steps_are_undone_one_after_another_the_weighing_of_a_new_ball_last()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Moss");
        Type(page, "grams", "30");
        await page.Find("form.entry").SubmitAsync();
        await ActAsync(page, "too small to use");
        await ActAsync(page, "not for hats");
        await Button(page, "knitted up").ClickAsync();
        foreach (var (said, about) in new[] { ("Moss knitted up", "too small to use · not for hats"), ("the change to Moss", "too small to use · fibre"), ("the change to Moss", "fibre unknown") })
        {
            page.WaitForAssertion(() => Assert.Contains($"undo: {said}", page.Find("p.said").TextContent, StringComparison.Ordinal));
            await Button(page, "undo: ").ClickAsync();
            page.WaitForAssertion(() => Assert.StartsWith(about, page.Find(".list .about").TextContent, StringComparison.Ordinal));
        }

        await Button(page, "undo: weighing Moss").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("Nothing is weighed yet", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Everything_about_a_leftover_can_be_changed_and_its_history_tells_it()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", Weighed(27.5m, 4), Label), cancel: TestContext.Current.CancellationToken);
        await Leftovers.WeighAsync(new NewLeftover("Oat", Weighed(20, 0), Label), cancel: TestContext.Current.CancellationToken);
        var page = Render<Page>();
        await page.FindAll("button").Single(b => b.TextContent == "details Moss").ClickAsync();
        foreach (var (field, text) in new[] { ("e-name", "Moss bank"), ("e-code", "Oa"), ("e-label", "4 oz / 190 yd"), ("e-class", "3"), ("e-fibre", "wool"), ("e-colour", "dark green"), ("e-bag", "Peg bag"), ("e-kept-in", "tin"), ("e-back", "mittens"), ("e-note", "knots") })
        {
            page.Find($"#{field}").Input(text);
        }

        await page.Find("form.edit").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Two letters is on Oat already", page.Find("#e-code-message").TextContent, StringComparison.Ordinal));
        Assert.Equal("Moss bank", page.Find("#e-name").GetAttribute("value"));
        page.Find("#e-code").Input("Zz");
        await page.Find("form.edit").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Moss bank is changed", Said(page), StringComparison.Ordinal));
        var moss = (await Leftovers.FindAsync("moss", TestContext.Current.CancellationToken))!;
        Assert.Equal(("Moss bank", "Zz", "4 oz / 190 yd", "#27512F", "Peg bag", "tin", "mittens", "knots"), (moss.Name, moss.Code, moss.Ratio!.ToString(), moss.Colour!.Value.Hex, moss.Bag, moss.KeptIn, moss.KeptBackFor, moss.Note));
        await page.FindAll("button").Single(b => b.TextContent == "details Moss bank").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("name: Moss, now Moss bank", page.Find(".told").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_knitted_from_a_leftover_is_booked_and_never_more_than_there_is()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", Weighed(20, 0), Label), cancel: TestContext.Current.CancellationToken);
        var page = Render<Page>();
        await Button(page, "details").ClickAsync();
        page.Find("#used-moss").Input("20.5");
        await page.Find("form.used").SubmitAsync();
        Assert.Contains("is more than the 20.0 g there is", page.Find("#used-wrong-moss").TextContent, StringComparison.Ordinal);
        page.Find("#used-moss").Input("7,5");
        page.Find("#for-moss").Change("mittens");
        await page.Find("form.used").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("7.5 g of Moss is taken off, for mittens", Said(page), StringComparison.Ordinal));
        Assert.Equal("12.5 g", page.Find(".list .figure").TextContent);
        await Button(page, "details").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll("svg.history rect").Count));
        Assert.Contains("7.5 g knitted into mittens: 12.5 g, 31.3 m / 34.2 yd left", page.Find(".told").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_another_window_knitted_first_is_told_and_not_booked_twice()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", new Weighing(Grams.From(30), default, Grams.From(1)), null), cancel: TestContext.Current.CancellationToken);
        var page = Render<Page>();
        await page.FindAll(".list button").First(b => b.TextContent.StartsWith("details", StringComparison.Ordinal)).ClickAsync();
        await Leftovers.UseAsync("moss", Grams.From(20), cancel: TestContext.Current.CancellationToken);
        page.Find("#used-moss").Input("20");
        await page.Find("form.used").SubmitAsync();
        page.WaitForAssertion(() => Assert.StartsWith("Nothing is taken off. Only 10.0 g of Moss is left, less than 20 g.", Said(page), StringComparison.Ordinal));
        Assert.Equal("10.0 g", page.Find(".list .figure").TextContent);
        Assert.Equal(10m, (await Leftovers.FindAsync("moss", TestContext.Current.CancellationToken))!.Left.Value);
    }

    [Fact]
    public async Task A_lost_label_is_measured_off_and_the_ball_is_marked_so()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "name", "Blue-grey");
        Type(page, "grams", "38.0");
        Type(page, "my scale shows every … g", "0.1");
        await Button(page, "I have no label").ClickAsync();
        page.Find("#its-grams").Input("4,1");
        Assert.Contains("244 m / 267 yd to 100 g, give or take 2 %; about 92.7 m / 101.4 yd in all", page.Find("#measured-told").TextContent, StringComparison.Ordinal);
        await page.Find("form.no-label").SubmitAsync();
        Assert.Equal("4.1 g / 10 m", ByLabel(page, "label, as printed").GetAttribute("value"));
        await page.Find("form.entry").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal("4.1 g / 10 m, measured", page.Find(".band.measured .ratio").TextContent));
        Assert.Equal("92.7 m / 101.4 yd", page.Find(".band.measured .length").TextContent);
    }

    [Fact]
    public async Task A_picture_too_long_or_cut_short_is_a_message()
    {
        await ReadyAsync();
        var page = Render<Page>();
        await page.Find("button.choose").ClickAsync();
        await Button(page, "from a photo").ClickAsync();
        await page.Find("#photo").ChangeAsync(new());
        page.WaitForAssertion(() => Assert.Contains("cannot read the photo", page.Find(".photo-colour .field-message").TextContent, StringComparison.Ordinal));
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
        Assert.Equal("50 g / 125 m, guess", page.Find(".band.guessed .ratio").TextContent);
    }

    private static LabelRatio Label => new(50, MassUnit.Grams, 125, LengthUnit.Metres, RatioSource.Printed);

    private static Weighing Weighed(decimal grams, decimal tare) => new(Grams.From(grams), Grams.From(tare), Grams.From(0.1m));

    internal static LoggedLeftover Logged(string name, decimal grams, string label, RatioSource from = RatioSource.Printed) =>
        new(new LeftoverDetails(name, LabelText.TryParse(label, from, out var ratio, out _) ? ratio : null) { Code = name[..2] })
        {
            Id = name,
            Weighing = Weighed(grams, 0),
            Left = Grams.From(grams),
            Promised = default,
            WeighedAt = default,
            Weighings = 1,
            IsDemo = false,
        };

    private static async Task ActAsync(IRenderedComponent<Page> page, string act)
    {
        page.WaitForElement(".list .acts");
        await Button(page, "details").ClickAsync();
        await Button(page, act).ClickAsync();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll("dialog")));
    }

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
