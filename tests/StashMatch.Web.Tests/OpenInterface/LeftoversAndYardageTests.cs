using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

public sealed class LeftoversAndYardageTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_leftover_is_logged_once_for_one_key_weighed_again_knitted_up_and_removed()
    {
        using var app = new HomeApp();
        var client = app.Client;
        async Task<JsonElement> LogAsync()
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/leftovers")
            {
                Content = JsonContent.Create(JsonNode.Parse("""{"name":"Moss bank","grams":27.5,"tareGrams":4.0,"scaleStepGrams":0.1,"label":{"grams":50,"metres":125},"fibre":"100% wool"}""")),
            };
            request.Headers.Add("Idempotency-Key", "evening-1");
            using var response = await client.SendAsync(request, Stop);
            Assert.Equal(HttpStatusCode.Created, response.StatusCode);
            return await response.Content.ReadFromJsonAsync<JsonElement>(Stop);
        }

        var (first, second) = (await LogAsync(), await LogAsync());
        Assert.Equal("moss-bank", first.GetProperty("id").GetString());
        Assert.Equal("Mb", first.GetProperty("code").GetString());
        Assert.Equal(58.75, first.GetProperty("metres").GetDouble());
        Assert.Equal(first.GetProperty("id").GetString(), second.GetProperty("id").GetString());
        Assert.Single((await client.GetFromJsonAsync<JsonElement>("/api/v1/leftovers", Stop)).EnumerateArray());
        var again = await client.PostAsync("leftovers/moss-bank/weighings", new JsonObject { ["grams"] = 10, ["scaleStepGrams"] = 0.1 });
        Assert.Equal(25.0, again.GetProperty("metres").GetDouble());
        var wrong = await client.PostAsync("leftovers/moss-bank/weighings", new JsonObject { ["grams"] = -10 }, HttpStatusCode.BadRequest);
        Assert.True(wrong.GetProperty("errors").TryGetProperty("grams", out _));
        Assert.Equal(25.0, (await client.GetFromJsonAsync<JsonElement>("/api/v1/leftovers", Stop))[0].GetProperty("metres").GetDouble());
        Assert.Equal(HttpStatusCode.NoContent, (await client.PostAsync(new Uri("/api/v1/leftovers/moss-bank/knit-up", UriKind.Relative), null, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await client.DeleteAsync(new Uri("/api/v1/leftovers/moss-bank", UriKind.Relative), Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await client.DeleteAsync(new Uri("/api/v1/leftovers/moss-bank", UriKind.Relative), Stop)).StatusCode);
        Assert.Empty((await client.GetFromJsonAsync<JsonElement>("/api/v1/leftovers", Stop)).EnumerateArray());
    }

    [Fact]
    public async Task The_demo_says_yes_to_A_only_just_to_F_with_a_stretching_brim_and_no_to_H()
    {
        using var app = new DemoApp();
        async Task<JsonElement> AskAsync(string size) => await app.Client.PostAsync("can-i-make", new JsonObject { ["hat"] = "side-to-side-sample", ["size"] = size, ["stripes"] = 6 });
        Assert.Equal("yes", (await AskAsync("A")).GetProperty("verdict").GetString());
        var f = await AskAsync("F");
        Assert.Equal("only-just", f.GetProperty("verdict").GetString());
        Assert.Equal("hearth-rug", f.Part("brim").From());
        Assert.Contains("brim-stretch", f.Codes("warnings"));
        var unfold = f.GetProperty("repairs").EnumerateArray().Single(r => r.GetProperty("code").GetString() == "unfold-brim");
        Assert.Equal("yes", unfold.GetProperty("verdict").GetString());
        Assert.Equal("no", (await AskAsync("H")).GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task A_yardage_table_adds_up_and_grows_with_the_size()
    {
        using var app = new HomeApp();
        var table = await app.Client.PostAsync("yardage", new JsonObject { ["hat"] = "side-to-side-sample", ["stripeCounts"] = new JsonArray { 6, 30 - 18 }, ["allowancePercent"] = 10 });
        var rows = table.GetProperty("rows").EnumerateArray().ToList();
        Assert.Equal(16, rows.Count);
        var c = rows.Single(r => r.GetProperty("size").GetString() == "C" && r.GetProperty("stripes").GetInt32() == 6);
        Assert.Equal((44, 188, 29), (c.GetProperty("stitches").GetInt32(), c.GetProperty("rows").GetInt32(), c.GetProperty("stripeRows").GetInt32()));
        Assert.Equal(7.25, c.GetProperty("stripeDepthCm").GetDouble());
        var parts = c.GetProperty("stripesEach").EnumerateArray().Sum(s => s.GetProperty("metres").GetDecimal())
            + (10 * c.GetProperty("braidStrandMetres").GetDecimal()) + c.GetProperty("brimMetres").GetDecimal() + c.GetProperty("seamMetres").GetDecimal();
        Assert.Equal(parts, c.GetProperty("totalMetres").GetDecimal());
        var totals = rows.Where(r => r.GetProperty("stripes").GetInt32() == 6).Select(r => r.GetProperty("totalMetres").GetDecimal()).ToList();
        Assert.Equal(totals.Order(), totals);
        var none = await app.Client.PostAsync("yardage", JsonNode.Parse("""{"hat":{"weightClass":6,"construction":"brim-up-round","gauge":{"stitchesPer10cm":10,"rowsPer10cm":14},"stripeCounts":{"least":1,"most":24}},"sizes":["A"],"stripeCounts":[24]}""")!);
        Assert.Equal("cannot-be-knitted", none.GetProperty("rows")[0].GetProperty("why").GetString());
    }

    [Fact]
    public async Task The_open_interface_describes_itself()
    {
        using var app = new HomeApp();
        var document = await app.Client.GetFromJsonAsync<JsonElement>("/openapi/v1.json", Stop);
        foreach (var path in new[] { "/api/v1/can-i-make", "/api/v1/yardage", "/api/v1/leftovers", "/api/v1/hats", "/api/v1/kits/check", "/api/v1/from-this-bag", "/api/v1/whole-bag", "/api/v1/depths-from-leftovers" })
        {
            Assert.True(document.GetProperty("paths").TryGetProperty(path, out _), path);
        }

        Assert.Equal("ready", await app.Client.GetStringAsync(new Uri("/health/ready", UriKind.Relative), Stop));
        Assert.Equal("alive", await app.Client.GetStringAsync(new Uri("/health/live", UriKind.Relative), Stop));
    }

    [Theory]
    [InlineData("/can-i-make?hat=zzz", "Hat is not one of the hats here")]
    [InlineData("/can-i-make?hat=side-to-side-sample&size=Q", "Size must be one of A")]
    [InlineData("/can-i-make?hat=side-to-side-sample&size=C&stripes=-2", "Stripes must be a whole number")]
    [InlineData("/can-i-make?hat=side-to-side-sample&size=C&stripes=3", "cannot be knitted")]
    [InlineData("/can-i-make?hat=side-to-side-sample&size=C&allowance=1.2,3", "has more than one decimal sign")]
    [InlineData("/can-i-make?hat=side-to-side-sample&size=C&arrangement=%3Cscript%3E", "Arrangement must be one of")]
    public async Task The_answer_page_names_the_field_that_cannot_be_read(string address, string says)
    {
        using var app = new HomeApp();
        using var response = await app.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        var html = WebUtility.HtmlDecode(await response.Content.ReadAsStringAsync(Stop));
        Assert.Contains(says, html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>\"", html, StringComparison.Ordinal);
    }
}
