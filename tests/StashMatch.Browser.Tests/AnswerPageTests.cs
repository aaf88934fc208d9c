using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

/// <summary>The answer stands first: measured in a real browser, at a desk and on a phone, in every word.</summary>
public sealed class AnswerPageTests(LiveApp app) : IClassFixture<LiveApp>
{
    internal static readonly (int Width, int Height, int Line, double Screens)[] Places = [(1280, 800, 800, 3), (390, 844, 700, 4)];

    private static string Size(string size) => $"/can-i-make?hat=side-to-side-sample&size={size}&stripes=6";

    [Fact]
    public async Task The_answer_stands_above_the_fold_in_every_word_and_the_page_is_short()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LoadDemoAsync();
        foreach (var (width, height, line, screens) in Places)
        {
            foreach (var (size, word, must) in new[]
            {
                ("A", "yes", new[] { ".word", ".pic .wool", ".go" }),
                ("F", "only just", [".word", ".why", ".way", ".pic .wool", ".go"]),
                ("H", "no", [".word", ".why", ".way", ".pic .wool"]),
            })
            {
                var page = await app.PageAsync(width, height: height);
                await page.GotoAsync(Size(size));
                Assert.Equal(word, await page.Locator(".ans").GetAttributeAsync("data-word"));
                await AboveAsync(page, line, must);
                var long_ = await page.EvaluateAsync<double>("document.documentElement.scrollHeight / innerHeight");
                Assert.True(long_ < screens, $"{word} at {width} is {long_:0.00} screens long");
                await page.Context.CloseAsync();
            }
        }
    }

    [Fact]
    public async Task Nothing_is_too_wide_and_axe_finds_nothing_with_the_menu_and_every_fold_open_too()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LoadDemoAsync();
        foreach (var (width, dark) in new[] { (320, false), (390, false), (390, true), (768, false), (1280, false), (1280, true), (1920, false) })
        {
            var page = await app.PageAsync(width, dark);
            foreach (var address in new[] { Size("F"), Size("H"), Size("F") + "&choose=stripe%203", Size("F") + "&choose=braid%201" })
            {
                await page.GotoAsync(address);
                var over = await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)");
                Assert.True(over == 0, $"{address} at {width} is {over} too wide");
                if (width is 390 or 1280)
                {
                    await Axe.CheckAsync(page);
                }
            }

            if (width is 390 or 1280)
            {
                await page.GotoAsync(Size("F"));
                await page.EvaluateAsync("for (const fold of document.querySelectorAll('main details')) fold.open = true");
                await Axe.CheckAsync(page);
            }

            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task On_a_phone_everything_tapped_is_44_high_and_the_first_stop_is_the_skip_link()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LoadDemoAsync();
        var page = await app.PageAsync(390);
        await page.GotoAsync(Size("F"));
        var small = await page.EvaluateAsync<string[]>("""
            [...document.querySelectorAll("main a[href], main button, main summary, main select, .bar a, .mast a, .mast summary")].filter(e =>
                e.offsetParent && !e.closest(".areas, p, details:not([open]) > :not(summary)"))
              .map(e => [e.getBoundingClientRect(), e]).filter(([b]) => b.width && (b.height < 43.5 || b.width < 35.5))
                  .map(([b, e]) => `${e.outerHTML.slice(0, 80)} ${b.width}x${b.height}`)
            """);
        Assert.Empty(small);
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Skip to content" })).ToBeFocusedAsync();
        Assert.StartsWith("Only just: size F, six stripes", await page.TitleAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wool_is_dragged_from_stripe_to_stripe_the_rest_stays_and_undo_puts_it_back()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LoadDemoAsync();
        var page = await app.PageAsync(1280);
        await page.GotoAsync(Size("F"));
        var before = await RowsAsync(page);

        // On the hat: the middle of what is seen of one stripe onto another.
        await DragAsync(page, ".tag[data-part='stripe 3']", ".tag[data-part='stripe 4']");
        await Expect(page.Locator(".change")).ToContainTextAsync("Stripe 3 and stripe 4 changed places. The rest stays.");
        var after = await RowsAsync(page);
        Assert.Equal((before["stripe 4"], before["stripe 3"]), (after["stripe 3"], after["stripe 4"]));
        Assert.Equal(before.Where(r => r.Key is not ("stripe 3" or "stripe 4")), after.Where(r => r.Key is not ("stripe 3" or "stripe 4")));
        await page.Locator(".plans").GetByRole(AriaRole.Link, new() { Name = "undo" }).ClickAsync();
        await Expect(page.Locator(".change")).ToHaveCountAsync(0);
        Assert.Equal(before, await RowsAsync(page));

        // From the rows: a leftover that is not used, onto a row.
        await page.GetByText("Not used").ClickAsync();
        await page.Locator(".unused li[data-yarn='no-band']").ScrollIntoViewIfNeededAsync();

        // Both in sight, the row clear of the ruler that stays at the top.
        await page.Locator(".row[data-part='seam']").EvaluateAsync("r => scrollBy({ top: r.getBoundingClientRect().top - 140, behavior: 'instant' })");
        await DragAsync(page, ".unused li[data-yarn='no-band']", ".row[data-part='seam'] .part");
        await Expect(page.Locator(".row[data-part='seam'] .name")).ToHaveTextAsync("No band");
        await page.Keyboard.PressAsync("Control+z");
        await Expect(page.Locator(".row[data-part='seam'] .name")).ToHaveTextAsync(before["seam"]);
    }

    [Fact]
    public async Task A_tap_on_the_hat_opens_the_part_and_a_listener_hears_the_new_word_alone()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LoadDemoAsync();
        var page = await app.PageAsync(390);
        await page.GotoAsync(Size("F"));
        var tag = (await page.Locator(".codes.only-phone .tag[data-part='stripe 4']").BoundingBoxAsync())!;
        await page.Mouse.ClickAsync(tag.X + (tag.Width / 2), tag.Y + 30);
        var menu = page.GetByRole(AriaRole.Dialog, new() { Name = "Stripe 4" });
        await Expect(menu).ToBeVisibleAsync();
        foreach (var kept in new[] { ".pic .wool", ".word", ".chance" })
        {
            var box = (await page.Locator(kept).BoundingBoxAsync())!;
            Assert.True(box.Y + box.Height <= (await menu.BoundingBoxAsync())!.Y + 1, $"the menu lies over {kept}");
        }

        await page.Keyboard.PressAsync("Escape");
        await Expect(menu).ToHaveCountAsync(0);
        await page.EvaluateAsync("""
            window.heard = [];
            const status = document.querySelector('.now [role=status]');
            new MutationObserver(() => heard.push(status.textContent)).observe(status, { childList: true, subtree: true, characterData: true });
            """);
        await page.Locator(".row[data-part='brim'] .dots").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new("Don’t use Hearth rug") }).ClickAsync();
        await Expect(page.Locator(".ans")).ToHaveAttributeAsync("data-word", "no");
        var said = await page.EvaluateAsync<string[]>("heard.filter(h => !h.startsWith('Working'))");
        Assert.Matches(@"^no: [\d.]+ m short", Assert.Single(said.Distinct()));

        // The focus did not fall to the page.
        Assert.NotEqual("BODY", await page.EvaluateAsync<string>("document.activeElement.tagName"));
    }

    [Fact]
    public async Task With_scripts_blocked_the_menu_is_a_link_and_its_acts_too_and_the_hat_is_turned_by_links()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LoadDemoAsync();
        foreach (var width in new[] { 390, 1280 })
        {
            var page = await app.PageAsync(width, scripts: false);
            await page.GotoAsync(Size("F"));
            var name = await page.Locator(".row[data-part='stripe 3'] .name").TextContentAsync();
            await page.Locator(".row[data-part='stripe 3'] .dots").ClickAsync();
            await page.GetByRole(AriaRole.Link, new() { NameRegex = new($"Don’t use {name}") }).ClickAsync();
            await Expect(page.Locator(".rows")).Not.ToContainTextAsync(name!);
            await Expect(page.Locator(".change")).ToContainTextAsync("Stripe 3 is now");
            await page.GetByRole(AriaRole.Link, new() { Name = "undo" }).ClickAsync();
            await Expect(page.Locator(".row[data-part='stripe 3'] .name")).ToHaveTextAsync(name!);
            var before = await page.Locator(".pic .wool").GetAttributeAsync("src");
            await page.GetByRole(AriaRole.Link, new() { Name = "Turn right" }).ClickAsync();
            Assert.NotEqual(before, await page.Locator(".pic .wool").GetAttributeAsync("src"));
            await page.GetByRole(AriaRole.Link, new() { NameRegex = new("above") }).ClickAsync();
            await Expect(page.Locator(".turn a[aria-current]")).ToContainTextAsync("above");
            Assert.True(await page.Locator(".pic .wool").EvaluateAsync<bool>("i => i.decode().then(() => i.naturalWidth > 0)"));
            await page.Context.CloseAsync();
        }
    }

    internal static async Task AboveAsync(IPage page, int line, params string[] must)
    {
        foreach (var what in must)
        {
            var box = await page.Locator(what).First.BoundingBoxAsync();
            Assert.True(box is not null, $"{what} is not there");
            Assert.True(box.Height > 0 && box.Y + box.Height <= line, $"{what} ends at {box.Y + box.Height}, under {line}, at {page.Url}");
        }
    }

    private static async Task<Dictionary<string, string>> RowsAsync(IPage page) =>
        await page.EvaluateAsync<Dictionary<string, string>>("""
            Object.fromEntries([...document.querySelectorAll('.row[data-part]')].map(r => [r.dataset.part, r.querySelector('.name, .yarn .unseen').textContent]))
            """);

    private static async Task DragAsync(IPage page, string from, string to)
    {
        var (a, b) = ((await page.Locator(from).First.BoundingBoxAsync())!, (await page.Locator(to).First.BoundingBoxAsync())!);
        await page.Mouse.MoveAsync(a.X + (a.Width / 2), a.Y + (a.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(a.X + (a.Width / 2) + 20, a.Y + (a.Height / 2), new() { Steps = 3 });
        await page.Mouse.MoveAsync(b.X + (b.Width / 2), b.Y + (b.Height / 2), new() { Steps = 6 });
        await page.Mouse.UpAsync();
    }

    private async Task LoadDemoAsync()
    {
        var page = await app.PageAsync(1280, scripts: false);
        await page.GotoAsync("/");
        if (await page.GetByRole(AriaRole.Button, new() { Name = "Try the demo bag" }).CountAsync() > 0)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Try the demo bag" }).ClickAsync();
            await Expect(page.Locator(".word")).ToBeVisibleAsync();
        }

        await page.Context.CloseAsync();
    }
}
