using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

public sealed class LeftoverChangeTests : IDisposable
{
    private readonly HomeApp _app = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Only_the_fields_named_change_and_null_clears_one()
    {
        await LogAsync("moss", "Moss");
        var now = await ChangeAsync("moss", """
            {"name":"Moss bank","code":"Xy","label":{"ounces":4,"yards":205},"ratioFrom":"guessed","weightClass":3,"fibre":"alpaca","colour":"dark green","superwash":true,"singles":true,
             "lot":"7","care":"hand wash, line","bag":"Peg bag","keptIn":"loft","keptBackFor":"mittens","notForHats":true,"crumb":true,"note":"soft"}
            """);
        Assert.Equal(("Moss bank", "Xy", 205, "guessed", 3), (Text(now, "name"), Text(now, "code"), now.GetProperty("label").GetProperty("yards").GetInt32(), Text(now, "ratioFrom"), now.GetProperty("weightClass").GetInt32()));
        Assert.Equal(("100% alpaca", "#27512F", "7", "hand wash 30 C, line", "Peg bag"), (Text(now, "fibre"), Text(now, "colour"), Text(now, "lot"), Text(now, "care"), Text(now, "bag")));
        Assert.Equal(("loft", "mittens", "soft"), (Text(now, "keptIn"), Text(now, "keptBackFor"), Text(now, "note")));
        Assert.All(["superwash", "singles", "notForHats", "crumb"], f => Assert.True(now.GetProperty(f).GetBoolean(), f));
        Assert.Equal(20m, now.GetProperty("grams").GetDecimal());

        now = await ChangeAsync("moss", """{"bag":null,"keptBackFor":null,"crumb":null,"ratioFrom":"measured"}""");
        Assert.False(now.TryGetProperty("bag", out _) || now.TryGetProperty("keptBackFor", out _) || now.GetProperty("crumb").GetBoolean());
        Assert.Equal(("Moss bank", 205, "measured", "loft"), (Text(now, "name"), now.GetProperty("label").GetProperty("yards").GetInt32(), Text(now, "ratioFrom"), Text(now, "keptIn")));

        now = await ChangeAsync("moss", """{"label":null}""");
        Assert.False(now.TryGetProperty("label", out _) || now.TryGetProperty("metres", out _));
        Assert.Equal("edited", (await _app.Client.PostAsync("leftovers/moss/undo", new JsonObject())).GetProperty("undid").GetString());
    }

    [Theory]
    [InlineData("""{"name":null}""", "name")]
    [InlineData("""{"name":7}""", "name")]
    [InlineData("""{"code":"XYZ"}""", "code")]
    [InlineData("""{"label":{"grams":50}}""", "label.metres")]
    [InlineData("""{"label":{"grams":1,"metres":9000}}""", "label")]
    [InlineData("""{"label":null,"ratioFrom":"printed"}""", "ratioFrom")]
    [InlineData("""{"ratioFrom":"dreamt"}""", "ratioFrom")]
    [InlineData("""{"weightClass":8}""", "weightClass")]
    [InlineData("""{"fibre":"120% wool"}""", "fibre")]
    [InlineData("""{"colour":"#12"}""", "colour")]
    [InlineData("""{"care":"boil"}""", "care")]
    [InlineData("""{"bag":"Mo\u0000ss"}""", "bag")]
    [InlineData("""{"grams":12}""", "grams")]
    [InlineData("""{"nmae":"Moss"}""", "nmae")]
    [InlineData("""{"version":"now"}""", "version")]
    [InlineData("[]", "body")]
    [InlineData("\"Moss\"", "body")]
    public async Task What_cannot_be_read_is_named_by_its_field_and_nothing_changes(string body, string field)
    {
        await LogAsync("moss", "Moss");
        var before = await OneAsync("moss");
        var problem = await ChangeAsync("moss", body, HttpStatusCode.BadRequest);
        Assert.True(problem.GetProperty("errors").TryGetProperty(field, out _), problem.ToString());
        Assert.Equal(before, await OneAsync("moss"));
    }

    [Fact]
    public async Task A_change_read_too_early_or_a_code_on_another_tag_conflicts_and_says_so()
    {
        await LogAsync("moss", "Moss");
        await LogAsync("oat", "Oat");
        var read = JsonDocument.Parse(await OneAsync("moss")).RootElement;
        var version = Text(read, "version");
        Assert.Equal("first", Text(await ChangeAsync("moss", $$"""{"note":"first","version":"{{version}}"}"""), "note"));
        var late = await ChangeAsync("moss", $$"""{"note":"second","version":"{{version}}"}""", HttpStatusCode.Conflict);
        Assert.Equal("The leftover was changed meanwhile: read it again.", Text(late, "title"));
        Assert.True(late.GetProperty("errors").TryGetProperty("version", out _));
        Assert.Contains("\"first\"", await OneAsync("moss"), StringComparison.Ordinal);

        var taken = await ChangeAsync("oat", $$"""{"code":"{{Text(read, "code")}}","note":"kept?"}""", HttpStatusCode.Conflict);
        Assert.Equal("is on Moss already", taken.GetProperty("errors").GetProperty("code")[0].GetString());
        Assert.DoesNotContain("kept?", await OneAsync("oat"), StringComparison.Ordinal);
        await ChangeAsync("nobody", """{"note":"x"}""", HttpStatusCode.NotFound);
        Assert.DoesNotContain("version", await _app.Client.GetStringAsync(new Uri("/api/v1/leftovers", UriKind.Relative), Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_change_is_described_with_its_fields_and_its_conflict()
    {
        var document = await _app.Client.GetFromJsonAsync<JsonElement>("/openapi/v1.json", Stop);
        var patch = document.GetProperty("paths").GetProperty("/api/v1/leftovers/{id}").GetProperty("patch");
        Assert.True(patch.GetProperty("responses").TryGetProperty("409", out _) && patch.GetProperty("responses").TryGetProperty("400", out _));
        Assert.True(patch.GetProperty("requestBody").GetProperty("content").TryGetProperty("application/merge-patch+json", out _));
        Assert.True(document.GetProperty("components").GetProperty("schemas").GetProperty("LeftoverChangeBody").GetProperty("properties").TryGetProperty("keptBackFor", out _));
    }

    public void Dispose() => _app.Dispose();

    private static string? Text(JsonElement of, string field) => of.GetProperty(field).GetString();

    private Task<JsonElement> LogAsync(string id, string name) =>
        _app.Client.PostAsync("leftovers", new JsonObject { ["id"] = id, ["name"] = name, ["grams"] = 20, ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 } }, HttpStatusCode.Created);

    private Task<string> OneAsync(string id) => _app.Client.GetStringAsync(new Uri($"/api/v1/leftovers/{id}", UriKind.Relative), Stop);

    private async Task<JsonElement> ChangeAsync(string id, string body, HttpStatusCode wanted = HttpStatusCode.OK)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/merge-patch+json");
        using var response = await _app.Client.PatchAsync(new Uri($"/api/v1/leftovers/{id}", UriKind.Relative), content, Stop);
        Assert.Equal(wanted, response.StatusCode);
        return await response.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}
