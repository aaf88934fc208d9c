using Bunit;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store;
using Xunit;
using Page = StashMatch.Web.Pages.TestKits.TestKits;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.TestKits;

/// <summary>Kits and figures are invented.</summary>
public sealed class TestKitsTests : PageContext
{
    [Fact]
    public async Task The_practice_kit_passes_every_size_and_with_M_light_E_is_short_of_the_spare_by_half_a_yard()
    {
        await ReadyAsync();
        GoTo("/kits?hat=practice-hat");
        var page = Render<Page>();
        Fill(page, 1, ("M", "20", "1"), ("S", "10", "4"));
        await page.FindAll("button").Single(b => b.TextContent == "Add another kit").ClickAsync();
        Fill(page, 2, ("M", "18.8", "1"), ("S", "10", "4"));
        Untick(page, "one main colour", "one colour through braids and brim", "whatever fits");
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll("table.grid").Count), TimeSpan.FromSeconds(20));
        Assert.Matches(@": (1|at least 1, at most \d+) \(1 × size [A-E]\), with the reserve\.", page.FindAll("ul.whole li")[0].TextContent);
        var captions = page.FindAll("table.grid caption").Select(c => c.TextContent).ToList();
        Assert.Contains("Passes 5 of 5", captions[0], StringComparison.Ordinal);
        Assert.Contains("First to run out: M", captions[0], StringComparison.Ordinal);
        Assert.Contains("Passes 4 of 5", captions[1], StringComparison.Ordinal);
        var e = page.FindAll("table.grid")[1].QuerySelectorAll("button.cell")[^1];
        Assert.StartsWith("size E, 4 stripes: only just enough, but 0.5 m / 0.6 yd under the reserve", e.TextContent.Trim(), StringComparison.Ordinal);

        await page.FindAll("table.grid button.cell")[^1].ClickAsync();
        var opened = page.Find(".opened");
        Assert.Contains("M for the brim runs out first", opened.TextContent, StringComparison.Ordinal);
        Assert.Contains("S 4", opened.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_smallest_kit_is_found_told_proven_and_can_be_put_beside_the_others()
    {
        await ReadyAsync();
        GoTo("/kits?hat=practice-hat");
        var page = Render<Page>();
        page.Find("#buyable").Change("10 g / 25 yd\n20 g / 50 yd");
        await page.FindAll("button").Single(b => b.TextContent == "Show the smallest kit").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("4 × 10 g / 25 yd and 1 × 20 g / 50 yd: 60 g in all. Nothing lighter is enough.", page.Find(".panel .said").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        await page.Find(".said button").ClickAsync();
        Assert.Equal(2, page.FindAll("fieldset.kit").Count);
        page.Find("#buyable").Change("10 g / 25 yd");
        await page.FindAll("button").Single(b => b.TextContent == "Show the smallest kit").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("the brim needs 43.5 m / 47.6 yd in one piece", page.Find(".panel .said").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
    }

    [Fact]
    public async Task A_kit_is_kept_started_from_and_forgotten_and_what_cannot_be_read_is_named()
    {
        await ReadyAsync();
        var page = Render<Page>();
        page.Find("#kit-1").Change("Hedge");
        await page.FindAll("button").First(b => b.TextContent.StartsWith("Save this kit", StringComparison.Ordinal)).ClickAsync();
        var store = Services.GetRequiredService<KitStore>();
        var kept = Assert.Single(await store.ListAsync(TestContext.Current.CancellationToken));
        Assert.Equal(("Hedge", 2), (kept.Name, kept.Description[KitText.Skeins].Each!.Count));
        page.Find("input[aria-label='kit 1, row 2, grams each']").Change("ten");
        page.Find("input[aria-label='kit 1, row 1, label']").Change("");
        await page.Find("form").SubmitAsync();
        var said = string.Join(' ', page.FindAll(".field-message").Select(m => m.TextContent));
        Assert.Contains("Kit 1, row 2, grams must be a number", said, StringComparison.Ordinal);
        Assert.Contains("Kit 1, row 1, label is missing", said, StringComparison.Ordinal);
        page.Find("#start-1").Change(kept.Id);
        Assert.Equal("10", page.Find("input[aria-label='kit 1, row 2, grams each']").GetAttribute("value"));
        await page.Find(".kept button").ClickAsync();
        Assert.Empty(await store.ListAsync(TestContext.Current.CancellationToken));
    }

    private static void Fill(IRenderedComponent<Page> page, int kit, params (string Name, string Grams, string Count)[] rows)
    {
        for (var i = 1; i <= rows.Length; i++)
        {
            page.Find($"input[aria-label='kit {kit}, row {i}, skein']").Change(rows[i - 1].Name);
            page.Find($"input[aria-label='kit {kit}, row {i}, grams each']").Change(rows[i - 1].Grams);
            page.Find($"input[aria-label='kit {kit}, row {i}, how many']").Change(rows[i - 1].Count);
            page.Find($"input[aria-label='kit {kit}, row {i}, label']").Change("1 g / 2.5 yd");
            page.Find($"input[aria-label='kit {kit}, row {i}, fibre']").Change("");
            page.Find($"input[aria-label='kit {kit}, row {i}, colour']").Change("");
        }
    }

    private static void Untick(IRenderedComponent<Page> page, params string[] arrangements)
    {
        foreach (var name in arrangements)
        {
            page.FindAll("[aria-label='Arrangements'] label").Single(l => l.TextContent.Trim() == name).QuerySelector("input")!.Change(false);
        }
    }
}
