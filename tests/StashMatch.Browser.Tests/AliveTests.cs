using System.Net.Http.Json;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

/// <summary>
/// The answer in place: changed by tap and by keyboard without the page being loaded again. Figures by the walk-through scenarios, whose practice hat
/// is our own and invented.
/// </summary>
public sealed class AliveTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task Size_C_only_just_is_asked_for_kept_and_mended_by_keyboard_alone()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LogAsync([("oat", 20m, 2.5, "#E8DCC0"), ("moss", 9m, 2.4, "#5F7A45"), ("plum", 7.5m, 2.5, "#6F3F66"), ("rust", 7m, 2.3, "#A9522F"),
            ("teal", 12m, 2.5, "#1F7480")]);
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/can-i-make?hat=practice-hat&size=D&leftover=oat&leftover=moss&leftover=plum&leftover=rust&leftover=teal");
        await page.EvaluateAsync("window.sameDocument = true");

        // The size by keys: the answer changes, the focus stays.
        var size = page.GetByLabel("Size", new() { Exact = true });
        await size.FocusAsync();
        await page.Keyboard.TypeAsync("size C");
        await Expect(page.Locator("h1")).ToContainTextAsync("size C");
        await Expect(size).ToBeFocusedAsync();
        foreach (var (part, choice) in new[] { ("brim", "M~oat"), ("stripe 1", "S1~moss"), ("stripe 2", "S2~plum"), ("stripe 3", "S3~rust"),
            ("stripe 4", "S4~teal") })
        {
            await ChooseAsync(page, part, choice);
        }

        await WordAsync(page, "only just");
        await Expect(page.Locator(".why")).ToContainTextAsync("Rust leaves about");

        // 15.3, 6.8, 1.3 and 15.2 yards of the walk-through, in metres.
        foreach (var (part, left) in new[] { ("brim", "14.0 m · 6.1 g"), ("stripe 1", "6.2 m · 2.8 g"), ("stripe 3", "1.2 m · 0.6 g"),
            ("stripe 4", "13.9 m · 6.1 g") })
        {
            await Expect(page.Locator($".row[data-part='{part}'] .left")).ToHaveTextAsync(left);
        }

        await page.GetByText("Good to know").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#good-to-know")).ToContainTextAsync("Braid 2: Rust and Teal");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new("for the first colour of braid 2.*yes") }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await WordAsync(page, "yes");
        await Expect(page.Locator(".word")).ToBeFocusedAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("yes: ");
        await page.GoBackAsync();
        await WordAsync(page, "only just");
        await ChooseAsync(page, "braid 2", "braid 2 strand a~oat");
        await WordAsync(page, "yes");
        await Expect(page.Locator("#good-to-know")).Not.ToContainTextAsync("Braid 2");
        Assert.True(await page.EvaluateAsync<bool>("window.sameDocument"));
        await Axe.CheckAsync(page);
    }

    [Fact]
    public async Task After_a_yarn_is_decided_on_the_hat_is_shown_whole_though_the_focus_is_in_its_row()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        (string Id, string Colour)[] bag = [("lit-oat", "#E8DCC0"), ("lit-moss", "#5F7A45"), ("lit-plum", "#6F3F66"), ("lit-rust", "#A9522F"), ("lit-teal", "#1F7480")];
        await LogAsync([.. bag.Select(b => (b.Id, 30m, 2.5, b.Colour))]);
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/can-i-make?hat=practice-hat&size=C&" + string.Join('&', bag.Select(b => $"leftover={b.Id}")));
        await page.EvaluateAsync("window.sameDocument = true");
        var row = page.Locator(".row[data-part='stripe 2']");
        await row.Locator(".dots").FocusAsync();
        await Expect(page.Locator(".lit")).Not.ToHaveCountAsync(0);
        await page.Keyboard.PressAsync("Enter");
        await row.GetByRole(AriaRole.Link, new() { NameRegex = new("^Always use") }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".change")).ToContainTextAsync("Your choice holds.");
        await Expect(row.Locator(".dots")).ToBeFocusedAsync();
        await Expect(page.Locator(".lit")).ToHaveCountAsync(0);
        Assert.True(await page.EvaluateAsync<bool>("window.sameDocument"));
    }

    [Fact]
    public async Task Alpaca_for_the_brim_is_warned_of_and_may_be_used_anyway_and_one_is_held_double()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LogAsync([("alpaca", 25m, 2.2, "#8C6B4F"), ("wool", 16m, 2.5, "#E8DCC0"), ("fern", 9m, 2.4, "#5F7A45"), ("sloe", 7.5m, 2.5, "#6F3F66"),
            ("brick", 9m, 2.3, "#A9522F"), ("pond", 12m, 2.5, "#1F7480")],
            new() { ["alpaca"] = "100% alpaca", ["wool"] = "100% wool" });
        await LogOneAsync(new
        {
            id = "sock",
            name = "Sock",
            grams = 22,
            scaleStepGrams = 0.1,
            label = new { grams = 100, metres = 420 },
            weightClass = 1,
            fibre = "100% wool",
            colour = "#345678"
        });
        await LogOneAsync(new
        {
            id = "fine",
            name = "Fine",
            grams = 15,
            scaleStepGrams = 0.1,
            label = new { grams = 100, metres = 400 },
            weightClass = 1,
            fibre = "100% superwash wool",
            colour = "#446688"
        });
        const string asked = "/can-i-make?hat=practice-hat&size=C&leftover=alpaca&leftover=wool&leftover=fern&leftover=sloe&leftover=brick&leftover=pond";
        foreach (var width in new[] { 320, 1280 })
        {
            var page = await app.PageAsync(width);
            await page.GotoAsync(asked);
            await page.EvaluateAsync("window.sameDocument = true");
            var brim = page.Locator(".row[data-part='brim']");
            await Expect(brim).ToContainTextAsync("Wool");

            // The wool left out: the alpaca goes in with a warning, and is always used.
            await ActAsync(page, "brim", "Don’t use Wool");
            await Expect(brim).ToContainTextAsync("Alpaca");
            await page.GetByText("Good to know").ClickAsync();
            await Expect(page.Locator("#good-to-know")).ToContainTextAsync("Alpaca may stretch in the brim");
            await page.Locator("#good-to-know").GetByRole(AriaRole.Link, new() { Name = "Always use Alpaca for the brim" }).ClickAsync();
            var fold = page.Locator(".more > summary");
            await fold.ClickAsync();
            await Expect(page.GetByText("always use Alpaca in the brim")).ToBeVisibleAsync();
            await ActAsync(page, "brim", "Choose freely again");
            await Expect(page.Locator(".decided")).Not.ToContainTextAsync("always use Alpaca");
            await page.Locator(".more").EvaluateAsync("fold => { fold.open = true }");

            await page.GetByText("don’t use Wool").ClickAsync();
            await Expect(brim).ToContainTextAsync("Wool");

            // Held double: the sock yarn on itself, then with the finer one.
            await page.Locator(".more").EvaluateAsync("fold => { fold.open = true }");

            await page.GetByLabel("Hold two together").SelectOptionAsync("sock");
            await Expect(page.GetByLabel("Hold two together")).ToHaveValueAsync("sock");
            await Expect(page.Locator(".hold")).ToContainTextAsync("Sock held double: 46.2 m");
            await page.GetByLabel("with", new() { Exact = true }).SelectOptionAsync("fine");
            await Expect(page.Locator(".hold")).ToContainTextAsync("Sock with Fine: 60.0 m / 65.6 yd, 205 m in 100 g together; 32.4 m");
            Assert.True(await page.EvaluateAsync<bool>("window.sameDocument"));
            Assert.Equal(0, await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
            await Axe.CheckAsync(page);
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task Long_work_says_so_and_can_be_stopped_and_a_cut_line_leaves_the_answer_standing()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var page = await app.PageAsync(390);
        await LogOneAsync(new
        {
            id = "lone",
            name = "Lone",
            grams = 30,
            scaleStepGrams = 0.1,
            label = new { grams = 100, metres = 400 },
            weightClass = 1,
            colour = "#AA8844"
        });
        await page.GotoAsync("/can-i-make?hat=brim-up-sample&size=A&stripes=4");
        var h1 = page.Locator("h1");
        var word = await h1.TextContentAsync();
        await page.Locator(".more > summary").ClickAsync();
        await page.RouteAsync("**/can-i-make?*", async route =>
            { await Task.Delay(3_000, TestContext.Current.CancellationToken); await route.ContinueAsync(); });
        await page.GetByLabel("Size", new() { Exact = true }).SelectOptionAsync("B");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Working it out");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Stopped. This is still the answer from before.");
        await Expect(h1).ToHaveTextAsync(word!);
        await page.UnrouteAllAsync();
        await page.RouteAsync("**/can-i-make?*", route => route.AbortAsync());
        await page.GetByLabel("Size", new() { Exact = true }).SelectOptionAsync("C");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Lost contact with StashMatch");
        await Axe.CheckAsync(page);
        await page.UnrouteAllAsync();
        await page.GetByLabel("Size", new() { Exact = true }).SelectOptionAsync("D");
        await Expect(h1).ToContainTextAsync("size D");
    }

    [Fact]
    public async Task The_bag_is_looked_at_in_place_and_one_of_its_hats_is_opened()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await LogOneAsync(new
        {
            id = "heap",
            name = "Heap",
            grams = 150,
            scaleStepGrams = 0.1,
            label = new { grams = 100, metres = 400 },
            weightClass = 1,
            fibre = "100% wool",
            colour = "#AA8844"
        });
        await LogOneAsync(new
        {
            id = "pile",
            name = "Pile",
            grams = 150,
            scaleStepGrams = 0.1,
            label = new { grams = 100, metres = 400 },
            weightClass = 1,
            fibre = "100% wool",
            colour = "#223355"
        });
        var page = await app.PageAsync(1280);
        await page.GotoAsync("/from-this-bag?hat=practice-hat");
        await page.EvaluateAsync("window.sameDocument = true");
        await page.GetByLabel("Hat", new() { Exact = true }).SelectOptionAsync("brim-up-sample");
        await Expect(page.Locator(".pegs > li")).ToHaveCountAsync(8);
        await page.GetByLabel("Colours", new() { Exact = true }).SelectOptionAsync("usual");
        await Expect(page.Locator("table.cells")).ToHaveCountAsync(4);
        await page.GetByText("more", new() { Exact = true }).ClickAsync();
        await page.GetByLabel("A", new() { Exact = true }).CheckAsync();
        await Expect(page.Locator(".pegs > li")).ToHaveCountAsync(1);
        Assert.EndsWith("/from-this-bag?hat=brim-up-sample&arrangements=usual&allowancePercent=10&sizes=A", page.Url, StringComparison.Ordinal);
        Assert.True(await page.EvaluateAsync<bool>("window.sameDocument"));
        await page.GetByText("Use up these balls").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Work out the stripes" }).ClickAsync();
        await Expect(page.GetByText("What to use up is not ticked yet")).ToBeVisibleAsync();
        await page.Locator(".pegs a").ClickAsync();
        await Expect(page.Locator(".ans")).Not.ToHaveAttributeAsync("data-word", "no");
    }

    private static Task WordAsync(IPage page, string word) => Expect(page.Locator(".ans")).ToHaveAttributeAsync("data-word", word);

    private static async Task ActAsync(IPage page, string part, string act)
    {
        await page.Locator($".row[data-part='{part}'] .dots").ClickAsync();
        await page.Locator(".menu").GetByRole(AriaRole.Link, new() { NameRegex = new(act) }).ClickAsync();
        await Expect(page.Locator(".menu")).ToHaveCountAsync(0);
    }

    // By keys: another leftover for a part.
    private static async Task ChooseAsync(IPage page, string row, string choice)
    {
        var dots = page.Locator($".row[data-part='{row}'] .dots");
        await dots.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        var list = page.Locator(".menu select").First;
        await Expect(list).ToBeVisibleAsync();
        await list.SelectOptionAsync(choice);
        await list.FocusAsync();
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".menu")).ToHaveCountAsync(0);
        await Expect(dots).ToBeFocusedAsync();
    }

    private async Task LogAsync((string Id, decimal Grams, double YardsAGram, string Colour)[] balls, Dictionary<string, string>? fibres = null)
    {
        foreach (var (id, grams, yards, colour) in balls)
        {
            await LogOneAsync(new
            {
                id,
                name = char.ToUpperInvariant(id[0]) + id[1..],
                grams,
                scaleStepGrams = 0.1,
                label = new { grams = 100, yards = 100 * yards },
                weightClass = 3,
                fibre = fibres?.GetValueOrDefault(id),
                colour
            });
        }
    }

    private async Task LogOneAsync(object leftover)
    {
        using var client = new HttpClient { BaseAddress = new Uri(app.Address) };
        using var logged = await client.PostAsJsonAsync("/api/v1/leftovers", leftover, TestContext.Current.CancellationToken);
        logged.EnsureSuccessStatusCode();
    }
}
