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
        foreach (var (width, dark) in new[] { (320, false), (390, true), (1280, false), (1280, true) })
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
            await page.GetByRole(AriaRole.Button, new() { Name = "Add another kit" }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true }).ClickAsync();
            await page.Locator("table.grid button.cell").First.ClickAsync(new() { Timeout = 60_000 });
            await Expect(page.Locator(".opened")).ToContainTextAsync("runs out first");
            await page.GetByRole(AriaRole.Button, new() { Name = "Show the smallest kit" }).ClickAsync();
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
        await page.GetByLabel("show as", new() { Exact = true }).SelectOptionAsync("words");
        await page.GetByLabel("C", new() { Exact = true }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the table" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Article, new() { Name = "The table" })).ToMatchAriaSnapshotAsync("""
            - article "The table":
              - heading "Side to side" [level=2]
              - paragraph: Every length includes 10 per cent in reserve. It is then rounded up to whole metres and yards. Grams are for yarn of 100 grams to 400 metres.
              - region "Size C":
                - heading "Size C, for a head of 52.0 centimetres or 20 and a half inches" [level=2]
                - heading "6 stripes" [level=3]
                - list:
                  - listitem: A stripe has 29 rows and is 7.3 centimetres or 2 and 7 eighths inches deep.
                  - listitem: A stripe takes 23 metres or 25 yards, 5.7 grams.
                  - listitem: Each colour of a braid takes 2 metres or 3 yards, 0.5 grams.
                  - listitem: The brim takes 90 metres or 99 yards, 22.5 grams.
                  - listitem: Seam and gathering thread take 2 metres or 2 yards, 0.4 grams.
                  - listitem: The whole hat takes 242 metres or 265 yards, 60.5 grams.
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
        await Expect(page.Locator(".field-message")).ToContainTextAsync("This hat is from a newer StashMatch");
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

    [Fact]
    public async Task A_row_of_the_table_leads_to_its_working_and_back_by_keyboard_alone_with_scripts_blocked()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280, scripts: false);
        await page.GotoAsync("/tables?size=C&from=6&to=6");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the table" }).FocusAsync();
        var row = page.GetByRole(AriaRole.Link, new() { Name = "6 stripes in size C: where its figures come from" });
        for (var i = 0; i < 6 && !await row.EvaluateAsync<bool>("e => e === document.activeElement"); i++)
        {
            await page.Keyboard.PressAsync("Tab");
        }

        await Expect(row).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Where the figures of size C in 6 stripes come from" })).ToBeInViewportAsync();
        await Expect(page.Locator("#working")).ToContainTextAsync("both colours of braids 1 to 5");
        await page.GetByRole(AriaRole.Link, new() { Name = "Back to the table" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Side to side", Exact = true })).ToBeInViewportAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Will this kit make every size?" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/kits\\?hat=side-to-side-sample$", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)));
    }

    [Theory]
    [InlineData("/tables?form=pages", "article", 8)]
    [InlineData("/tables?form=one", "article", 3)]
    [InlineData("/tables?form=words&size=C&from=5&to=7", "article", 1)]
    [InlineData("/tables?form=large&size=C&from=5&to=7", "article", 3)]
    [InlineData("/tables?form=line&from=4&to=5", "pre.lines", 1)]
    [InlineData("/testers/sheet?hat=side-to-side-sample&size=C&stripes=6", "article", 1)]
    [InlineData("/testers/sheet?hat=brim-up-sample&size=H&stripes=12", "article", 1)]
    public async Task Printed_it_takes_so_many_pages_and_nothing_is_cut_off(string address, string what, int pages)
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");

        // The width of A4 within 15 mm, at 96 to the inch.
        var page = await app.PageAsync(680);
        await page.GotoAsync(address);
        var pdf = await page.PdfAsync(new() { Format = "A4", PreferCSSPageSize = true, Margin = new() { Top = "15mm", Bottom = "15mm", Left = "15mm", Right = "15mm" } });
        Assert.Equal(pages, System.Text.Encoding.Latin1.GetString(pdf).Split("/Type /Page\n").Length - 1);
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await Expect(page.Locator(what)).ToBeVisibleAsync();
        await Expect(page.Locator("form")).ToBeHiddenAsync();
        Assert.Equal(0, await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
        Assert.Equal(0, await page.EvaluateAsync<int>("[...document.querySelectorAll('article *, pre')].filter(e => getComputedStyle(e).overflowX !== 'visible' && e.scrollWidth > e.clientWidth + 1 && !e.matches('.unseen')).length"));
    }

    [Fact]
    public async Task Five_sheets_come_back_as_a_file_two_are_set_aside_and_what_the_others_say_is_taken_over_for_this_hat()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/testers?hat=brim-up-sample");
        await Expect(page.Locator("#file")).ToBeEnabledAsync();
        await page.Locator("#size").SelectOptionAsync("C");
        await page.Locator("#stripes").SelectOptionAsync("6");
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "as CSV" }).ClickAsync());
        var sent = (await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken)).Trim().ReplaceLineEndings("\n").Split('\n');
        string Back(string who, string stitches, decimal used) => string.Join('\n', sent.Skip(1).Select(row =>
        {
            var cells = row.Split(',');
            (cells[3], cells[4], cells[5], cells[8], cells[9]) = (who, "100 g / 400 m", "0.1", stitches, "40");
            (cells[14], cells[15]) = cells[13] == "brim" ? ("60", (60 - used).ToString(System.Globalization.CultureInfo.InvariantCulture)) : ("", "");
            return string.Join(',', cells);
        }));
        var file = string.Join('\n', sent[0], Back("Ada", "28", 11.0m), Back("Bea", "28", 11.2m), Back("Cem", "28", 10.9m), Back("Dot", "28", 11.1m), Back("Far", "28", 14.5m), Back("Off", "24", 11m));
        await page.Locator("#file").SetInputFilesAsync(new FilePayload { Name = "back.csv", MimeType = "text/csv", Buffer = System.Text.Encoding.UTF8.GetBytes(file) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Save them" }).ClickAsync();
        var results = page.Locator("[aria-label='Results']");
        await Expect(results.Locator("tr", new() { HasText = "Far" })).ToContainTextAsync("set aside: far from what the others used");
        await Expect(results.Locator("tr", new() { HasText = "Off" })).ToContainTextAsync("set aside: gauge 24");
        await page.GetByRole(AriaRole.Button, new() { Name = "Use this factor" }).ClickAsync();
        await Expect(page.Locator(".taken")).ToContainTextAsync("4 testers of Brim up, for this hat alone (Ada, Bea, Cem, Dot)");
        await Axe.CheckAsync(page);
        await page.GetByRole(AriaRole.Link, new() { Name = "The whole table with these figures" }).ClickAsync();
        await Expect(page.Locator(".stated")).ToContainTextAsync("Estimates are ");
        await Expect(page.Locator("table.yardage tbody tr", new() { HasText = "testers: brim; the rest estimated" }).First).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "What did testers really use?" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "switch off the testers’ factor" }).ClickAsync();
        await Expect(page.Locator(".taken")).ToContainTextAsync("Switched off");
        await page.GotoAsync("/tables?hat=brim-up-sample");
        await Expect(page.Locator(".stated")).Not.ToContainTextAsync("Estimates are ");
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
        await page.GetByRole(AriaRole.Button, new() { Name = "Save this sheet" }).ClickAsync();
        await Expect(page.GetByText($"{who} is saved")).ToBeVisibleAsync();
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
