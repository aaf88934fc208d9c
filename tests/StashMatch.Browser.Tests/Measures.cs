using System.Globalization;
using System.Text;
using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace StashMatch.Browser.Tests;

/// <summary>Not a test but a measurement, run by one command of its own (DEVELOPERS.md): it prints figures and judges none.</summary>
public sealed class Measures(LiveApp app) : IClassFixture<LiveApp>
{
    private const string Asked = "/can-i-make?hat=side-to-side-sample&size=C&stripes=6";

    // One act of the answer page, and how long until the answer it leads to is painted.
    private const string Timed = """
        act => new Promise(done => {
          const start = performance.now();
          new MutationObserver((_, watcher) => {
            watcher.disconnect();
            requestAnimationFrame(() =>
                { const after = new MessageChannel(); after.port1.onmessage = () => done(performance.now() - start); after.port2.postMessage(0); });
          }).observe(document.querySelector("[data-alive]"), { childList: true });
          const next = (all, of) => all[(all.indexOf(of) + 1) % all.length];
          const swap = (one, other) => {
            const yarn = part => document.querySelector(`.row .code[data-of="${part}"]`).dataset.yarn;
            const asked = new URL(document.querySelector(".can-i-make").dataset.address, location.origin);
            asked.searchParams.append("locks", `${one}~${yarn(other)}`);
            asked.searchParams.append("locks", `${other}~${yarn(one)}`);
            for (const code of document.querySelectorAll(".row .code[data-of]")) asked.searchParams.append("like", `${code.dataset.of}~${code.dataset.yarn}`);
            document.dispatchEvent(new CustomEvent("answer:ask", { detail: asked.pathname + asked.search }));
          };
          const change = (field, value) => { field.value = value; field.dispatchEvent(new Event("change", { bubbles: true })); };
          const size = document.querySelector("#size"), stripes = document.querySelector("#stripes"), arrangement = document.querySelector("#arrangement");
          if (act === "size") change(size, next([...size.options].map(o => o.value), size.value));
          if (act === "stripes") change(stripes, next([...stripes.options].map(o => o.value).filter(v => v), stripes.value));
          if (act === "arrangement") change(arrangement, next([...arrangement.options].map(o => o.value), arrangement.value));
          if (act === "swap") swap("stripe 2", "stripe 3");
          if (act === "swap back") swap("stripe 3", "stripe 2");
        })
        """;

    [Fact]
    public async Task First_view_on_a_slow_phone_and_from_tap_to_answer()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("STASHMATCH_MEASURE") == "1", "a measurement: STASHMATCH_MEASURE=1 runs it");
        await LogAsync(60);
        var table = new StringBuilder("\npage at 390 px, 4x slower CPU, 1.6 Mbit/s, 150 ms | KB over the line | LCP, s | layout shift\n");
        foreach (var address in new[] { "/", Asked, "/leftovers", "/from-this-bag", "/plans", "/hats", "/tables", "/kits", "/testers", "/settings" })
        {
            var (bytes, lcp, shift) = await FirstViewAsync(address);
            table.AppendLine(CultureInfo.InvariantCulture, $"{address} | {bytes / 1024.0:0} | {lcp / 1000:0.00} | {shift:0.000}");
        }

        TestContext.Current.SendDiagnosticMessage(table.ToString());
        await LogAsync(240);
        var page = await app.PageAsync(1280);
        table = new StringBuilder("\nfrom tap to answer painted, 300 leftovers, loopback | median, ms | 95th percentile | worst\n");
        List<double> all = [];
        foreach (var act in new[] { "size", "stripes", "arrangement", "swap", "swap back" })
        {
            List<double> times = [];
            for (var i = 0; i < 24; i++)
            {
                // Each decision is taken afresh, each choice in turn.
                if (i % 8 == 0 || act.StartsWith("swap", StringComparison.Ordinal))
                {
                    await page.GotoAsync(Asked);
                }

                var time = await page.EvaluateAsync<double>(Timed, act);
                if (i > 0)
                {
                    times.Add(time);
                }
            }

            all.AddRange(times);
            table.AppendLine(Row(act, times));
        }

        table.AppendLine(Row("all", all));
        TestContext.Current.SendDiagnosticMessage(table.ToString());
    }

    private static string Row(string what, List<double> times)
    {
        times.Sort();
        return string.Create(CultureInfo.InvariantCulture,
            $"{what} | {times[times.Count / 2]:0} | {times[(int)(0.95 * (times.Count - 1))]:0} | {times[^1]:0}");
    }

    private async Task<(long Bytes, double Lcp, double Shift)> FirstViewAsync(string address)
    {
        var page = await app.PageAsync(390);
        var line = await page.Context.NewCDPSessionAsync(page);
        await line.SendAsync("Network.enable");
        await line.SendAsync("Network.emulateNetworkConditions",
            new() { ["offline"] = false, ["latency"] = 150, ["downloadThroughput"] = 1.6e6 / 8, ["uploadThroughput"] = 0.75e6 / 8 });
        await line.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 4 });
        long bytes = 0;
        line.Event("Network.loadingFinished").OnEvent += (_, e) => bytes += (long)(e?.GetProperty("encodedDataLength").GetDouble() ?? 0);
        await page.AddInitScriptAsync("""
            window.seen = { lcp: 0, shift: 0 };
            new PerformanceObserver(l => l.getEntries().forEach(e => window.seen.lcp = e.startTime))
                .observe({ type: "largest-contentful-paint", buffered: true });
            new PerformanceObserver(l => l.getEntries().forEach(e => { if (!e.hadRecentInput) window.seen.shift += e.value; }))
                .observe({ type: "layout-shift", buffered: true });
            """);
        await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.NetworkIdle, Timeout = 90_000 });
        await page.WaitForTimeoutAsync(1_500);
        var seen = await page.EvaluateAsync<JsonElement>("window.seen");
        await page.Context.CloseAsync();
        return (bytes, seen.GetProperty("lcp").GetDouble(), seen.GetProperty("shift").GetDouble());
    }

    // Random by a fixed seed; a few long ones for the brim.
    private async Task LogAsync(int many)
    {
        var random = new Random(many);
        var rows = new StringBuilder("id,name,grams,scaleStepGrams,label,weightClass,fibre,colour\n");
        for (var i = 0; i < many; i++)
        {
            var grams = i % 20 == 0 ? 24 + random.Next(8) : 3 + random.Next(20);
            rows.AppendLine(CultureInfo.InvariantCulture,
                $"m{many}-{i},Ball {many} {i},{grams},0.1,100 g / 400 m,1,\"80% wool, 20% nylon\",#{random.Next(0x1000000):X6}");
        }

        using var client = new HttpClient { BaseAddress = new Uri(app.Address) };
        using var table = new StringContent(rows.ToString(), Encoding.UTF8, "text/csv");
        using var logged = await client.PostAsync(new Uri("/api/v1/leftovers/import", UriKind.Relative), table, TestContext.Current.CancellationToken);
        logged.EnsureSuccessStatusCode();
    }
}
