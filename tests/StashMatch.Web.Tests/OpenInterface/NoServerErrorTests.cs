using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

/// <summary>Whatever is sent, the answer is an answer or a message that names a field, never a server error.</summary>
public sealed class NoServerErrorTests(HomeApp app) : IClassFixture<HomeApp>
{
    private const string Sound = """
        {"hat":{"name":"x","construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},"weightClass":1,
          "brim":{"depthCm":5,"folded":true,"fit":"snug","rib":2,"bindOff":"tubular"},"braids":{"where":"between-stripes","strands":"neighbours"},
          "stripeCounts":{"least":4,"most":6},"sizes":[{"size":"C","headCm":52,"heightCm":20.8,"circumferenceCm":47,"stitches":44}],
          "usage":{"factor":1.1,"spreadPercent":10}},
         "size":"C","stripes":5,"arrangement":"as-it-falls","inTurn":3,"allowancePercent":10,"colourOrder":"any","nextDoor":"differ",
         "leftovers":[{"id":"moss","grams":6.0,"tareGrams":0,"scaleStepGrams":0.1,"label":{"grams":100,"metres":400},"ratioFrom":"printed",
           "weightClass":1,"fibre":"80% merino, 20% nylon","colour":"#5B7A3A","singles":false,"superwash":false,"lot":"7"},
           {"id":"fern","grams":3,"label":{"grams":100,"metres":400}},{"id":"ivy","grams":3,"label":{"grams":100,"metres":400}}],
         "joined":[{"id":"both","of":["fern","ivy"]}],"apart":["stripe 2"],
         "locks":[{"part":"brim","leftover":"moss","held":"double"}],"never":[{"part":"stripe 1","leftover":"moss"}],
         "sizes":["C"],"stripeCounts":[5],"arrangements":["as-it-falls"],"leastRows":2,"mostRows":200,"lightestPercent":6,
         "skeins":[{"name":"M","grams":50,"count":1,"label":{"grams":100,"metres":400},"colour":"#E2D3B2","fibre":"100% wool","weightClass":1},
           {"name":"S","grams":10,"count":3,"label":{"grams":100,"metres":400}}],
         "smallestFrom":[{"grams":10,"label":{"grams":100,"metres":400}},{"grams":50,"label":{"ounces":1,"yards":120}}]}
        """;

    private static readonly string[] Odd =
    [
        "null", "true", "-1", "0", "1e308", "-1e308", "1e999", "0.0000001", "2147483648", "99999999999999999999", "\"\"", "\"C\"", "\"½\"", "\"NaN\"",
        "\"<script>\"", "\"\\u0000\"", "\"\\ud800\"", "{\"\\udc00\":1}",
        "\"#5B7A3A\"", "[]", "[null]", "{}", "{\"a\":1}", "\"brim-up-round\"", "\"own\"", "0.5", "24", "75", "6.5",
        "\"" + "x8_9" + "\"", "[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]",
    ];

    [Fact]
    public async Task One_field_after_another_is_replaced_by_every_odd_value()
    {
        var paths = Leaves(JsonNode.Parse(Sound)!, "").ToList();
        Assert.True(paths.Count > 40);
        foreach (var path in paths)
        {
            foreach (var odd in Odd)
            {
                await CheckAsync(Replaced(path, odd), $"{path} = {odd}");
            }
        }
    }

    [Fact]
    public async Task Random_cuts_of_the_text_are_refused_kindly()
    {
        var cuts = Gen.Select(Gen.Int[0, Sound.Length - 1], Gen.Int[0, 40], Gen.String[0, 6]).Array[300].Single();
        foreach (var (at, length, with) in cuts)
        {
            await CheckAsync(string.Concat(Sound.AsSpan(0, at), with, Sound.AsSpan(Math.Min(Sound.Length, at + length))), $"cut at {at}");
        }
    }

    [Theory]
    [InlineData("plans", """{"name":"x","hat":"practice-hat","size":"C","stripes":4,"arrangement":"own-colours","reserves":false,"version":"00000000-0000-0000-0000-000000000001","question":{"a":[1]},"parts":[{"leftover":"moss","part":"brim","metres":1.5}]}""")]
    [InlineData("leftovers", """{"id":"odd","name":"Odd","grams":20,"tareGrams":1,"scaleStepGrams":0.1,"label":{"grams":100,"metres":400},"ratioFrom":"printed","weightClass":1,"fibre":"100% wool","colour":"#5B7A3A","care":"hand wash","lot":"7","singles":false,"superwash":true}""")]
    [InlineData("plans/nobody/name", """{"name":"x"}""")]
    [InlineData("leftovers/moss/uses", """{"grams":0.001,"for":"socks"}""")]
    [InlineData("import", """{"stashMatch":1,"settings":{"firstUnit":"yards","scaleStepGrams":1,"allowancePercent":10},"calibrations":[{"from":"x","factor":1.1,"measureSpread":0.02,"switchedOff":false,"at":"2026-11-25T20:00:00+00:00"}],"hats":[],"leftovers":[{"id":"a","name":"A","code":"Aa","label":{"grams":50,"metres":200},"ratioFrom":"printed","weightClass":1,"fibre":"100% wool","colour":"#5B7A3A","care":"hand wash","loggedAt":"2026-11-25T20:00:00+00:00","ledger":[{"kind":"weighed","at":"2026-11-25T20:00:00+00:00","grams":20,"tareGrams":0,"scaleStepGrams":0.1},{"kind":"edited","at":"2026-11-25T20:00:00+00:00","changes":[{"field":"lot","before":"","after":"7"}]},{"kind":"undone","at":"2026-11-25T20:00:00+00:00","undoes":1}]}],"plans":[],"marks":["x"]}""")]
    public async Task What_is_kept_takes_any_body_kindly_too(string path, string sound)
    {
        // With something in the store, nothing is taken in whole; what is wrong is said all the same.
        using (var keep = new StringContent("""{"id":"moss","name":"Moss","grams":20,"label":{"grams":100,"metres":400}}""", Encoding.UTF8, "application/json"))
        using (await app.Client.PostAsync(new Uri("/api/v1/leftovers", UriKind.Relative), keep, TestContext.Current.CancellationToken))
        {
        }

        var bodies = Leaves(JsonNode.Parse(sound)!, "").SelectMany(p => Odd.Select(o => Replaced(p, o, sound)))
            .Concat(Gen.Select(Gen.Int[0, sound.Length - 1], Gen.Int[0, 40], Gen.String[0, 6]).Array[60].Single()
                .Select(c => string.Concat(sound.AsSpan(0, c.Item1), c.Item3, sound.AsSpan(Math.Min(sound.Length, c.Item1 + c.Item2)))));
        foreach (var body in bodies)
        {
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            using var response = await app.Client.PostAsync(new Uri($"/api/v1/{path}", UriKind.Relative), content, TestContext.Current.CancellationToken);
            Assert.True((int)response.StatusCode < 500, $"{body}: {response.StatusCode}");
        }
    }

    [Fact]
    public async Task Any_bytes_sent_as_a_table_are_read_or_refused_kindly()
    {
        const string Table = "id,name,grams,label,fibre\nmoss,Moss,\"6,5\",100 g / 400 m,\"80% merino, 20% nylon\"\n";
        foreach (var (at, bytes) in Gen.Select(Gen.Int[0, Table.Length], Gen.Byte.Array[0, 8]).Array[300].Single())
        {
            using var content = new ByteArrayContent([.. Encoding.UTF8.GetBytes(Table[..at]), .. bytes, .. Encoding.UTF8.GetBytes(Table[at..])]);
            content.Headers.ContentType = new("text/csv");
            using var response = await app.Client.PostAsync(new Uri("/api/v1/leftovers/import?preview=true", UriKind.Relative), content, TestContext.Current.CancellationToken);
            Assert.True(response.StatusCode is HttpStatusCode.OK or HttpStatusCode.BadRequest, $"{response.StatusCode}");
        }
    }

    private static string Replaced(string path, string odd) => Replaced(path, odd, Sound);

    private static string Replaced(string path, string odd, string sound)
    {
        var root = JsonNode.Parse(sound)!;
        var steps = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var node = root;
        foreach (var step in steps.SkipLast(1))
        {
            node = int.TryParse(step, out var i) && node is JsonArray ? node[i]! : node[step]!;
        }

        var mark = JsonNode.Parse("\"MARK\"");
        if (node is JsonArray array)
        {
            array[int.Parse(steps[^1], System.Globalization.CultureInfo.InvariantCulture)] = mark;
        }
        else
        {
            node[steps[^1]] = mark;
        }

        return root.ToJsonString().Replace("\"MARK\"", odd, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Leaves(JsonNode? node, string at)
    {
        if (at.Length > 0)
        {
            yield return at;
        }

        var inside = node switch
        {
            JsonObject o => o.SelectMany(p => Leaves(p.Value, $"{at}/{p.Key}")),
            JsonArray a => a.SelectMany((p, i) => Leaves(p, $"{at}/{i}")),
            _ => [],
        };
        foreach (var leaf in inside)
        {
            yield return leaf;
        }
    }

    // Each route gets the fields it knows, as it refuses every other; now and then all of them.
    private async Task CheckAsync(string body, string what)
    {
        _known ??= await KnownAsync();
        foreach (var (path, known) in _known)
        {
            using var content = new StringContent(Only(body, known), Encoding.UTF8, "application/json");
            using var response = await app.Client.PostAsync(new Uri(path, UriKind.Relative), content, TestContext.Current.CancellationToken);
            Assert.True(response.StatusCode is HttpStatusCode.OK or HttpStatusCode.BadRequest, $"{what}: {response.StatusCode}");
        }
    }

    private Dictionary<string, HashSet<string>>? _known;

    private async Task<Dictionary<string, HashSet<string>>> KnownAsync()
    {
        var document = JsonNode.Parse(await app.Client.GetStringAsync(new Uri("/openapi/v1.json", UriKind.Relative), TestContext.Current.CancellationToken))!;
        return new[] { "can-i-make", "yardage", "kits/check", "from-this-bag", "whole-bag", "depths-from-leftovers" }.Select(p => $"/api/v1/{p}").ToDictionary(
            p => p,
            p =>
            {
                var schema = document["paths"]![p]!["post"]!["requestBody"]!["content"]!["application/json"]!["schema"]!;
                var named = (string?)schema["$ref"] is { } id ? document["components"]!["schemas"]![id.Split('/')[^1]]! : schema;
                return named["properties"]!.AsObject().Select(f => f.Key).ToHashSet(StringComparer.Ordinal);
            },
            StringComparer.Ordinal);
    }

    private static string Only(string body, HashSet<string> known)
    {
        try
        {
            if (JsonNode.Parse(body, documentOptions: new() { MaxDepth = 64 }) is JsonObject fields)
            {
                return new JsonObject(fields.Where(f => known.Contains(f.Key)).Select(f => KeyValuePair.Create(f.Key, f.Value?.DeepClone()))).ToJsonString();
            }
        }
        catch (Exception e) when (e is System.Text.Json.JsonException or ArgumentException or InvalidOperationException)
        {
            // Not sound, and sent so.
        }

        return body;
    }
}
