using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

/// <summary>An evening of weighing, six balls by keyboard alone.</summary>
public sealed class EveningTests(LiveApp app) : IClassFixture<LiveApp>
{
    // A key takes an average typist 0.28 s (keystroke-level model) [memory].
    private const double SecondsAKey = 0.28;

    [Fact]
    public async Task Six_balls_are_weighed_by_keyboard_alone_in_under_two_minutes_of_typing()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/leftovers");
        await Expect(page.Locator("#name")).ToBeEnabledAsync();
        var keys = 0;
        async Task TypeAsync(string text)
        {
            await page.Keyboard.TypeAsync(text);
            keys += text.Length;
        }

        async Task PressAsync(string key)
        {
            await page.Keyboard.PressAsync(key);
            keys++;
        }

        await page.GetByLabel("name", new() { Exact = true }).FocusAsync();
        foreach (var (name, grams, core, label, shown, saved) in new[]
        {
            ("Moss", "34", "", "100g 210yd", "65.3 m / 71.4 yd", "65.3 m / 71.4 yd"),
            ("Mini", "18,6", "", "20 g / 80 m", "74.4 m / 81.4 yd", "74.4 m / 81.4 yd"),
            ("On card", "27.5", "4", "50g/125m", "58.8 m / 64.2 yd", "58.8 m / 64.2 yd"),
            ("Ounces", "15", "", "4 oz/190 yd", "23.0 m / 25.1 yd", "23.0 m / 25.1 yd"),
            ("Coarse", "6", "", "100 g/210 yd", "11.5 m / 12.6 yd, give or take 8\u00A0%", "11.5 m / 12.6 yd"),
            ("Crumb", "1.2", "", "", "1.2 g. No label yet, so no hat can use it.", "no label, so not used in hats"),
        })
        {
            await TypeAsync(name);
            await PressAsync("Tab");
            await TypeAsync(grams);
            await PressAsync("Tab");
            await TypeAsync(core);
            await PressAsync("Tab");
            await TypeAsync(label);
            await Expect(page.Locator("#live")).ToContainTextAsync(shown.Split(',')[0]);
            await PressAsync("Enter");
            await Expect(page.Locator("p.said")).ToContainTextAsync($"{name} is saved: {saved}");
            await Expect(page.GetByLabel("name", new() { Exact = true })).ToBeFocusedAsync();
        }

        Assert.True(keys * SecondsAKey < 120, $"{keys} keys");
        await Expect(page.Locator(".list > li.row")).ToHaveCountAsync(6);
        await Expect(page.Locator(".totals summary")).ToContainTextAsync("98.3 g");
        await Axe.CheckAsync(page);
    }
}
