using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

public sealed class AskingTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task Three_leftovers_are_logged_by_keyboard_and_the_question_is_answered_with_a_drawing()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/");
        await Expect(page.Locator(".empty")).ToContainTextAsync("Your bag is empty.");
        await Expect(page.Locator(".pic .wool")).ToBeVisibleAsync();
        await page.GotoAsync("/leftovers");
        await Expect(page.GetByLabel("name", new() { Exact = true })).ToBeEnabledAsync();
        await page.GetByLabel("name", new() { Exact = true }).FocusAsync();
        await LogAsync(page, "Moss", "34", "100 g/400 m", "#5B7A3A", "136.0 m");
        await LogAsync(page, "Plum", "29,5", "50 g / 200 m", "#523063", "118.0 m");
        await LogAsync(page, "Oat", "41", "100 g/ 430 yd", "#E2D3B2", "161.2 m");
        await Expect(page.Locator(".list > li.row")).ToHaveCountAsync(3);
        await Axe.CheckAsync(page);

        foreach (var width in new[] { 390, 1280 })
        {
            foreach (var dark in new[] { false, true })
            {
                var answer = await app.PageAsync(width, dark);
                await answer.GotoAsync("/can-i-make?hat=brim-up-sample&size=A&stripes=4&arrangement=as-it-falls");
                await Expect(answer.Locator(".ans")).ToHaveAttributeAsync("data-word", "yes");
                var hat = answer.Locator(".pic .wool");
                await Expect(hat).ToBeVisibleAsync();
                await Expect(answer.Locator(".areas [data-part='stripe 4']")).ToHaveCountAsync(1);
                Assert.True((await hat.BoundingBoxAsync())!.Width > 200);
                Assert.Equal(0, await answer.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
                await Axe.CheckAsync(answer);
                foreach (var address in new[] { "/hats", "/leftovers" })
                {
                    await answer.GotoAsync(address);
                    await Expect(answer.GetByLabel("name", new() { Exact = true })).ToBeEnabledAsync();
                    Assert.Equal(0, await answer.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
                    await Axe.CheckAsync(answer);
                }

                await answer.GetByRole(AriaRole.Button, new() { Name = "Choose the colour" }).ClickAsync();
                await answer.GetByRole(AriaRole.Button, new() { Name = "by colour picker" }).ClickAsync();
                await Expect(answer.Locator(".picker .mud-picker-color-overlay").First).ToBeVisibleAsync();
                await answer.GetByLabel("grams", new() { Exact = true }).FillAsync("six");
                await answer.Keyboard.PressAsync("Enter");
                await Expect(answer.Locator(".field-message")).ToContainTextAsync(["Name is missing", "Grams must be a number", ""]);
                await Expect(answer.GetByLabel("name", new() { Exact = true })).ToBeFocusedAsync();
                await Axe.CheckAsync(answer);
                await answer.Context.CloseAsync();
            }
        }
    }

    [Fact]
    public async Task A_hat_is_described_saved_and_asked_about_and_a_swatch_makes_its_metres_ones_own()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/hats");
        var name = page.GetByLabel("name", new() { Exact = true });
        await Expect(name).ToBeEnabledAsync();
        await name.FillAsync("Bobbin");
        await page.GetByLabel("knitted", new() { Exact = true }).SelectOptionAsync("brim-up-flat");
        await page.GetByLabel("stitches to 10 cm", new() { Exact = true }).First.FillAsync("24");
        await Expect(page.Locator("figcaption").First).ToContainTextAsync("114 stitches");
        await page.GetByLabel("for a head of, cm").FillAsync("58,5");
        await Expect(page.GetByRole(AriaRole.Table).First).ToContainTextAsync("size G");
        await page.GetByLabel("my stitches to 10 cm").FillAsync("22");
        await page.GetByLabel("my rows to 10 cm").FillAsync("36");
        await Expect(page.Locator("section .said")).ToContainTextAsync("At your gauge the same counts come out");
        await page.GetByText("Weigh a swatch", new() { Exact = true }).ClickAsync();
        foreach (var (label, value) in new[] { ("sw-stitches", "40"), ("sw-rows", "50"), ("sw-w", "28"), ("sw-c", "40"), ("sw-grams", "8.2"), ("sw-label", "100 g / 400 m") })
        {
            await page.Locator($"#{label}").FillAsync(value);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Use it from now on" }).First.ClickAsync();
        await Expect(page.GetByText("your own").First).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save this hat" }).ClickAsync();
        await Expect(page.GetByText("Bobbin is saved")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Can I make it?" }).Last.ClickAsync();
        await Expect(page.Locator(".q")).ToContainTextAsync("Bobbin · G");
        await page.GotoAsync("/hats");
        await page.GetByRole(AriaRole.Button, new() { Name = "switch off" }).ClickAsync();
        await Expect(page.GetByText("What you weighed is switched off. So we count on what most knitters use, give or take 12 %.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_answer_is_complete_with_scripts_blocked()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(390, scripts: false);
        await page.GotoAsync("/can-i-make?hat=practice-hat&size=C");
        await Expect(page.Locator("h1")).ToBeVisibleAsync();
        await page.GetByText("change", new() { Exact = true }).First.ClickAsync();
        await page.GetByLabel("Size", new() { Exact = true }).SelectOptionAsync("E");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true }).ClickAsync();
        await Expect(page.Locator(".q")).ToContainTextAsync("Practice hat · E");
    }

    [Fact]
    public async Task No_page_asks_the_browser_for_what_the_policy_forbids_or_another_host_has()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        List<string> said = [], abroad = [];
        page.Console += (_, m) => { if (m.Type is "error" or "warning") { said.Add(m.Text); } };
        page.Request += (_, r) => { if (!r.Url.StartsWith(app.Address, StringComparison.Ordinal) && !r.Url.StartsWith("data:", StringComparison.Ordinal)) { abroad.Add(r.Url); } };
        foreach (var (address, shows) in new[] { ("/", "h1"), ("/leftovers", "#name:enabled"), ("/from-this-bag", "h1"), ("/hats", "#hat-name:enabled"), ("/settings", "#scale-step:enabled"), ("/leftovers/tags", "h1"), ("/open-interface/", "text=Weighs a leftover again") })
        {
            await page.GotoAsync(address);
            await Expect(page.Locator(shows).First).ToBeVisibleAsync();
        }

        Assert.Empty(said);
        Assert.Empty(abroad);
    }

    private static async Task LogAsync(IPage page, string name, string grams, string label, string colour, string metres)
    {
        var keys = page.Keyboard;
        await keys.TypeAsync(name);
        await keys.PressAsync("Tab");
        await keys.TypeAsync(grams);
        await keys.PressAsync("Tab");
        await keys.PressAsync("Tab");
        await keys.TypeAsync(label);
        await Expect(page.Locator("#live")).ToContainTextAsync(metres);
        await keys.PressAsync("Tab");
        await keys.TypeAsync("1");
        await keys.PressAsync("Tab");
        await keys.TypeAsync("80% wool, 20% nylon");
        await keys.PressAsync("Tab");
        await keys.TypeAsync(colour);
        await keys.PressAsync("Enter");
        await Expect(page.Locator("p.said")).ToContainTextAsync($"{name} is saved");
        await Expect(page.GetByLabel("name", new() { Exact = true })).ToBeFocusedAsync();
        await Expect(page.GetByLabel("name", new() { Exact = true })).ToHaveValueAsync("");
    }
}
