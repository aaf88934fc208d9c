using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

/// <summary>Questions through the front door.</summary>
internal static class Asking
{
    public static async Task<JsonElement> PostAsync(this HttpClient client, string path, JsonNode body, HttpStatusCode expected = HttpStatusCode.OK)
    {
        using var response = await client.PostAsJsonAsync("/api/v1/" + path, body, TestContext.Current.CancellationToken);
        var text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(expected == response.StatusCode, $"{response.StatusCode}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }

    public static JsonObject Yards(string id, double grams, double yardsPerGram, string fibre = "unknown", string? colour = null) => new()
    {
        ["id"] = id,
        ["grams"] = grams,
        ["scaleStepGrams"] = 0.1,
        ["label"] = new JsonObject { ["grams"] = 1, ["yards"] = yardsPerGram },
        ["weightClass"] = 3,
        ["fibre"] = fibre,
        ["colour"] = colour,
    };

    public static JsonElement Part(this JsonElement answer, string name) => answer.GetProperty("parts").EnumerateArray().Single(p => p.GetProperty("part").GetString() == name);

    public static JsonElement Leftover(this JsonElement answer, string id) => answer.GetProperty("leftovers").EnumerateArray().Single(p => p.GetProperty("id").GetString() == id);

    public static string From(this JsonElement part) => part.GetProperty("from")[0].GetProperty("leftover").GetString()!;

    public static IEnumerable<string> Codes(this JsonElement answer, string list) => answer.GetProperty(list).EnumerateArray().Select(w => w.GetProperty("code").GetString()!);
}
