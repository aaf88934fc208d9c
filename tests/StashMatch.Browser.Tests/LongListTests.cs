using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

/// <summary>A very long list of leftovers, each weighed three times. <c>STASHMATCH_ROWS=5000</c> makes it as long as the table in DEVELOPERS.md and tells the figures.</summary>
[Collection(nameof(Alone))]
public sealed class LongListTests(LiveApp app) : IClassFixture<LiveApp>
{
    private const int MostTask = 50;
    private const int MostMemory = 3_000_000;
    private static readonly int Rows = int.TryParse(Environment.GetEnvironmentVariable("STASHMATCH_ROWS"), CultureInfo.InvariantCulture, out var rows) ? rows : 300;
    private static readonly string[] Labels = ["100 g / 400 m", "50 g / 125 m", "4 oz / 205 yd", "20 g / 68 m"];
    private static readonly string[] Fibres = ["100% wool", "75% superwash wool, 25% nylon", "100% alpaca", ""];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_long_list_scrolls_without_a_long_task_and_one_more_page_takes_little_memory()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        await FillAsync();
        var page = await app.PageAsync(1280);
        var answers = new List<double>();
        for (var i = 0; i < 5; i++)
        {
            answers.Add(await TimeAsync(() => page.Context.APIRequest.GetAsync($"{app.Address}/leftovers")));
        }

        Tell("the page in the first answer, median of 5", answers.Order().ElementAt(2), "ms");
        var first = await HeapAsync();
        await OpenAsync(page);
        var held = await HeapAsync();
        Tell("memory of the first open page", (held - first) / 1e6, "MB");
        var others = new List<IPage>();
        for (var i = 0; i < 4; i++)
        {
            var other = await app.PageAsync(1280);
            await OpenAsync(other);
            others.Add(other);
        }

        var each = (await HeapAsync() - held) / others.Count;
        Tell("memory of one more open page", each / 1e6, "MB");
        foreach (var other in others)
        {
            await other.Context.CloseAsync();
        }

        var scrolled = await MainThread.WatchAsync(page, () => page.EvaluateAsync("() => new Promise(done => { let frames = 0; const on = () => { scrollBy(0, 150); ++frames < 360 ? requestAnimationFrame(on) : done(); }; requestAnimationFrame(on); })"));
        Tell("scrolling 9,000 px a second: longest task, processor time", scrolled.LongestProcessor, "ms");
        Tell("the same by the clock", scrolled.LongestByClock, "ms");
        await page.EvaluateAsync("scrollTo(0, 0)");
        await page.GetByLabel("label, as printed").FillAsync("100 g / 400 m");
        await TimeTypingAsync(page);
        Tell("a word to find, to the list changed", await TimeAsync(async () =>
        {
            await page.GetByLabel("find").FillAsync("ball 2");
            await Expect(page.Locator(".heading h2")).ToContainTextAsync(" of ");
        }), "ms");
        await page.GetByLabel("name", new() { Exact = true }).FillAsync("The last");
        Tell("saving a ball, to the sentence", await TimeAsync(async () =>
        {
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator("p.said")).ToContainTextAsync("The last is saved");
        }), "ms");

        Assert.InRange(scrolled.Tasks, 360, int.MaxValue);
        Assert.True(scrolled.LongestProcessor < MostTask, $"a task of {scrolled.LongestProcessor} ms");
        Assert.True(each < MostMemory, $"{each} bytes a page");
    }

    private async Task FillAsync()
    {
        var rows = new StringBuilder("id,name,grams,scaleStepGrams,label,weightClass,fibre,colour,bag,note\r\n");
        for (var i = 0; i < Rows; i++)
        {
            rows.Append(CultureInfo.InvariantCulture, $"ball-{i},Ball {i} of a long list,{10 + (i % 40)}.5,0.1,{Labels[i % 4]},{i % 5},\"{Fibres[i % 4]}\",#{i * 7919 % 0xFFFFFF:X6},bag {i % 9},{(i % 3 == 0 ? "from the long list" : "")}\r\n");
        }

        var (table, store) = (app.Services.GetRequiredService<LeftoverTable>(), app.Services.GetRequiredService<LeftoverStore>());
        var bytes = Encoding.UTF8.GetBytes(rows.ToString());
        Tell($"taking {Rows} rows in", await TimeAsync(async () => Assert.Equal(Rows, (await table.KeepAsync(await table.PreviewAsync(bytes, Stop), Stop)).Logged)), "ms");
        for (var i = 0; i < Rows; i++)
        {
            await store.ReweighAsync($"ball-{i}", new Weighing(Grams.From(9.5m), default, Grams.From(0.1m)), Stop);
            await store.ReweighAsync($"ball-{i}", new Weighing(Grams.From(2 + (i % 70) / 10m), default, Grams.From(0.1m)), Stop);
        }
    }

    private static async Task TimeTypingAsync(IPage page)
    {
        var times = new List<double>();
        for (var i = 1; i <= 20; i++)
        {
            await page.GetByLabel("grams", new() { Exact = true }).FillAsync("");
            await Expect(page.Locator("#live")).ToContainTextAsync("as you type");
            times.Add(await page.EvaluateAsync<double>("n => new Promise(done => { const out = document.querySelector('#live'), box = document.querySelector('#grams'); const from = performance.now(); new MutationObserver((_, o) => { o.disconnect(); requestAnimationFrame(() => done(performance.now() - from)); }).observe(out, { childList: true, characterData: true, subtree: true }); box.value = n; box.dispatchEvent(new Event('input', { bubbles: true })); })", $"{i}"));
        }

        Tell("a key pressed to metres and yards painted, median of 20", times.Order().ElementAt(10), "ms");
        Tell("the same, the longest", times.Max(), "ms");
    }

    private static async Task OpenAsync(IPage page)
    {
        await page.GotoAsync("/leftovers");
        await Expect(page.Locator("#name")).ToBeEnabledAsync();
        await page.EvaluateAsync("scrollTo(0, 3000)");
        await Expect(page.Locator(".list > li.row").Nth(12)).ToBeAttachedAsync();
    }

    // What the program still holds once all that it can let go is gone.
    private static async Task<long> HeapAsync()
    {
        for (var i = 0; i < 3; i++)
        {
            GC.Collect(2, GCCollectionMode.Forced, blocking: true);
            GC.WaitForPendingFinalizers();
            await Task.Delay(100, Stop);
        }

        return GC.GetTotalMemory(forceFullCollection: true);
    }

    private static async Task<double> TimeAsync(Func<Task> act)
    {
        var from = Stopwatch.GetTimestamp();
        await act();
        return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
    }

    private static void Tell(string what, double figure, string unit) =>
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what} | {figure:0.0} {unit}"));
}
