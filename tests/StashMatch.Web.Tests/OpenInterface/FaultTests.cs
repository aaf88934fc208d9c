using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

/// <summary>Whatever is wrong with a request is named and said as problem details, and nothing of it is kept.</summary>
public sealed class FaultTests
{
    private const string Moss = """{"id":"moss","name":"Moss","grams":20,"label":{"grams":100,"metres":400}}""";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("plans", """{"name":"x",PLAN,"question":HALF,"parts":[]}""", "question")]
    [InlineData("plans", """{"name":"x",PLAN,"question":{"a":[1,{"b":HALF}]},"parts":[]}""", "question.a[1].b")]
    [InlineData("plans", """{"name":HALF,PLAN,"parts":[]}""", "name")]
    [InlineData("leftovers", """{"id":HALF,"name":"Moss","grams":20,LABEL}""", "id")]
    [InlineData("can-i-make", """{"hat":HALF,"size":"C"}""", "hat")]
    [InlineData("can-i-make", """{"hat":{"name":HALF},"size":"C"}""", "hat.name")]
    [InlineData("can-i-make", """{"hat":"practice-hat","size":"C","locks":[{"part":"brim","leftover":["moss",HALF]}]}""", "locks[0].leftover[1]")]
    [InlineData("yardage", """{"hat":HALF}""", "hat")]
    [InlineData("depths-from-leftovers", """{"hat":"side-to-side-sample","size":"C","leftovers":[HALF]}""", "leftovers[0]")]
    [InlineData("kits/check", """{"hat":HALF,"skeins":[]}""", "hat")]
    [InlineData("from-this-bag", """{"hat":"practice-hat","sizes":[HALF]}""", "sizes[0]")]
    [InlineData("whole-bag", """{"hat":HALF}""", "hat")]
    [InlineData("hats", """{"name":HALF,"weightClass":3}""", "name")]
    public async Task Half_a_character_is_refused_by_the_name_of_its_field(string path, string body, string field)
    {
        using var app = new HomeApp();
        var errors = await RefusedAsync(app.Client, path, body);
        Assert.Contains("unreadable character", errors.GetProperty(field)[0].GetString(), StringComparison.Ordinal);
        Assert.Empty((await app.Client.GetFromJsonAsync<JsonArray>(At("plans"), Stop))!);
    }

    [Theory]
    [InlineData("can-i-make", """{"hat":"practice-hat","size":"C","arrangment":"one-ground"}""", "arrangment", "arrangement")]
    [InlineData("can-i-make", """{"hat":"practice-hat","size":"C","Stripes":4}""", "Stripes", "stripes")]
    [InlineData("can-i-make", """{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":20,"label":{"grams":100,"meters":400}}]}""", "leftovers[0].label.meters", "metres")]
    [InlineData("can-i-make", """{"hat":{"name":"x","brim":{"dephtCm":5}},"size":"C"}""", "hat.brim.dephtCm", "depthCm")]
    [InlineData("can-i-make", """{"hat":"practice-hat","size":"C","locks":[{"prat":"brim","leftover":"a"}]}""", "locks[0].prat", "part")]
    [InlineData("yardage", """{"hat":"practice-hat","alowancePercent":10}""", "alowancePercent", "allowancePercent")]
    [InlineData("kits/check", """{"hat":"practice-hat","skeins":[{"name":"a","grams":20,"count":1,LABEL,"color":"#FFFFFF"}]}""", "skeins[0].color", "colour")]
    [InlineData("from-this-bag", """{"hat":"practice-hat","size":["C"]}""", "size", "sizes")]
    [InlineData("whole-bag", """{"hat":"practice-hat","leftover":[]}""", "leftover", "leftovers")]
    [InlineData("hats", """{"name":"x","weightClas":3}""", "weightClas", "weightClass")]
    [InlineData("leftovers", """{"name":"x","grams":20,LABEL,"fiber":"wool"}""", "fiber", "fibre")]
    [InlineData("leftovers/moss/weighings", """{"grams":10,"tareGram":1}""", "tareGram", "tareGrams")]
    [InlineData("leftovers/moss/uses", """{"grams":10,"fro":"socks"}""", "fro", "for")]
    [InlineData("plans", """{"name":"x",PLAN,"parts":[{"leftover":"a","part":"brim","metre":1}]}""", "parts[0].metre", "metres")]
    public async Task A_field_nobody_knows_is_refused_by_name_at_every_depth_with_the_one_that_was_meant(string path, string body, string field, string meant)
    {
        using var app = new HomeApp();
        var errors = await RefusedAsync(app.Client, path, body);
        Assert.Contains($"Did you mean {meant}?", errors.GetProperty(field)[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plans_own_question_may_have_any_field_and_a_file_of_everything_none_that_is_unknown()
    {
        using var app = new HomeApp();
        await app.Client.PostAsync("plans", JsonNode.Parse(Whole("""{"name":"x",PLAN,"question":{"whatever":{"deep":[1]}},"parts":[]}"""))!, HttpStatusCode.Created);
        using var other = new HomeApp();
        Assert.True((await RefusedAsync(other.Client, "import", """{"stashMatch":1,"leftoverz":[]}""")).TryGetProperty("leftoverz", out _));
    }

    [Fact]
    public async Task A_list_of_plans_with_a_question_that_cannot_be_written_down_is_read_all_the_same()
    {
        using var app = new HomeApp();
        var all = JsonNode.Parse(Whole("""
            {"stashMatch":1,"plans":[{"id":"p","name":"Old",PLAN,"question":"","reserves":false,"savedAt":"2026-11-25T20:00:00+00:00","parts":[]}]}
            """))!;
        all["plans"]![0]!["question"] = "{\"a\":\"\\ud800\"}";
        using var content = new StringContent(all.ToJsonString(), Encoding.UTF8, "application/json");
        using (var response = await app.Client.PostAsync(At("import"), content, Stop))
        {
            Assert.Equal(HttpStatusCode.NoContent, response.StatusCode);
        }

        var plan = Assert.Single((await app.Client.GetFromJsonAsync<JsonElement>(At("plans"), Stop)).EnumerateArray());
        Assert.Equal("{\"a\":\"\\ud800\"}", plan.GetProperty("question").GetString());
        Assert.Equal("Old", (await app.Client.GetFromJsonAsync<JsonElement>(At("plans/p"), Stop)).GetProperty("name").GetString());
        using var page = await app.Client.GetAsync(new Uri("/plans", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
    }

    [Theory]
    [InlineData("a/b")]
    [InlineData("a\\b")]
    [InlineData("..")]
    [InlineData(".")]
    public async Task An_id_that_cannot_stand_in_an_address_is_refused(string id)
    {
        using var app = new HomeApp();
        var errors = await RefusedAsync(app.Client, "leftovers", Leftover(id).ToJsonString());
        Assert.Contains("stand in an address", errors.GetProperty("id")[0].GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("50%")]
    [InlineData("a b+c?d#e")]
    [InlineData("ä.ö")]
    public async Task Every_other_id_is_reachable(string id)
    {
        using var app = new HomeApp();
        await app.Client.PostAsync("leftovers", Leftover(id), HttpStatusCode.Created);
        Assert.Equal(id, (await app.Client.GetFromJsonAsync<JsonElement>(At($"leftovers/{Uri.EscapeDataString(id)}"), Stop)).GetProperty("id").GetString());
    }

    [Theory]
    [InlineData("POST", "can-i-make")]
    [InlineData("POST", "leftovers")]
    [InlineData("POST", "leftovers/import")]
    [InlineData("POST", "plans")]
    [InlineData("PUT", "plans/x")]
    [InlineData("PATCH", "leftovers/moss")]
    [InlineData("POST", "import")]
    public async Task A_body_of_no_kind_is_a_415_and_so_is_one_of_the_wrong_kind(string method, string path)
    {
        using var app = new HomeApp();
        foreach (var kind in new[] { null, "text/html", "application/x-www-form-urlencoded" })
        {
            using var content = new ByteArrayContent("{}"u8.ToArray());
            content.Headers.ContentType = kind is null ? null : new(kind);
            using var request = new HttpRequestMessage(new HttpMethod(method), At(path)) { Content = content };
            using var response = await app.Client.SendAsync(request, Stop);
            await ProblemAsync(response, HttpStatusCode.UnsupportedMediaType);
        }
    }

    [Fact]
    public async Task A_key_used_once_is_refused_with_another_body_and_answers_the_same_with_the_same()
    {
        using var app = new HomeApp();
        var first = await LogAsync(app.Client, Moss, HttpStatusCode.Created);
        var again = await LogAsync(app.Client, """{ "label": {"metres":400.0,"grams":100}, "grams":20, "name":"Moss", "id":"moss" }""", HttpStatusCode.Created);
        Assert.Equal(first.GetProperty("id").GetString(), again.GetProperty("id").GetString());
        foreach (var (was, now) in new[] { ("20", "21"), ("Moss", "Fern"), ("\"id\":\"moss\",", ""), ("400", "401") })
        {
            var refused = await LogAsync(app.Client, Moss.Replace(was, now, StringComparison.Ordinal), HttpStatusCode.UnprocessableEntity);
            Assert.Contains("another leftover", refused.GetProperty("errors").GetProperty("Idempotency-Key")[0].GetString(), StringComparison.Ordinal);
        }

        Assert.Single((await app.Client.GetFromJsonAsync<JsonArray>(At("leftovers"), Stop))!);
    }

    [Theory]
    [InlineData("GET", "/api/v1/no-such-thing", 404)]
    [InlineData("GET", "/api/v1/leftovers/nobody", 404)]
    [InlineData("GET", "/api/v2/leftovers", 404)]
    [InlineData("GET", "/api", 404)]
    [InlineData("DELETE", "/api/v1/leftovers", 405)]
    [InlineData("PUT", "/api/v1/can-i-make", 405)]
    [InlineData("POST", "/api/v1/leftovers/a%2Fb/knit-up", 404)]
    [InlineData("GET", "/api/v1/leftovers/%ED%A0%80", 404)]
    public async Task Every_fault_of_the_interface_is_problem_details(string method, string address, int status)
    {
        using var app = new HomeApp();
        foreach (var accept in new[] { null, "text/html", "application/json" })
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), new Uri(address, UriKind.Relative));
            if (accept is not null)
            {
                request.Headers.Accept.ParseAdd(accept);
            }

            using var response = await app.Client.SendAsync(request, Stop);
            await ProblemAsync(response, (HttpStatusCode)status);
        }
    }

    // What many bodies here have in them, written out.
    private static string Whole(string body) => body.Replace("HALF", "\"\\ud800\"", StringComparison.Ordinal)
        .Replace("PLAN", "\"hat\":\"practice-hat\",\"size\":\"C\",\"stripes\":4,\"arrangement\":\"own-colours\"", StringComparison.Ordinal)
        .Replace("LABEL", "\"label\":{\"grams\":100,\"metres\":400}", StringComparison.Ordinal);

    private static JsonObject Leftover(string id) =>
        new() { ["id"] = id, ["name"] = "Moss", ["grams"] = 20, ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 } };

    private static Uri At(string path) => new($"/api/v1/{path}", UriKind.Relative);

    private static async Task<JsonElement> ProblemAsync(HttpResponseMessage response, HttpStatusCode status)
    {
        var text = await response.Content.ReadAsStringAsync(Stop);
        var kind = response.Content.Headers.ContentType?.MediaType;
        Assert.True(response.StatusCode == status && kind == "application/problem+json", $"{response.StatusCode} {kind}: {text}");
        var problem = JsonDocument.Parse(text).RootElement;
        Assert.Equal((int)status, problem.GetProperty("status").GetInt32());
        Assert.NotEqual("", problem.GetProperty("title").GetString());
        return problem;
    }

    private static async Task<JsonElement> RefusedAsync(HttpClient client, string path, string body)
    {
        using var content = new StringContent(Whole(body), Encoding.UTF8, "application/json");
        using var response = await client.PostAsync(At(path), content, Stop);
        return (await ProblemAsync(response, HttpStatusCode.BadRequest)).GetProperty("errors");
    }

    private static async Task<JsonElement> LogAsync(HttpClient client, string body, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, At("leftovers")) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        request.Headers.Add("Idempotency-Key", "one");
        using var response = await client.SendAsync(request, Stop);
        var text = await response.Content.ReadAsStringAsync(Stop);
        Assert.True(expected == response.StatusCode, $"{response.StatusCode}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }
}
