using AngleSharp.Dom;
using Bunit;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.JSInterop;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Store.Data;
using StashMatch.Web.Pages.WeighLeftovers;
using StashMatch.Web.Phone;
using StashMatch.Web.Pieces;
using StashMatch.Web.Tests.Pages.WeighLeftovers;
using Xunit;
using Page = StashMatch.Web.Pages.Settings.Settings;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.Settings;

public sealed class SettingsTests : PageContext
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task First_unit_scale_step_and_allowance_hold_wherever_figures_are_shown()
    {
        await ReadyAsync();
        var page = Render<Page>();
        await page.Find("#first-unit").ChangeAsync(new() { Value = "Yards" });
        page.Find("#scale-step").Input("0,5");
        page.Find("#allowance").Input("12½");
        await page.Find("form.habits").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Every page uses it from now on", page.Find("p.said").TextContent, StringComparison.Ordinal));
        Assert.Contains("109.4 yd / 100.0 m", page.Find(".hint").TextContent, StringComparison.Ordinal);
        Assert.Equal("109.4 yd / 100.0 m", Shown.Both(Metres.Held(100)));
        Assert.Equal("1 in / 2.5 cm", Shown.Depth(Centimetres.From(2.54m)));
        Assert.Equal(("0.5", "12.5"), (Habits.StepText, Habits.AllowanceText));
        Assert.Equal("71.4 yd / 65.3 m, give or take 1\u00A0%", new WeighForm { Grams = "34", Step = "1", Label = "100 g/210 yd" }.Live());
        var read = await Services.GetRequiredService<SettingsStore>().ReadAsync(Stop);
        Assert.Equal((LengthUnit.Yards, Grams.From(0.5m), 12.5m), (read.FirstUnit, read.ScaleStep, read.AllowancePercent));
    }

    [Fact]
    public async Task What_cannot_be_read_is_named_and_nothing_typed_is_lost()
    {
        await ReadyAsync();
        var page = Render<Page>();
        page.Find("#scale-step").Input("none");
        page.Find("#allowance").Input("101");
        await page.Find("form.habits").SubmitAsync();
        Assert.Equal("The reserve must be from 0 to 100. The step of your scale must be a number, such as 34 or 34.5.", page.Find("#habits-wrong").TextContent);
        Assert.Equal("none", page.Find("#scale-step").GetAttribute("value"));
        Assert.Equal(10, (await Services.GetRequiredService<SettingsStore>().ReadAsync(Stop)).AllowancePercent);
    }

    [Fact]
    public async Task My_factor_is_shown_and_switched_off_and_on()
    {
        await ReadyAsync();
        var store = Services.GetRequiredService<KnitterStore>();
        await store.AddAsync("a swatch", new Calibration(1.2, 0.02), Stop);
        var page = Render<Page>();
        page.WaitForAssertion(() => Assert.Contains("% more yarn than most knitters, give or take", page.Markup, StringComparison.Ordinal));
        await Button(page, "switch off").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("what most knitters use", page.Markup, StringComparison.Ordinal));
        Assert.False((await store.UsageAsync(Stop)).Calibrated);
        await Button(page, "switch on").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("% more yarn than most knitters, give or take", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_backup_is_made_and_put_in_place_only_after_a_plain_question()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", new Weighing(Grams.From(20), default, Grams.From(1)), null), cancel: Stop);
        var phones = Services.GetRequiredService<PhoneStore>();
        var gone = await phones.PairAsync("gone", Stop);
        var page = Render<Page>();
        Assert.Contains("There is no backup yet", page.Markup, StringComparison.Ordinal);
        await Button(page, "Back up now").ClickAsync();
        page.WaitForAssertion(() => Assert.Single(page.FindAll(".backups tbody tr")));
        await Leftovers.RemoveAsync("moss", Stop);
        await phones.RevokeAsync(gone, Stop);
        await Button(page, "restore").ClickAsync();
        Assert.Contains("Everything becomes as it was then", page.Find(".sure").TextContent, StringComparison.Ordinal);
        await Button(page, "Cancel").ClickAsync();
        Assert.Empty(await Leftovers.ListAsync(Stop));
        await Button(page, "restore").ClickAsync();
        await Button(page, "Restore").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("is restored", page.Find("p.said").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        Assert.Equal("Moss", Assert.Single(await Leftovers.ListAsync(Stop)).Name);
        Assert.False(await phones.MayComeInAsync(gone, Stop));
        Assert.Contains("before a restore", page.Find(".backups").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Everything_is_deleted_only_when_the_words_are_typed()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", new Weighing(Grams.From(20), default, Grams.From(1)), null), cancel: Stop);
        var cut = 0;
        var phone = await Services.GetRequiredService<PhoneStore>().PairAsync("mine", Stop);
        using var line = Services.GetRequiredService<PhoneLines>().Hold(phone, () => cut++);
        var page = Render<Page>();
        page.Find("#sure").Input("delete");
        await page.Find("form.delete").SubmitAsync();
        Assert.Contains("Nothing is deleted", page.Find("#not-sure").TextContent, StringComparison.Ordinal);
        Assert.Single(await Leftovers.ListAsync(Stop));
        page.Find("#sure").Input("Delete everything ");
        await page.Find("form.delete").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Everything is deleted. The backups are still there", page.Find("p.said").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        Assert.Empty(await Leftovers.ListAsync(Stop));
        Assert.Equal(1, cut);
    }

    [Fact]
    public async Task Where_everything_cannot_be_deleted_nothing_is_and_the_page_says_that()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", new Weighing(Grams.From(20), default, Grams.From(1)), null), cancel: Stop);
        var page = Render<Page>();
        page.Find("#sure").Input("delete everything");
        await using (var other = new SqliteConnection($"Data Source={Services.GetRequiredService<StorePlace>().File};Pooling=False"))
        {
            await other.OpenAsync(Stop);
            await using var reading = other.BeginTransaction(deferred: true);
            await using var command = new SqliteCommand("SELECT count(*) FROM Leftovers", other, reading);
            await command.ExecuteScalarAsync(Stop);
            await page.Find("form.delete").SubmitAsync();
            page.WaitForAssertion(
                () => Assert.StartsWith("Nothing is deleted: another program was using the", page.Find("p.said").TextContent, StringComparison.Ordinal),
                TimeSpan.FromSeconds(30));
        }

        Assert.Equal("Moss", Assert.Single(await Leftovers.ListAsync(Stop)).Name);
    }

    [Fact]
    public async Task Everything_goes_into_an_empty_store_and_into_no_other()
    {
        await ReadyAsync();
        await Leftovers.WeighAsync(new NewLeftover("Moss", new Weighing(Grams.From(20), default, Grams.From(1)), null), cancel: Stop);
        var everything = Services.GetRequiredService<Everything>();
        var script = JSInterop.SetupModule("./js/weigh.js");
        script.Setup<IJSStreamReference>("bytes", _ => true).SetResult(new SentBytes(await everything.WriteAsync(Stop)));
        var page = Render<Page>();
        await page.Find("#everything-file").ChangeAsync(new());
        page.WaitForAssertion(() => Assert.Contains("StashMatch is not empty", page.Find(".wrong").TextContent, StringComparison.Ordinal));
        await everything.DeleteAsync(backupsToo: false, Stop);
        await page.Find("#everything-file").ChangeAsync(new());
        page.WaitForAssertion(() => Assert.Contains("Everything in the file is here now", page.Find("p.said").TextContent, StringComparison.Ordinal));
        Assert.Equal("Moss", Assert.Single(await Leftovers.ListAsync(Stop)).Name);
    }

    [Fact]
    public async Task A_code_is_shown_for_a_phone_and_a_paired_one_is_let_in_no_more()
    {
        await ReadyAsync();
        var phones = Services.GetRequiredService<PhoneStore>();
        var id = await phones.PairAsync("kitchen phone", Stop);
        var page = Render<Page>();
        Assert.Contains("What is sent is not encrypted", page.Markup, StringComparison.Ordinal);
        await Button(page, "Show a code").ClickAsync();
        var shown = page.Find(".code-shown b").TextContent;
        Assert.Matches("^[0-9]{3} [0-9]{3}$", shown);
        Assert.True(Services.GetRequiredService<PairingCode>().TryUse(shown));
        await Button(page, "Remove this phone").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("No phone is paired", page.Markup, StringComparison.Ordinal));
        Assert.False(await phones.MayComeInAsync(id, Stop));
    }

    [Fact]
    public async Task From_a_phone_nothing_can_be_restored_paired_or_deleted()
    {
        await ReadyAsync();
        Person.Now = PhoneCookie.Person(Guid.NewGuid());
        var page = Render<Page>();
        page.WaitForAssertion(() => Assert.Contains("are done at the computer itself", page.Markup, StringComparison.Ordinal));
        Assert.NotEmpty(page.FindAll("form.habits"));
        Assert.Empty(page.FindAll("form.delete"));
        Assert.DoesNotContain("Show a code", page.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Back up now", page.Markup, StringComparison.Ordinal);
    }

    private static IElement Button(IRenderedComponent<Page> page, string text) =>
        page.FindAll("button").First(b => b.TextContent.StartsWith(text, StringComparison.Ordinal));
}
