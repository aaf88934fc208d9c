using System.Net.Http.Json;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

public sealed class SheetTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task A_plan_is_saved_ticked_and_weighed_by_keyboard_on_a_phone_and_axe_finds_nothing()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        using (var client = new HttpClient { BaseAddress = new Uri(app.Address) })
        {
            foreach (var (id, grams, colour) in new[] { ("oat", 18.0, "#E2D3B2"), ("moss", 9.0, "#5B7A3A"), ("plum", 8.5, "#523063"), ("rust", 9.0, "#A4512B"), ("teal", 15.0, "#2F7F86") })
            {
                using var logged = await client.PostAsJsonAsync("/api/v1/leftovers", new { id, name = char.ToUpperInvariant(id[0]) + id[1..], grams, scaleStepGrams = 0.1, label = new { grams = 100, yards = 250 }, weightClass = 3, colour }, TestContext.Current.CancellationToken);
                logged.EnsureSuccessStatusCode();
            }
        }

        var page = await app.PageAsync(390);
        await page.GotoAsync("/can-i-make?hat=practice-hat&size=D&keep=brim~oat&keep=crown~oat");
        await page.GetByRole(AriaRole.Button, new() { Name = "Knit this" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { NameRegex = new("size D, 4 stripes") }).First).ToBeVisibleAsync(new() { Timeout = 20_000 });
        var sheet = page.Url;

        // A tick is a toggle kept at once; with scripts the page stays where it is and the box keeps the focus.
        var brim = page.GetByRole(AriaRole.Button, new() { Name = "brim is finished" });
        await brim.FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await Expect(brim).ToHaveAttributeAsync("aria-pressed", "true");
        await page.ReloadAsync();
        await Expect(brim).ToHaveAttributeAsync("aria-pressed", "true");

        await page.GetByLabel("ball", new() { Exact = true }).FocusAsync();
        await page.Keyboard.PressAsync("O");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.TypeAsync("6.4");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("0.1");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#ahead .verdict .word")).ToHaveTextAsync("only just");
        await Expect(page.Locator("#ahead")).ToContainTextAsync("9.4 % more than planned");

        foreach (var (width, dark) in new[] { (390, false), (390, true), (1280, false), (1280, true) })
        {
            var other = await app.PageAsync(width, dark);
            foreach (var address in new[] { "/plans", sheet, $"{sheet}?form=large", $"{sheet}?form=words" })
            {
                await other.GotoAsync(address);
                await Expect(other.Locator("h1").First).ToBeVisibleAsync();
                var over = await other.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)");
                var widest = over == 0 ? "" : await other.EvaluateAsync<string>("[...document.querySelectorAll('main *')].filter(e => e.getBoundingClientRect().right > innerWidth).map(e => e.outerHTML.slice(0, 120)).join('\\n')");
                Assert.True(over == 0, $"{address} at {width} is {over} too wide: {widest}");
                await Axe.CheckAsync(other);
            }

            await other.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task In_print_a_part_may_run_over_a_page_but_its_heading_never_stands_alone()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        using var client = new HttpClient { BaseAddress = new Uri(app.Address) };
        using var logged = await client.PostAsJsonAsync("/api/v1/leftovers", new { id = "print", name = "Print", grams = 150, label = new { grams = 100, metres = 400 }, weightClass = 1 }, TestContext.Current.CancellationToken);
        var page = await app.PageAsync(1280, scripts: false);
        await page.GotoAsync("/can-i-make?hat=brim-up-sample&size=B&stripes=4&arrangement=as-it-falls&nextDoor=blend&leftover=print");
        await page.GetByRole(AriaRole.Button, new() { Name = "Knit this" }).ClickAsync();
        await Expect(page.Locator("article.sheet")).ToBeVisibleAsync();
        await page.GotoAsync($"{page.Url}?form=large");
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Task<string> Style(string of, string what) => page.Locator(of).First.EvaluateAsync<string>($"e => getComputedStyle(e).{what}");
        Assert.Equal("auto", await Style(".sheet section", "breakInside"));
        Assert.Equal("avoid", await Style(".sheet section h2", "breakAfter"));
        Assert.Equal("avoid", await Style(".sheet section li", "breakAfter"));
        Assert.Equal("0px", await Style(".shell", "paddingBottom"));
        await Expect(page.Locator(".state-ahead")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task The_sheet_is_ticked_with_scripts_blocked()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        using var client = new HttpClient { BaseAddress = new Uri(app.Address) };
        using var logged = await client.PostAsJsonAsync("/api/v1/leftovers", new { id = "wool", name = "Wool", grams = 150, label = new { grams = 100, metres = 400 }, weightClass = 1 }, TestContext.Current.CancellationToken);
        var page = await app.PageAsync(390, scripts: false);
        await page.GotoAsync("/can-i-make?hat=brim-up-sample&size=A&stripes=4&arrangement=as-it-falls&nextDoor=blend&leftover=wool");
        await page.GetByRole(AriaRole.Button, new() { Name = "Knit this" }).ClickAsync();
        var stripe = page.GetByRole(AriaRole.Button, new() { Name = "stripe 2 is finished" });
        await stripe.ClickAsync();
        await Expect(stripe).ToHaveAttributeAsync("aria-pressed", "true");
    }
}
