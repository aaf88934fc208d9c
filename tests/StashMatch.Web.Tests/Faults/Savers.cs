using System.Collections.Concurrent;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StashMatch.Web.Tests.Faults;

/// <summary>People who save as fast as they can, and write down only what they were told is saved.</summary>
internal sealed class Savers(int seed)
{
    private const int People = 6;
    private const int PartsOfAPlan = 3;
    private int _next;

    /// <summary>Acknowledged leftovers by id, with the grams of each acknowledged weighing.</summary>
    public ConcurrentDictionary<string, ConcurrentBag<decimal>> Leftovers { get; } = new(StringComparer.Ordinal);

    /// <summary>Acknowledged plans.</summary>
    public ConcurrentDictionary<string, byte> Plans { get; } = new(StringComparer.Ordinal);

    /// <summary>All acknowledgements so far.</summary>
    public int Acknowledged => Plans.Count + Leftovers.Sum(l => l.Value.Count);

    /// <summary>Saves until the program is gone.</summary>
    public Task SaveAsync(HttpClient client, CancellationToken stop) =>
        Task.WhenAll(Enumerable.Range(0, People).Select(p => Task.Run(() => SaveAsync(client, new Random(seed + p + (1_000 * _next)), stop), CancellationToken.None)));

    /// <summary>What is wrong in the store as it is now, measured by what was acknowledged: each lost or halved save, in words.</summary>
    public List<string> Compare(JsonElement everything)
    {
        var wrong = new List<string>();
        var stored = everything.GetProperty("leftovers").EnumerateArray().ToDictionary(l => l.GetProperty("id").GetString()!, l => l, StringComparer.Ordinal);
        foreach (var (id, grams) in Leftovers)
        {
            var there = stored.TryGetValue(id, out var l) ? l.GetProperty("ledger").EnumerateArray().Select(e => e.GetProperty("grams").GetDecimal()).ToHashSet() : [];
            wrong.AddRange(grams.Where(g => !there.Contains(g)).Select(g => $"lost: {id} at {g} g"));
        }

        // Not acknowledged may be there or not, but never half.
        wrong.AddRange(stored.Where(l => l.Value.GetProperty("ledger").GetArrayLength() == 0 || l.Value.GetProperty("name").GetString() != $"Ball {l.Key}").Select(l => $"halved: {l.Key}"));
        var plans = everything.GetProperty("plans").EnumerateArray().ToDictionary(p => p.GetProperty("id").GetString()!, p => p, StringComparer.Ordinal);
        wrong.AddRange(Plans.Keys.Where(p => !plans.ContainsKey(p)).Select(p => $"lost: {p}"));
        wrong.AddRange(plans.Where(p => p.Value.GetProperty("parts").GetArrayLength() != PartsOfAPlan).Select(p => $"halved: {p.Key}"));
        return wrong;
    }

    private async Task SaveAsync(HttpClient client, Random random, CancellationToken stop)
    {
        string? last = null;
        while (!stop.IsCancellationRequested)
        {
            var grams = random.Next(1, 5_000_000) / 1000m;
            try
            {
                switch (last is null ? 0 : random.Next(4))
                {
                    case 0 or 1:
                        var id = $"ball-{Interlocked.Increment(ref _next)}";
                        await SendAsync(client, "leftovers", new JsonObject { ["id"] = id, ["name"] = $"Ball {id}", ["grams"] = grams, ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 } }, stop);
                        Leftovers.GetOrAdd(id, _ => []).Add(grams);
                        last = id;
                        break;
                    case 2:
                        await SendAsync(client, $"leftovers/{last}/weighings", new JsonObject { ["grams"] = grams }, stop);
                        Leftovers[last!].Add(grams);
                        break;
                    default:
                        var parts = Enumerable.Range(1, PartsOfAPlan).Select(i => (JsonNode)new JsonObject { ["leftover"] = last, ["part"] = $"stripe {i}", ["metres"] = 1 });
                        var plan = await SendAsync(client, "plans", new JsonObject { ["name"] = $"Hat {Interlocked.Increment(ref _next)}", ["hat"] = "practice-hat", ["size"] = "C", ["stripes"] = 3, ["arrangement"] = "own-colours", ["reserves"] = false, ["parts"] = new JsonArray([.. parts]) }, stop);
                        Plans[plan.GetProperty("id").GetString()!] = 0;
                        break;
                }
            }
            catch (Exception e) when (e is HttpRequestException or OperationCanceledException or IOException or JsonException)
            {
                // Not acknowledged; the program is gone, or will be.
                last = null;
                if (e is HttpRequestException { StatusCode: null } or OperationCanceledException)
                {
                    return;
                }
            }
        }
    }

    private static async Task<JsonElement> SendAsync(HttpClient client, string path, JsonObject body, CancellationToken stop)
    {
        using var response = await client.PostAsJsonAsync(new Uri($"api/v1/{path}", UriKind.Relative), body, stop);
        response.EnsureSuccessStatusCode();
        return await response.Content.ReadFromJsonAsync<JsonElement>(stop);
    }
}
