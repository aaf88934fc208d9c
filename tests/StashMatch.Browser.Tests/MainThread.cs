using System.Text.Json;
using Microsoft.Playwright;

namespace StashMatch.Browser.Tests;

/// <summary>What a page's own thread is busy with, as the browser traces it.</summary>
public sealed class MainThread
{
    private readonly List<JsonElement> _events = [];

    /// <summary>The longest task, milliseconds of processor time: what it takes where nothing else wants the processor.</summary>
    public double LongestProcessor { get; private set; }

    /// <summary>The longest task by the clock, other programs' turns included.</summary>
    public double LongestByClock { get; private set; }

    /// <summary>How many tasks there were.</summary>
    public int Tasks { get; private set; }

    /// <summary>Traces a page while something is done with it.</summary>
    public static async Task<MainThread> WatchAsync(IPage page, Func<Task> act)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(act);
        var watched = new MainThread();
        var done = new TaskCompletionSource();
        var session = await page.Context.NewCDPSessionAsync(page);
        session.Event("Tracing.dataCollected").OnEvent += (_, data) => watched._events.AddRange(data!.Value.GetProperty("value").EnumerateArray().Select(e => e.Clone()));
        session.Event("Tracing.tracingComplete").OnEvent += (_, _) => done.TrySetResult();
        await session.SendAsync("Tracing.start", new()
        {
            ["transferMode"] = "ReportEvents",
            ["traceConfig"] = new Dictionary<string, object> { ["includedCategories"] = new[] { "devtools.timeline", "disabled-by-default-devtools.timeline" } },
        });
        await act();
        await session.SendAsync("Tracing.end");
        await done.Task;
        await session.DetachAsync();
        watched.Weigh();
        return watched;
    }

    private void Weigh()
    {
        // The page's own thread is the one frames are asked of most often.
        var own = _events.Where(e => Text(e, "name") == "FireAnimationFrame").Select(Thread).GroupBy(t => t).OrderByDescending(g => g.Count()).First().Key;
        var tasks = _events.Where(e => Text(e, "name") == "RunTask" && Thread(e) == own && e.TryGetProperty("dur", out _)).ToList();
        Tasks = tasks.Count;
        LongestByClock = tasks.Max(t => t.GetProperty("dur").GetDouble()) / 1000;
        LongestProcessor = tasks.Max(t => t.TryGetProperty("tdur", out var used) ? used.GetDouble() : 0) / 1000;
    }

    private static string? Text(JsonElement e, string field) => e.TryGetProperty(field, out var text) ? text.GetString() : null;

    private static (int Process, int Thread) Thread(JsonElement e) => (e.GetProperty("pid").GetInt32(), e.GetProperty("tid").GetInt32());
}
