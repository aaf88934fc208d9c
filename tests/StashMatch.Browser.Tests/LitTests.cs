using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

public sealed class LitTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task Drawing_tape_and_table_row_of_a_part_light_up_together_by_keyboard_pointer_and_tap()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/can-i-make?hat=side-to-side-sample&size=C&stripes=6");
        var drawing = page.Locator(".drawing");
        await drawing.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await LitAsync(page, "stripe 1");
        await page.Keyboard.PressAsync("ArrowRight");
        await LitAsync(page, "braid 1 strand a");
        await page.Keyboard.PressAsync("End");
        await LitAsync(page, "brim");
        await Expect(page.Locator(".lit-line")).ToHaveAttributeAsync("data-lit", "Brim, no yarn yet");
        await page.Keyboard.PressAsync("ArrowLeft");
        await LitAsync(page, "seam");
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator(".lit")).ToHaveCountAsync(0);
        await page.Keyboard.PressAsync("ArrowLeft");
        await LitAsync(page, "brim");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator(".lit, .lit-up")).ToHaveCountAsync(0);

        await page.Locator("tr[data-part='stripe 3'] th").HoverAsync();
        await LitAsync(page, "stripe 3");
        await page.Locator("h2").First.HoverAsync();
        await Expect(page.Locator(".lit")).ToHaveCountAsync(0);
        await page.Locator("tr[data-part='stripe 4'] th").ClickAsync();
        await page.Locator("h2").First.HoverAsync();
        await LitAsync(page, "stripe 4");
        await page.Locator("tr[data-part='stripe 4'] th").ClickAsync();
        await page.Locator("h2").First.HoverAsync();
        await Expect(page.Locator(".lit")).ToHaveCountAsync(0);
        await Axe.CheckAsync(page);
    }

    // Twice in the drawing, once on the tape and once in the table, and nothing else.
    private static async Task LitAsync(IPage page, string part)
    {
        await Expect(page.Locator($"tr.lit[data-part='{part}']")).ToHaveCountAsync(1);
        await Expect(page.Locator($".hat .lit[data-part='{part}']")).ToHaveCountAsync(2);
        await Expect(page.Locator($".tape .lit[data-part='{part}']")).ToHaveCountAsync(1);
        await Expect(page.Locator($".lit:not([data-part='{part}'])")).ToHaveCountAsync(0);
    }
}
