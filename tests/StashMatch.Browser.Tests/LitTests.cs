using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

public sealed class LitTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task Hat_piece_and_row_of_a_part_light_up_together_by_keyboard_and_pointer()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var demo = await app.PageAsync(1280, scripts: false);
        await demo.GotoAsync("/");
        await demo.GetByRole(AriaRole.Button, new() { Name = "Try the demo bag" }).ClickAsync();
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/can-i-make?hat=side-to-side-sample&size=F&stripes=6");
        await page.Locator(".row[data-part='stripe 1'] .dots").FocusAsync();
        await LitAsync(page, "stripe 1");
        await page.Keyboard.PressAsync("ArrowDown");
        await LitAsync(page, "braid 1");
        await page.Keyboard.PressAsync("ArrowUp");
        await page.Keyboard.PressAsync("ArrowUp");
        await LitAsync(page, "brim");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Dialog, new() { Name = "Brim" })).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator(".row[data-part='brim'] .dots")).ToBeFocusedAsync();

        await page.Locator(".row[data-part='stripe 3'] .part").HoverAsync();
        await LitAsync(page, "stripe 3");
        await page.EvaluateAsync("scrollTo(0, 0)");
        await page.Locator(".tag[data-part='stripe 4']").First.EvaluateAsync("t => t.dispatchEvent(new PointerEvent('pointerover', { bubbles: true }))");
        await LitAsync(page, "stripe 4");
        await Expect(page.Locator(".held")).ToContainTextAsync("stripe 4");
        await Axe.CheckAsync(page);

        // On a phone nothing jumps away under the finger.
        var phone = await app.PageAsync(390);
        await phone.GotoAsync("/can-i-make?hat=side-to-side-sample&size=F&stripes=6");
        var row = phone.Locator(".row[data-part='stripe 3']");
        await row.ScrollIntoViewIfNeededAsync();
        var before = (await row.BoundingBoxAsync())!.Y;
        await row.Locator(".part").HoverAsync();
        await Expect(phone.Locator(".row.lit[data-part='stripe 3']")).ToHaveCountAsync(1);
        Assert.Equal(before, (await row.BoundingBoxAsync())!.Y);
    }

    // Its row, what is seen of it on the hat, and the piece, and nothing else.
    private static async Task LitAsync(IPage page, string part)
    {
        await Expect(page.Locator($".row.lit[data-part='{part}']")).ToHaveCountAsync(1);
        await Expect(page.Locator($".piece .lit[data-part='{part}']")).ToHaveCountAsync(1);
        await Expect(page.Locator($".areas .lit[data-part='{part}']")).ToHaveCountAsync(1);
        await Expect(page.Locator($".lit:not([data-part='{part}'])")).ToHaveCountAsync(0);
    }
}
