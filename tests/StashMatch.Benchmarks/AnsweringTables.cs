using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Benchmarks;

/// <summary>Whole answers, repairs and all: from the matcher, and over HTTP from the app in this process.</summary>
internal static class AnsweringTables
{
    public static void WithRepairs(Hat hat, int seeds)
    {
        Table.Head("Answers with repairs", "question", "leftovers", "stripes", "median", "worst", "proven");
        foreach (var arrangement in new[] { Arrangement.OwnColours, Arrangement.OneGround, Arrangement.AsItFalls })
        {
            foreach (var (count, stripes) in new[] { (12, 6), (12, 12), (60, 6), (60, 12), (300, 6), (300, 12) })
            {
                var (times, proven) = (new List<double>(), 0);
                for (var seed = -3; seed < seeds; seed++)
                {
                    var question = new Question(hat, SizeOf(seed), Bags.Of(count, seed + 3)) { Stripes = stripes, Arrangement = arrangement };
                    var (milliseconds, answer) = Race.Once(() => Matcher.TryAnswer(question, out var made, out _) ? made : null);
                    if (seed >= 0)
                    {
                        times.Add(milliseconds);
                        proven += answer!.ProvenBest ? 1 : 0;
                    }
                }

                Table.Row($"{arrangement}", $"{count}", $"{stripes}", Table.Figure(Table.Median(times)), Table.Figure(times.Max()), Table.Share(proven, seeds));
            }
        }
    }

    public static async Task OverHttpAsync(HttpClient client, int requests)
    {
        Table.Head($"POST can-i-make, repairs in, {requests} requests", "leftovers", "stripes", "median", "95th percentile", "worst");
        foreach (var (count, stripes) in new[] { (60, 6), (300, 6), (300, 12) })
        {
            var times = new List<double>();
            for (var seed = -5; seed < requests; seed++)
            {
                var body = new JsonObject
                {
                    ["hat"] = "side-to-side-sample",
                    ["size"] = SizeOf(seed),
                    ["stripes"] = stripes,
                    ["leftovers"] = new JsonArray([.. Bags.Of(count, seed + 5).Select(ToJson)]),
                };
                var (watch, used) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
                using var response = await client.PostAsJsonAsync("/api/v1/can-i-make", body);
                response.EnsureSuccessStatusCode();
                if (seed >= 0)
                {
                    times.Add(Math.Min(watch.Elapsed.TotalMilliseconds, (Environment.CpuUsage.TotalTime - used).TotalMilliseconds));
                }
            }

            Table.Row($"{count}", $"{stripes}", Table.Figure(Table.Median(times)), Table.Figure(Table.Percentile(times, 0.95)), Table.Figure(times.Max()));
        }
    }

    public static void RowPlans(HatDesign hat)
    {
        var anyCount = hat with { StripeCounts = null };
        const int Plans = 2_000;
        var watch = Stopwatch.StartNew();
        for (var i = 0; i < Plans; i++)
        {
            hat.TryNeeds("C", 4 + (i % 9), out _, out _);
        }

        Console.WriteLine();
        Console.WriteLine($"A row plan and its needs: {watch.Elapsed.TotalMicroseconds / Plans:0.0} µs");
        const int Grids = 20;
        watch.Restart();
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

        Console.WriteLine($"All 8 sizes × 24 counts: {watch.Elapsed.TotalMilliseconds / Grids:0.00} ms");
    }

    private static string SizeOf(int seed) => "CF"[Math.Abs(seed) % 2].ToString();

    private static JsonNode ToJson(Leftover l) => new JsonObject
    {
        ["id"] = l.Id,
        ["grams"] = l.Weighing.Net.Value,
        ["scaleStepGrams"] = 0.1,
        ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 },
        ["weightClass"] = 1,
        ["fibre"] = l.Fibre.ToString(),
        ["colour"] = l.Colour!.Value.Hex,
    };
}
