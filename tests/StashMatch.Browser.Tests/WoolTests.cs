using Microsoft.Playwright;
using StashMatch.Pictures;
using StashMatch.Pictures.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

public sealed class WoolTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task The_pages_script_paints_what_the_program_paints()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(800);
        await page.GotoAsync("/settings");
        WoolView[] views = [new(160), new(160, 2.9), new(160, 1, WoolView.Above, OnDark: true), new(200, Height: 150)];
        foreach (var ((name, hat), i) in Wools.All().Select((h, i) => (h, i)))
        {
            var view = views[i % views.Length];
            var ours = WoolPicture.Paint(hat, view);
            var theirs = Convert.FromBase64String(await page.EvaluateAsync<string>(
                """
                async ([model, view]) => {
                  const { Painter } = await import('/js/wool/paint.js');
                  const sheet = new Painter(JSON.parse(model)).paint(view);
                  let text = '';
                  for (let i = 0; i < sheet.pixels.length; i += 8192) text += String.fromCharCode(...sheet.pixels.subarray(i, i + 8192));
                  return btoa(text);
                }
                """,
                new object[] { hat.Json, new Dictionary<string, object?> { ["width"] = view.Width, ["height"] = view.Height, ["yaw"] = view.Yaw,
                    ["tilt"] = view.Tilt, ["dark"] = view.OnDark } }));
            Assert.Equal(ours.Pixels.Length, theirs.Length);
            Assert.True(ours.Pixels.Count(b => b > 100) > 10_000, name);
            var apart = ours.Pixels.Zip(theirs, (a, b) => Math.Abs(a - b)).Average() / 255;
            Assert.True(apart <= 0.003, $"{name}: {apart}");
        }
    }

    [Fact]
    public async Task A_hat_is_turned_by_hand_and_key_and_says_what_is_in_front()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(800);
        await page.GotoAsync("/settings");
        var hat = Wools.All().First(h => h.Name == "side").Hat;
        await page.EvaluateAsync(
            """
            async ([model, yaw]) => {
              const { mountWool } = await import('/js/wool.js');
              const element = document.createElement('div');
              element.id = 'hat';
              element.style.cssText = 'position:fixed;z-index:99;left:20px;top:20px;width:300px;height:300px;background:#fff';
              document.body.append(element);
              window.told = [];
              for (const name of ['wool-front', 'wool-over', 'wool-tap']) element.addEventListener(name, e => window.told.push([name, e.detail.area]));
              window.hat = mountWool(element, JSON.parse(model), { yaw });
            }
            """,
            new object[] { hat.Json, hat.YawOf("stripe 4")! });
        var element = page.Locator("#hat");
        await Expect(element).ToHaveAttributeAsync("role", "slider");
        await Expect(element).ToHaveAttributeAsync("aria-valuetext", "in front: stripe 4");

        // A tap tells the part under it; the brim lies along the lower edge.
        await page.Mouse.MoveAsync(170, 60);
        await page.WaitForFunctionAsync("() => window.hat.areaAt(170, 280) === 'brim'");
        await page.Mouse.MoveAsync(170, 280);
        await page.Mouse.DownAsync();
        await page.Mouse.UpAsync();
        await page.WaitForFunctionAsync("() => window.told.some(t => t[0] === 'wool-tap' && t[1] === 'brim')");
        await page.WaitForFunctionAsync("() => window.told.some(t => t[0] === 'wool-over' && t[1] === 'brim')");

        // Dragged to the right, what was on the left comes to the front.
        await page.Mouse.MoveAsync(170, 170);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(290, 172, new() { Steps = 8 });
        await page.Mouse.UpAsync();
        await Expect(element).ToHaveAttributeAsync("aria-valuetext", "in front: stripe 3");
        await page.WaitForFunctionAsync("() => !document.querySelector('.wool-canvas').hidden");
        await element.FocusAsync();
        for (var i = 0; i < 6; i++)
        {
            await page.Keyboard.PressAsync("ArrowLeft");
            await page.WaitForTimeoutAsync(480);
        }

        await Expect(element).ToHaveAttributeAsync("aria-valuetext", "in front: stripe 6");
        await page.EvaluateAsync("() => window.hat.bringToFront('stripe 2')");
        await Expect(element).ToHaveAttributeAsync("aria-valuetext", "in front: stripe 2");
        await page.WaitForFunctionAsync("() => window.hat.areaAt(170, 180) === 'stripe 2'");

        // A part lit: the others fade.
        await page.EvaluateAsync("() => window.hat.light('stripe 2')");
        await page.WaitForFunctionAsync(
            """
            () => {
              const canvas = document.querySelector('.wool-canvas');
              const at = y => canvas.getContext('2d').getImageData(canvas.width / 2, canvas.height * y, 1, 1).data[3];
              return at(0.5) > 240 && at(0.88) < 120 && at(0.88) > 60;
            }
            """);
        await page.EvaluateAsync("() => window.hat.look('above')");
        await page.WaitForFunctionAsync("() => window.hat.tilt > 1.3");
        await page.EvaluateAsync("() => window.hat.stop()");
        Assert.Equal(0, await page.Locator(".wool-canvas").CountAsync());
    }
}
