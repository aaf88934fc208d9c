using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using StashMatch.Benchmarks;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var seeds = args.Contains("--short") ? 12 : 60;
var folder = Directory.CreateTempSubdirectory("stashmatch-bench-").FullName;
await using var app = new WebApplicationFactory<StashMatch.Web.Pieces.Words>().WithWebHostBuilder(b => b.UseContentRoot(AppContext.BaseDirectory).UseSetting("Data:Folder", folder).UseSetting("Data:Demo", "false"));
var client = app.CreateClient(new() { BaseAddress = new Uri("http://127.0.0.1") });
var hats = (HatStore)app.Services.GetService(typeof(HatStore))!;
var hat = (await hats.FindAsync("side-to-side-sample"))!;
var anyCount = (HatDesign)hat with { StripeCounts = null };
Kits.Row(anyCount, seeds);
if (args.Contains("--kits"))
{
    return;
}

Console.WriteLine($"{Environment.ProcessorCount} processors, {seeds} seeded bags a row; median and worst in milliseconds; proven: share of answers proven best");
Console.WriteLine("| question | leftovers | stripes | median | worst | proven |");
Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
foreach (var arrangement in new[] { Arrangement.OwnColours, Arrangement.OneGround, Arrangement.AsItFalls })
{
    foreach (var count in new[] { 12, 60, 300 })
    {
        foreach (var stripes in new[] { 6, 12 })
        {
            Row($"{arrangement}, answer with repairs", count, stripes, arrangement);
        }
    }
}

await OverHttpAsync(60, 6);
await OverHttpAsync(300, 6);
var watch = Stopwatch.StartNew();
const int Plans = 2_000;
for (var i = 0; i < Plans; i++)
{
    hat.TryNeeds("C", 4 + (i % 9), out _, out _);
}

Console.WriteLine($"a row plan and its needs: {watch.Elapsed.TotalMicroseconds / Plans:0.0} µs");
watch.Restart();
const int Grids = 20;
for (var i = 0; i < Grids; i++)
{
    foreach (var size in hat.SizeNames)
    {
        for (var stripes = 1; stripes <= 24; stripes++)
        {
            anyCount.TryNeeds(size, stripes, out _, out _);
        }
    }
}

Console.WriteLine($"all 8 sizes × 24 counts: {watch.Elapsed.TotalMilliseconds / Grids:0.00} ms");
Directory.Delete(folder, recursive: true);

void Row(string name, int count, int stripes, Arrangement arrangement)
{
    var times = new List<double>();
    var proven = 0;
    for (var seed = -3; seed < seeds; seed++)
    {
        var question = new Question(hat, "CF"[Math.Abs(seed) % 2].ToString(), Bags.Of(count, seed + 3)) { Stripes = stripes, Arrangement = arrangement };
        var timer = Stopwatch.StartNew();
        Matcher.TryAnswer(question, out var answer, out _);
        if (seed >= 0)
        {
            times.Add(timer.Elapsed.TotalMilliseconds);
            proven += answer!.ProvenBest ? 1 : 0;
        }
    }

    Print(name, count, stripes, times, $"{100 * proven / seeds} %");
}

async Task OverHttpAsync(int count, int stripes)
{
    var times = new List<double>();
    for (var seed = -5; seed < seeds; seed++)
    {
        var body = new JsonObject
        {
            ["hat"] = "side-to-side-sample",
            ["size"] = "CF"[Math.Abs(seed) % 2].ToString(),
            ["stripes"] = stripes,
            ["leftovers"] = new JsonArray([.. Bags.Of(count, seed + 5).Select(ToJson)]),
        };
        var timer = Stopwatch.StartNew();
        using var response = await client.PostAsJsonAsync("/api/v1/can-i-make", body);
        response.EnsureSuccessStatusCode();
        if (seed >= 0)
        {
            times.Add(timer.Elapsed.TotalMilliseconds);
        }
    }

    Print("POST can-i-make, own colours", count, stripes, times, "");
}

static JsonNode ToJson(Leftover l) => new JsonObject
{
    ["id"] = l.Id,
    ["grams"] = l.Weighing.Net.Value,
    ["scaleStepGrams"] = 0.1,
    ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 },
    ["weightClass"] = 1,
    ["fibre"] = l.Fibre.ToString(),
    ["colour"] = l.Colour!.Value.Hex,
};

static void Print(string name, int count, int stripes, List<double> times, string proven)
{
    times.Sort();
    Console.WriteLine($"| {name} | {count} | {stripes} | {times[times.Count / 2]:0.0} | {times[^1]:0} | {proven} |");
}
