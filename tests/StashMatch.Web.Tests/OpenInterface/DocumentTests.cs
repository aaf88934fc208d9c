using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

/// <summary>The interface's document says what the program does: every bound it tells of is tried.</summary>
public sealed class DocumentTests(HomeApp app) : IClassFixture<HomeApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private JsonObject? _document;

    [Theory]
    [InlineData("can-i-make", """{"hat":"side-to-side-sample","size":"C","leftovers":[]}""", 90)]
    [InlineData("from-this-bag", """{"hat":"side-to-side-sample","sizes":["C"],"stripeCounts":[6],"leftovers":[]}""", 60)]
    [InlineData("whole-bag", """{"hat":"practice-hat","sizes":["C"],"leftovers":[]}""", 60)]
    [InlineData("yardage", """{"hat":"practice-hat"}""", 50)]
    [InlineData("kits/check", """{"hat":"practice-hat","sizes":["C"],"skeins":[]}""", 60)]
    [InlineData("depths-from-leftovers", """{"hat":"side-to-side-sample","size":"C","leftovers":[]}""", 60)]
    [InlineData("leftovers", """{"name":"Moss","grams":20,"label":{"grams":100,"metres":400}}""", 20)]
    [InlineData("hats", """{"name":"x"}""", 50)]
    [InlineData("plans", """{"name":"x","hat":"practice-hat","size":"C","stripes":4,"arrangement":"own-colours","parts":[]}""", 10)]
    public async Task Every_bound_of_a_body_is_kept(string path, string sound, int atLeast)
    {
        var tried = 0;
        foreach (var (field, wrong) in Beyond(await SchemaAsync($"/api/v1/{path}"), ""))
        {
            var body = (JsonObject)JsonNode.Parse(sound)!;
            Put(body, field, wrong);
            using var content = new StringContent(body.ToJsonString(), Encoding.UTF8, "application/json");
            using var response = await app.Client.PostAsync(new Uri($"/api/v1/{path}", UriKind.Relative), content, Stop);
            var text = await response.Content.ReadAsStringAsync(Stop);
            Assert.True(response.StatusCode == HttpStatusCode.BadRequest, $"{field} = {wrong.ToJsonString()}: {response.StatusCode}");
            var named = JsonNode.Parse(text)!["errors"]!.AsObject().Select(e => e.Key).ToList();
            Assert.True(named.Exists(n => field == n || field.StartsWith(n + ".", StringComparison.Ordinal) || field.StartsWith(n + "[", StringComparison.Ordinal)), $"{field}: {string.Join(", ", named)}");
            tried++;
        }

        Assert.True(tried >= atLeast, $"{tried} bounds");
    }

    [Fact]
    public async Task A_number_is_a_number_everywhere_and_a_body_has_no_fields_but_those_told()
    {
        var document = await DocumentAsync();
        var loose = new List<string>();
        void Look(JsonNode? node, string at)
        {
            if (node is JsonObject schema)
            {
                if (schema["type"] is JsonArray types && types.Any(t => (string?)t is "number" or "integer") && types.Any(t => (string?)t == "string"))
                {
                    loose.Add(at);
                }

                foreach (var (name, inside) in schema)
                {
                    Look(inside, $"{at}/{name}");
                }
            }
            else if (node is JsonArray array)
            {
                foreach (var inside in array)
                {
                    Look(inside, at);
                }
            }
        }

        Look(document["components"]!["schemas"], "");
        Assert.Empty(loose);
        Assert.All(
            ["CanIMakeBody", "YardageBody", "KitCheckBody", "FromThisBagBody", "WholeBagBody", "DepthsBody", "LeftoverBody", "LeftoverChangeBody", "WeighingBody", "HatBody", "PlanBody", "UseBody"],
            n => Assert.False(document["components"]!["schemas"]![n]!["additionalProperties"]!.GetValue<bool>(), n));
    }

    // A value beyond each bound the document tells of, and the field it stands in.
    private static IEnumerable<(string Field, JsonNode Wrong)> Beyond(JsonObject schema, string at)
    {
        if (schema["oneOf"] is JsonArray ways)
        {
            foreach (var beyond in ways.OfType<JsonObject>().Where(w => (string?)w["type"] != "string").SelectMany(w => Beyond(w, at)))
            {
                yield return beyond;
            }
        }

        foreach (var (name, inside) in schema["properties"]?.AsObject() ?? [])
        {
            foreach (var beyond in Beyond((JsonObject)inside!, at.Length == 0 ? name : $"{at}.{name}"))
            {
                yield return beyond;
            }
        }

        if (schema["items"] is JsonObject items)
        {
            foreach (var beyond in Beyond(items, $"{at}[0]"))
            {
                yield return beyond;
            }
        }

        if (schema["minimum"] is { } least)
        {
            yield return (at, JsonValue.Create(least.GetValue<decimal>() - 0.5m));
        }

        if (schema["exclusiveMinimum"] is { } over)
        {
            yield return (at, JsonValue.Create(over.GetValue<decimal>()));
        }

        if (schema["maximum"] is { } most)
        {
            yield return (at, JsonValue.Create(most.GetValue<decimal>() + 0.5m));
        }

        if (schema["maxLength"] is { } longest)
        {
            yield return (at, JsonValue.Create(new string('x', longest.GetValue<int>() + 1)));
        }

        if (schema["enum"] is JsonArray)
        {
            yield return (at, JsonValue.Create("neither"));
        }

        if ((string?)schema["type"] == "array" && schema["maxItems"] is { } many)
        {
            yield return (at, new JsonArray([.. Enumerable.Range(0, Math.Min(many.GetValue<int>(), 10_000) + 1).Select(_ => JsonValue.Create(1))]));
        }
    }

    // Puts a value at "hat.sizes[0].headCm", with what it stands in around it.
    private static void Put(JsonObject body, string field, JsonNode value)
    {
        var steps = field.Split('.');
        var at = body;
        for (var i = 0; i < steps.Length; i++)
        {
            var (name, listed) = (steps[i].TrimEnd('[', '0', ']'), steps[i].EndsWith("[0]", StringComparison.Ordinal));
            if (i == steps.Length - 1)
            {
                at[name] = listed ? new JsonArray(value.DeepClone()) : value.DeepClone();
                return;
            }

            var next = new JsonObject();
            at[name] = listed ? new JsonArray(next) : next;
            at = next;
        }
    }

    private async Task<JsonObject> SchemaAsync(string path)
    {
        var document = await DocumentAsync();
        var schema = document["paths"]![path]!["post"]!["requestBody"]!["content"]!["application/json"]!["schema"]!.AsObject();
        return (string?)schema["$ref"] is { } id ? document["components"]!["schemas"]![id.Split('/')[^1]]!.AsObject() : schema;
    }

    private async Task<JsonObject> DocumentAsync() => _document ??= (await app.Client.GetFromJsonAsync<JsonObject>("/openapi/v1.json", Stop))!;
}
