using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

/// <summary>At the kitchen scale, by keyboard, with one thumb, and with the line cut.</summary>
public sealed class WeighingTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task A_leftover_is_taken_in_hand_changed_and_put_back_by_keyboard()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        foreach (var (width, dark) in new[] { (1280, false), (390, true) })
        {
            var page = await OpenAsync("/leftovers", width, dark);
            await LogAsync(page, $"Bracken {width}", "40", "100 g / 400 m");
            await page.GetByLabel("find").FillAsync($"Bracken {width}");
            await Expect(page.Locator(".list > li.row")).ToHaveCountAsync(1);
            await page.GetByRole(AriaRole.Button, new() { Name = $"weigh again Bracken {width}" }).FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.GetByLabel("weighs now, grams")).ToBeFocusedAsync();
            await page.Keyboard.TypeAsync("30");
            await Axe.CheckAsync(page);
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator("p.said")).ToContainTextAsync("now weighs 30.0 g");
            await Expect(page.Locator("dialog")).ToHaveCountAsync(0);
            await page.GetByRole(AriaRole.Button, new() { Name = $"details Bracken {width}" }).ClickAsync();
            await Expect(page.Locator("svg.history rect")).ToHaveCountAsync(2);
            await Axe.CheckAsync(page);
            await page.Keyboard.PressAsync("Escape");
            await Expect(page.Locator("dialog")).ToHaveCountAsync(0);
            await page.GetByRole(AriaRole.Button, new() { Name = "undo: weighing" }).ClickAsync();
            await Expect(page.Locator(".list .figure")).ToHaveTextAsync("40.0 g");
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task On_a_phone_targets_are_large_numbers_bring_a_number_pad_and_nothing_is_cut_off()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await OpenAsync("/leftovers", 390);
        await page.SetViewportSizeAsync(390, 844);
        await LogAsync(page, "Thumb", "12", "50 g / 125 m");
        foreach (var label in new[] { "grams", "weight of core or bowl (taken off)", "my scale shows every … g" })
        {
            Assert.Equal("decimal", await page.GetByLabel(label, new() { Exact = true }).GetAttributeAsync("inputmode"));
        }

        foreach (var target in await page.Locator(".entry input:visible:not([type=checkbox]), .entry button:visible, .list button:visible").AllAsync())
        {
            var box = (await target.BoundingBoxAsync())!;
            Assert.True(box.Height >= 44, $"{await target.EvaluateAsync<string>("e => e.outerHTML.slice(0, 80)")} is {box.Height} high");
        }

        var entry = (await page.Locator("form.entry").BoundingBoxAsync())!;
        Assert.True((await page.Locator(".list").BoundingBoxAsync())!.Y > entry.Y + entry.Height);
        await page.EvaluateAsync("scrollTo(0, 0)");
        var save = (await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).BoundingBoxAsync())!;
        Assert.InRange(save.Y + save.Height, 700, 844);
        Assert.Equal(0, await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
    }

    [Fact]
    public async Task The_picker_has_its_script_on_a_page_come_to_from_a_plain_one()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "My leftovers" }).First.ClickAsync();
        await page.WaitForURLAsync("**/leftovers");
        await page.WaitForFunctionAsync("() => window.mudThemeProvider && window.mudElementRef");
        await page.GetByRole(AriaRole.Button, new() { Name = "Choose the colour" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "by colour picker" }).ClickAsync();
        await Expect(page.Locator(".picker .mud-picker-color-overlay").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Nothing_of_a_hat_hangs_over_the_edge_of_a_small_phone()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(320);
        await page.GotoAsync("/hats");
        await Expect(page.Locator("form.hat-form fieldset")).ToBeEnabledAsync();
        await page.Locator("#hat-class").SelectOptionAsync(new SelectOptionValue { Label = "DK" });
        await page.Locator("details.sizes summary").ClickAsync();
        await page.Locator("#head-2").FillAsync("9");
        await Expect(page.Locator("#head-2-message")).ToBeVisibleAsync();
        await Axe.CheckAsync(page);
        Assert.Equal(320, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
    }

    [Fact]
    public async Task A_colour_is_taken_from_a_photo_by_typing_its_number()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await OpenAsync("/leftovers", 1280);
        await page.GetByLabel("name", new() { Exact = true }).FillAsync("From a photo");
        await page.GetByLabel("grams", new() { Exact = true }).FillAsync("20");
        await page.GetByRole(AriaRole.Button, new() { Name = "Choose the colour" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "from a photo" }).ClickAsync();
        await page.GetByLabel("a photo of the ball").SetInputFilesAsync(new FilePayload { Name = "ball.svg", MimeType = "image/svg+xml", Buffer = Encoding.UTF8.GetBytes("not a picture") });
        await Expect(page.Locator(".photo-colour .field-message")).ToContainTextAsync("This browser cannot read the photo");
        await page.GetByLabel("a photo of the ball").SetInputFilesAsync(new FilePayload { Name = "ball.bmp", MimeType = "image/bmp", Buffer = Bitmap(900, 600) });
        await Expect(page.Locator(".ring")).ToHaveCountAsync(2);
        await Axe.CheckAsync(page);
        await page.Keyboard.PressAsync("2");
        await Expect(page.Locator(".chosen")).ToContainTextAsync("dark green");
        await page.GetByLabel("grams", new() { Exact = true }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("p.said")).ToContainTextAsync("From a photo is saved");
        await Expect(page.Locator(".list .about").First).ToContainTextAsync("dark green #");
        await page.GetByRole(AriaRole.Button, new() { Name = "details From a photo" }).ClickAsync();
        await Expect(page.Locator("img.picture")).ToHaveJSPropertyAsync("naturalWidth", 64);
    }

    [Fact]
    public async Task Rows_are_pasted_looked_at_and_kept_only_when_somebody_says_so()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await OpenAsync("/leftovers", 390);
        await page.GetByText("Import and export").ClickAsync();
        await page.GetByLabel("paste rows here").FillAsync("name\tgrams\tlabel\nPasted one\t2,5\t4 oz / 190 yd\nBad\tminus\t\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Check" }).ClickAsync();
        await Expect(page.Locator(".sum")).ToContainTextAsync("1 row can be saved. 1 row cannot be read. Nothing is saved yet.");
        await Expect(page.Locator(".bad")).ToContainTextAsync("Row 3: grams must be a number");
        await Axe.CheckAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the good row" }).ClickAsync();
        await Expect(page.Locator("p.said")).ToContainTextAsync("1 row is saved");
        await Expect(page.Locator(".list .called", new() { HasText = "Pasted one" })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Tags_are_printed_whole_two_to_a_row_on_as_many_sheets_as_they_need()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await OpenAsync("/leftovers", 1280);
        for (var i = 0; i < 13; i++)
        {
            await LogAsync(page, $"Tagged {i}", "12", "50 g / 125 m");
        }

        await page.GotoAsync("/leftovers/tags?words=Tagged");
        await Expect(page.Locator(".tag")).ToHaveCountAsync(13);
        await Axe.CheckAsync(page);
        foreach (var (paper, box) in new[] { ("A4", "/MediaBox [0 0 595"), ("Letter", "/MediaBox [0 0 612") })
        {
            var pdf = Encoding.Latin1.GetString(await page.PdfAsync(new() { Format = paper, PrintBackground = false }));
            Assert.Equal(2, pdf.Split("/Type /Page\n").Length - 1);
            Assert.Contains(box, pdf, StringComparison.Ordinal);
        }

        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await page.SetViewportSizeAsync(703, 1000);
        await Expect(page.GetByRole(AriaRole.Heading)).ToHaveCountAsync(0);
        var (first, second, third) = (await BoxAsync(0), await BoxAsync(1), await BoxAsync(2));
        Assert.Equal(first.Y, second.Y, 1);
        Assert.True(third.Y > first.Y + first.Height);
        Assert.InRange(first.Width, 327, 331);
        async Task<LocatorBoundingBoxResult> BoxAsync(int nth) => (await page.Locator(".tag").Nth(nth).BoundingBoxAsync())!;
    }

    [Fact]
    public async Task Yards_first_holds_on_every_page_at_once_and_the_settings_are_clean()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await OpenAsync("/settings", 390, dark: true);
        await Axe.CheckAsync(page);
        Assert.Equal(0, await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
        try
        {
            await page.GetByLabel("first unit").SelectOptionAsync("Yards");
            await page.GetByLabel("my scale shows every … g").FillAsync("0,5");
            await page.GetByLabel("% in reserve").FillAsync("15");
            await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
            await Expect(page.Locator("p.said")).ToContainTextAsync("Every page uses it from now on");
            await Expect(page.Locator(".hint")).ToContainTextAsync("109.4 yd / 100.0 m");
            var weighing = await OpenAsync("/leftovers", 1280);
            await weighing.GetByLabel("grams", new() { Exact = true }).FillAsync("34");
            await weighing.GetByLabel("label, as printed").FillAsync("100 g/210 yd");
            await Expect(weighing.Locator("#live")).ToContainTextAsync("71.4 yd / 65.3 m");
            await Expect(weighing.GetByLabel("my scale shows every … g")).ToHaveValueAsync("0.5");
            await weighing.GotoAsync("/");
            await Expect(weighing.GetByLabel("Keep in reserve, %")).ToHaveValueAsync("15");
        }
        finally
        {
            await page.GetByLabel("first unit").SelectOptionAsync("Metres");
            await page.GetByLabel("my scale shows every … g").FillAsync("1");
            await page.GetByLabel("% in reserve").FillAsync("10");
            await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
            await Expect(page.Locator(".hint")).ToContainTextAsync("100.0 m / 109.4 yd");
        }
    }

    [Fact]
    public async Task While_the_line_is_cut_it_is_said_and_nothing_typed_is_lost()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        IWebSocketRoute? line = null;
        var cut = false;
        await page.RouteWebSocketAsync("**/_blazor**", ws =>
        {
            line = ws;
            if (cut)
            {
                _ = ws.CloseAsync();
            }
            else
            {
                ws.ConnectToServer();
            }
        });
        await page.GotoAsync("/leftovers");
        var name = page.GetByLabel("name", new() { Exact = true });
        await Expect(name).ToBeEnabledAsync();
        await name.FillAsync("Half typed");
        await page.GetByLabel("label, as printed").FillAsync("100 g / 400 m");
        cut = true;
        await page.RouteAsync("**/_blazor/**", r => r.AbortAsync());
        await page.RouteAsync("**/health/live", r => r.AbortAsync());
        await line!.CloseAsync();
        var note = page.Locator("#components-reconnect-modal");
        await Expect(note).ToBeVisibleAsync();
        await Expect(note).ToContainTextAsync("Lost contact with StashMatch. Trying again…; what you typed is kept.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Expect(note).ToContainTextAsync("buttons do nothing yet");
        await Expect(name).ToHaveValueAsync("Half typed");

        cut = false;
        await page.UnrouteAllAsync();
        await page.ReloadAsync();
        await Expect(name).ToHaveValueAsync("Half typed");
        await Expect(page.GetByLabel("label, as printed")).ToHaveValueAsync("100 g / 400 m");
        await page.GetByLabel("grams", new() { Exact = true }).FillAsync("8");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("p.said")).ToContainTextAsync("Half typed is saved");
        await page.ReloadAsync();
        await Expect(name).ToBeEnabledAsync();
        await Expect(name).ToHaveValueAsync("");
    }

    private async Task<IPage> OpenAsync(string address, int width, bool dark = false)
    {
        var page = await app.PageAsync(width, dark);
        await page.GotoAsync(address);
        await Expect(page.Locator(address == "/settings" ? "#scale-step" : "#name")).ToBeEnabledAsync();
        return page;
    }

    private static async Task LogAsync(IPage page, string name, string grams, string label)
    {
        await page.GetByLabel("name", new() { Exact = true }).FillAsync(name);
        await page.GetByLabel("grams", new() { Exact = true }).FillAsync(grams);
        await page.GetByLabel("label, as printed").First.FillAsync(label);
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("p.said")).ToContainTextAsync(string.Create(CultureInfo.InvariantCulture, $"{name} is saved"));
    }

    // An invented photo: a dark green square on paper, as an uncompressed bitmap.
    private static byte[] Bitmap(int width, int height)
    {
        var bytes = new byte[54 + (width * height * 3)];
        "BM"u8.CopyTo(bytes);
        BitConverter.GetBytes(bytes.Length).CopyTo(bytes, 2);
        BitConverter.GetBytes(54).CopyTo(bytes, 10);
        BitConverter.GetBytes(40).CopyTo(bytes, 14);
        BitConverter.GetBytes(width).CopyTo(bytes, 18);
        BitConverter.GetBytes(height).CopyTo(bytes, 22);
        BitConverter.GetBytes((short)1).CopyTo(bytes, 26);
        BitConverter.GetBytes((short)24).CopyTo(bytes, 28);
        for (var pixel = 0; pixel < width * height; pixel++)
        {
            var (x, y) = (pixel % width, pixel / width);
            byte[] colour = x > width / 3 && x < width * 2 / 3 && y > height / 4 && y < height * 3 / 4 ? [0x2F, 0x51, 0x27] : [0xE0, 0xEA, 0xF0];
            colour.CopyTo(bytes, 54 + (3 * pixel));
        }

        return bytes;
    }
}
