using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

/// <summary>The designer's three pages in a real browser; kits and testers are invented.</summary>
public sealed class DesigningTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task Tables_kits_and_testers_keep_nobody_out_light_and_dark_narrow_and_wide()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        foreach (var (width, dark) in new[] { (390, false), (390, true), (1280, false), (1280, true) })
        {
            var page = await app.PageAsync(width, dark);
            foreach (var form in new[] { "one&working=C~6", "pages", "line", "large", "words" })
            {
                await page.GotoAsync($"/tables?from=5&to=6&size=C&size=F&form={form}");
                await LookAsync(page);
            }

            await page.GotoAsync("/testers/sheet?hat=side-to-side-sample&size=C&stripes=6");
            await LookAsync(page);
            await page.GotoAsync("/kits");
            await Expect(page.GetByLabel("name", new() { Exact = true })).ToBeEnabledAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Another kit beside it" }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Try it" }).ClickAsync();
            await page.Locator("table.grid button.cell").First.ClickAsync(new() { Timeout = 60_000 });
            await Expect(page.Locator(".opened")).ToContainTextAsync("runs out first");
            await page.GetByRole(AriaRole.Button, new() { Name = "Find it" }).ClickAsync();
            await Expect(page.Locator(".panel .said")).ToContainTextAsync(" ", new() { Timeout = 60_000 });
            await LookAsync(page);
            await page.GotoAsync("/testers?hat=practice-hat");
            await Expect(page.Locator("#tester")).ToBeEnabledAsync();
            await KeepAsync(page, $"Ada {width} {dark}", "10", "3.9");
            await Expect(page.Locator("[aria-label='Results'] tbody tr").First).ToContainTextAsync("S1");
            await LookAsync(page);
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task A_kit_is_tried_and_a_cell_opened_by_keyboard_alone()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/kits?hat=practice-hat");
        await Expect(page.GetByLabel("name", new() { Exact = true })).ToBeEnabledAsync();
        await page.GetByLabel("kit 1, row 1, label").FocusAsync();
        await page.Keyboard.PressAsync("ControlOrMeta+a");
        await page.Keyboard.TypeAsync("50 g / 110 m");
        await page.Keyboard.PressAsync("Enter");
        var cell = page.Locator("table.grid button.cell").First;
        await Expect(cell).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await cell.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".opened")).ToBeVisibleAsync();
        await Expect(cell).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".opened")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task The_table_is_complete_with_scripts_blocked_and_reads_out_as_words()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(390, scripts: false);
        await page.GotoAsync("/tables?from=6&to=6");
        await page.GetByLabel("as", new() { Exact = true }).SelectOptionAsync("words");
        await page.GetByLabel("C", new() { Exact = true }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the table" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Article, new() { Name = "The table" })).ToMatchAriaSnapshotAsync("""
            - article "The table":
              - heading "Side to side, striped and braided" [level=2]
              - paragraph: 10 per cent to spare is in every length, which is rounded up after it to whole metres and whole yards. Grams are of a yarn whose label says 100 grams to 400 metres.
              - region "Size C":
                - heading "Size C, for a head of 52.0 centimetres or 20 and a half inches" [level=2]
                - heading "6 stripes" [level=3]
                - list:
                  - listitem: A stripe has 29 rows and is 7.3 centimetres or 2 and 7 eighths inches deep.
                  - listitem: A stripe takes 23 metres or 25 yards, 5.7 grams.
                  - listitem: Each strand of a braid takes 2 metres or 3 yards, 0.5 grams.
                  - listitem: The brim takes 86 metres or 94 yards, 21.5 grams.
                  - listitem: Seam and gathering thread take 2 metres or 2 yards, 0.4 grams.
                  - listitem: All of it takes 239 metres or 261 yards, 59.6 grams.
                  - listitem: These figures are estimated.
            """);
    }

    [Fact]
    public async Task A_hat_goes_out_as_a_file_and_comes_in_again_and_a_newer_one_is_refused_kindly()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/hats");
        await Expect(page.Locator("#open-file")).ToBeEnabledAsync();
        async Task OpenAsync(string text) => await page.Locator("#open-file").SetInputFilesAsync(new FilePayload { Name = "hat.json", MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(text) });
        await OpenAsync("""{"stashMatchHat":9,"hat":{}}""");
        await Expect(page.Locator(".field-message")).ToContainTextAsync("written by a newer program");
        await OpenAsync("""{"stashMatchHat":1,"hat":{"name":"Nest","weightClass":1,"construction":"brim-up-round","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},"sizes":[{"size":"C","headCm":52}]}}""");
        await Expect(page.GetByText("Nest is among your hats now.")).ToBeVisibleAsync();
        await Expect(page.Locator(".field-message")).ToHaveCountAsync(0);
        var download = await page.RunAndWaitForDownloadAsync(() => page.Locator(".own li", new() { HasText = "Nest" }).Locator("a[download]").ClickAsync());
        Assert.Equal("nest.json", download.SuggestedFilename);
        Assert.Contains("\"stashMatchHat\": 1", await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "For designers" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "The table for the pattern" })).ToBeVisibleAsync();
        await page.GetByLabel("hat", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = "Nest" });
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the table" }).ClickAsync();
        await Expect(page.Locator("table.yardage caption")).ToContainTextAsync("Nest");
    }

    private static async Task KeepAsync(IPage page, string who, string before, string after)
    {
        if (!await page.Locator("#tester").IsVisibleAsync())
        {
            await page.GetByText("Type one in").ClickAsync();
        }

        await page.Locator("#size").SelectOptionAsync("C");
        await page.Locator("#tester").FillAsync(who);
        await page.Locator("#label").FillAsync("1 g / 2.5 yd");
        await page.GetByLabel("S1, grams before").FillAsync(before);
        await page.GetByLabel("S1, grams after").FillAsync(after);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this sheet" }).ClickAsync();
        await Expect(page.GetByText($"{who} is kept")).ToBeVisibleAsync();
    }

    private static async Task LookAsync(IPage page)
    {
        Assert.Equal(0, await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
        await Axe.CheckAsync(page);
        if (Environment.GetEnvironmentVariable("SHOTS") is { Length: > 0 } to)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(to, $"{page.ViewportSize!.Width}-{Guid.NewGuid():N}"[..12] + new Uri(page.Url).AbsolutePath.Replace('/', '-') + ".png"), FullPage = true });
        }
    }
}
