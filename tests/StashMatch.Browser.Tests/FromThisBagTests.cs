using System.Net.Http.Json;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

public sealed class FromThisBagTests(LiveApp app) : IClassFixture<LiveApp>
{
    private static readonly (string Name, double Grams, string Colour)[] Bag =
    [
        ("Oat", 31, "#E2D3B2"), ("Moss", 12, "#5B7A3A"), ("Plum", 11, "#523063"), ("Rust", 9, "#B4362C"), ("Teal", 10, "#1F7078"), ("Straw", 8, "#E0AE35"), ("Slate", 4, "#60707D"),
    ];

    private static readonly string[] Addresses =
    [
        "/from-this-bag", "/from-this-bag?hat=practice-hat", "/from-this-bag?hat=brim-up-sample&arrangement=one-ground&size=A&allowance=ten",
    ];

    [Fact]
    public async Task The_bag_is_looked_at_in_words_a_cell_opens_its_plan_and_depths_make_a_hat()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        var empty = await app.PageAsync(320);
        await empty.GotoAsync("/from-this-bag");
        await Expect(empty.GetByRole(AriaRole.Link, new() { Name = "Weigh your first ball" })).ToBeVisibleAsync();
        await CheckAsync(empty);
        await LogAsync();
        foreach (var (width, dark, scripts) in new[] { (320, false, false), (390, true, true), (1280, false, true), (1280, true, false) })
        {
            var page = await app.PageAsync(width, dark, scripts);
            foreach (var address in Addresses)
            {
                await page.GotoAsync(address);
                await Expect(page.Locator("h1")).ToBeVisibleAsync();
                await CheckAsync(page, scripts);
            }

            await page.GotoAsync("/from-this-bag?arrangement=own-colours&size=A&size=C");
            var cell = page.Locator("table.cells td a").First;
            var word = await cell.Locator(".word").TextContentAsync();
            await cell.ClickAsync();
            await Expect(page.Locator(".can-i-make .word").First).ToContainTextAsync(word!);
            await page.GoBackAsync();
            await page.GetByText("Use up these balls").First.ClickAsync();
            foreach (var name in new[] { "Moss", "Plum", "Rust", "Teal" })
            {
                await page.Locator("#depths").GetByLabel(name).CheckAsync();
            }

            await page.GetByLabel("at least", new() { Exact = true }).FillAsync("6");
            await page.GetByRole(AriaRole.Button, new() { Name = "Work out the stripes" }).ClickAsync();
            await Expect(page.Locator("#depths tbody tr")).ToHaveCountAsync(4);
            await CheckAsync(page, scripts);
            await page.Locator("#depths").GetByRole(AriaRole.Link, new() { Name = "See this hat" }).ClickAsync();
            await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("size=A&stripes=4&rows="));
            await Expect(page.Locator(".can-i-make .word").First).ToBeVisibleAsync();
            await page.Context.CloseAsync();
        }
    }

    private static async Task CheckAsync(IPage page, bool axe = true)
    {
        Assert.Equal(0, await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"));
        if (axe)
        {
            await Axe.CheckAsync(page);
        }
    }

    private async Task LogAsync()
    {
        using var client = new HttpClient { BaseAddress = new Uri(app.Address) };
        foreach (var (name, grams, colour) in Bag)
        {
            using var response = await client.PostAsJsonAsync(
                "/api/v1/leftovers", new { name, grams, scaleStepGrams = 0.1, label = new { grams = 100, metres = 400 }, weightClass = 1, fibre = "100% wool", colour }, TestContext.Current.CancellationToken);
            response.EnsureSuccessStatusCode();
        }
    }
}
