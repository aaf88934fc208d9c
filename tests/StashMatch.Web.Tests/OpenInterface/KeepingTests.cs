using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

public sealed class KeepingTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_table_goes_out_comes_in_elsewhere_and_goes_out_the_same()
    {
        using var from = new DemoApp();
        using var to = new HomeApp();
        await from.Client.PostAsync("leftovers", JsonNode.Parse("""{"name":"=cmd, \"é\" 🧶","grams":20.5,"label":{"ounces":4,"yards":205.123456},"lot":"-7","ratioFrom":"measured"}""")!, HttpStatusCode.Created);
        await from.Client.PostAsync("leftovers/kelp/uses", new JsonObject { ["grams"] = 1.5, ["for"] = "mittens" });
        using (await from.Client.PostAsync(At("leftovers/quince/knit-up"), null, Stop))
        {
        }

        var table = await from.Client.GetByteArrayAsync(At("leftovers/export"), Stop);
        var first = await ImportAsync(to.Client, table);
        Assert.Equal((25, 0), (first.GetProperty("logged").GetInt32(), first.GetProperty("leftAsTheyAre").GetInt32()));
        Assert.Equal(Encoding.UTF8.GetString(table), await to.Client.GetStringAsync(At("leftovers/export"), Stop));
        var again = await ImportAsync(to.Client, table);
        Assert.Equal((0, 25), (again.GetProperty("logged").GetInt32(), again.GetProperty("leftAsTheyAre").GetInt32()));
        var (a, b) = (await from.Client.GetFromJsonAsync<JsonArray>(At("leftovers"), Stop), await to.Client.GetFromJsonAsync<JsonArray>(At("leftovers"), Stop));
        Assert.Equal(a!.ToJsonString(), b!.ToJsonString());
        using var marked = await from.Client.GetAsync(At("leftovers/export?bom=true"), Stop);
        Assert.Equal("text/csv; charset=utf-8", marked.Content.Headers.ContentType?.ToString());
        Assert.Equal(0xEF, (await marked.Content.ReadAsByteArrayAsync(Stop))[0]);
    }

    [Fact]
    public async Task A_table_with_a_bad_row_keeps_nothing_until_somebody_says_keep_the_good_ones()
    {
        using var app = new HomeApp();
        const string Table = "name;grams\nMoss;6,5\nOat;1.2.3\n";
        var refused = await ImportAsync(app.Client, Encoding.UTF8.GetBytes(Table), "", HttpStatusCode.BadRequest);
        Assert.StartsWith("grams has more than one decimal sign", refused.GetProperty("errors").GetProperty("row 3")[0].GetString(), StringComparison.Ordinal);
        var preview = await ImportAsync(app.Client, Encoding.UTF8.GetBytes(Table), "?preview=true");
        Assert.Equal((2, "Moss", 6.5m, 3), (preview.GetProperty("rows")[0].GetProperty("row").GetInt32(), preview.GetProperty("rows")[0].GetProperty("name").GetString(), preview.GetProperty("rows")[0].GetProperty("grams").GetDecimal(), preview.GetProperty("bad")[0].GetProperty("row").GetInt32()));
        Assert.Empty((await app.Client.GetFromJsonAsync<JsonArray>(At("leftovers"), Stop))!);
        var kept = await ImportAsync(app.Client, Encoding.UTF8.GetBytes(Table), "?goodRows=keep");
        Assert.Equal((1, 1), (kept.GetProperty("logged").GetInt32(), kept.GetProperty("bad").GetArrayLength()));
        Assert.Single((await app.Client.GetFromJsonAsync<JsonArray>(At("leftovers"), Stop))!);
        var nothing = await ImportAsync(app.Client, [0xFF, 0xFE, 0x00], "", HttpStatusCode.BadRequest);
        Assert.True(nothing.GetProperty("errors").TryGetProperty("file", out _));
        await ImportAsync(app.Client, new byte[(8 * 1024 * 1024) + 1], "", HttpStatusCode.RequestEntityTooLarge);
    }

    [Fact]
    public async Task A_plan_is_saved_found_replaced_copied_renamed_and_deleted_and_a_second_one_hears_who_has_the_yarn()
    {
        using var app = new HomeApp();
        await app.Client.PostAsync("leftovers", JsonNode.Parse("""{"id":"moss","name":"Moss","grams":20,"label":{"grams":100,"metres":400}}""")!, HttpStatusCode.Created);
        var plan = await app.Client.PostAsync("plans", Plan("Winter hat", 60.0005), HttpStatusCode.Created);
        Assert.Equal((60.001m, 15.001m), (plan.GetProperty("parts")[0].GetProperty("metres").GetDecimal(), plan.GetProperty("parts")[0].GetProperty("grams").GetDecimal()));
        Assert.Equal("C", plan.GetProperty("question").GetProperty("size").GetString());
        var clash = await app.Client.PostAsync("plans", Plan("Spring hat", 30), HttpStatusCode.Conflict);
        Assert.Contains("“Winter hat” has 60.0 m", clash.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(("moss", 19.999m), (clash.GetProperty("clashes")[0].GetProperty("leftover").GetString(), clash.GetProperty("clashes")[0].GetProperty("freeMetres").GetDecimal()));
        var moss = (await app.Client.GetFromJsonAsync<JsonElement>(At("leftovers"), Stop))[0];
        Assert.Equal(60.001m, moss.GetProperty("promisedMetres").GetDecimal());

        var address = $"plans/{plan.GetProperty("id").GetString()}";
        var next = Plan("Winter hat", 10);
        Assert.Equal(HttpStatusCode.Conflict, await PutAsync(app.Client, address, next));
        next["version"] = plan.GetProperty("version").GetString();
        Assert.Equal(HttpStatusCode.OK, await PutAsync(app.Client, address, next));
        Assert.Equal(HttpStatusCode.NotFound, await PutAsync(app.Client, "plans/nobody", next));
        Assert.Equal("Snow hat", (await app.Client.PostAsync(address + "/name", new JsonObject { ["name"] = "Snow hat" })).GetProperty("name").GetString());
        Assert.Equal("Snow hat (2)", (await app.Client.PostAsync(address + "/copy", new JsonObject(), HttpStatusCode.Created)).GetProperty("name").GetString());
        Assert.Equal(2, (await app.Client.GetFromJsonAsync<JsonArray>(At("plans"), Stop))!.Count);
        Assert.Equal(HttpStatusCode.NoContent, (await app.Client.DeleteAsync(At(address), Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await app.Client.GetAsync(At(address), Stop)).StatusCode);
        var wrong = await app.Client.PostAsync("plans", new JsonObject { ["parts"] = new JsonArray(new JsonObject { ["metres"] = -1 }) }, HttpStatusCode.BadRequest);
        Assert.True(wrong.GetProperty("errors").TryGetProperty("parts[0].metres", out _));
    }

    [Fact]
    public async Task What_was_used_stands_in_the_history_and_is_undone_step_by_step()
    {
        using var app = new HomeApp();
        await app.Client.PostAsync("leftovers", JsonNode.Parse("""{"id":"moss","name":"Moss","grams":20,"label":{"grams":100,"metres":400}}""")!, HttpStatusCode.Created);
        Assert.Equal(14m, (await app.Client.PostAsync("leftovers/moss/uses", new JsonObject { ["grams"] = 6, ["for"] = "mittens" })).GetProperty("leftGrams").GetDecimal());
        Assert.True((await app.Client.PostAsync("leftovers/moss/uses", new JsonObject { ["grams"] = 15 }, HttpStatusCode.BadRequest)).GetProperty("errors").TryGetProperty("grams", out _));
        var history = await app.Client.GetFromJsonAsync<JsonElement>(At("leftovers/moss/history"), Stop);
        Assert.Equal(("used", "mittens", 14m), (history[1].GetProperty("kind").GetString(), history[1].GetProperty("for").GetString(), history[1].GetProperty("leftGrams").GetDecimal()));
        Assert.Equal("used", (await app.Client.PostAsync("leftovers/moss/undo", new JsonObject())).GetProperty("undid").GetString());
        await app.Client.PostAsync("leftovers/moss/undo", new JsonObject(), HttpStatusCode.NotFound);
        await app.Client.PostAsync("leftovers/nobody/uses", new JsonObject { ["grams"] = 1 }, HttpStatusCode.NotFound);
        Assert.Equal(HttpStatusCode.NotFound, (await app.Client.GetAsync(At("leftovers/nobody/history"), Stop)).StatusCode);
    }

    [Fact]
    public async Task Everything_goes_out_and_into_an_empty_store_and_a_backup_brings_it_back()
    {
        using var from = new DemoApp();
        using var to = new HomeApp();
        var all = await from.Client.GetStringAsync(At("export"), Stop);
        async Task<HttpStatusCode> ReadAsync() => (await to.Client.PostAsync(At("import"), new StringContent(all, Encoding.UTF8, "application/json"), Stop)).StatusCode;
        Assert.Equal(HttpStatusCode.NoContent, await ReadAsync());
        Assert.Equal(all, await to.Client.GetStringAsync(At("export"), Stop));
        Assert.Equal(HttpStatusCode.BadRequest, await ReadAsync());
        var backup = (await to.Client.PostAsync("backups", new JsonObject(), HttpStatusCode.Created)).GetProperty("name").GetString();
        Assert.Equal(HttpStatusCode.NoContent, (await to.Client.DeleteAsync(At("leftovers/kelp"), Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await to.Client.PostAsync(At($"backups/{backup}/restore"), null, Stop)).StatusCode);
        Assert.Equal(all, await to.Client.GetStringAsync(At("export"), Stop));
        Assert.Equal(HttpStatusCode.Conflict, (await to.Client.PostAsync(At("backups/nobody/restore"), null, Stop)).StatusCode);
        Assert.Contains((await to.Client.GetFromJsonAsync<JsonElement>(At("backups"), Stop)).EnumerateArray(), b => b.GetProperty("kind").GetString() == "before-restore");
    }

    [Fact]
    public async Task A_program_that_runs_has_todays_backup_by_itself()
    {
        using var app = new HomeApp();
        for (var look = 0; look < 500; look++)
        {
            var backups = await app.Client.GetFromJsonAsync<JsonElement>(At("backups"), Stop);
            if (backups.EnumerateArray().Any(b => b.GetProperty("kind").GetString() == "daily"))
            {
                return;
            }

            await Task.Delay(20, Stop);
        }

        Assert.Fail("There is no daily backup.");
    }

    [Fact]
    public async Task A_text_with_a_character_that_is_none_is_named_by_its_field()
    {
        using var app = new HomeApp();
        var refused = await app.Client.PostAsync("leftovers", JsonNode.Parse("""{"name":"Mo\u0000ss","grams":20,"label":{"grams":100,"metres":400}}""")!, HttpStatusCode.BadRequest);
        Assert.Equal("has an unreadable character in it", refused.GetProperty("errors").GetProperty("name")[0].GetString());
    }

    [Fact]
    public async Task Another_sites_page_changes_nothing_through_the_persons_browser()
    {
        using var app = new HomeApp();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/backups");
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        Assert.Equal(HttpStatusCode.Forbidden, (await app.Client.SendAsync(request, Stop)).StatusCode);
        using var own = new HttpRequestMessage(HttpMethod.Post, "/api/v1/backups");
        own.Headers.Add("Sec-Fetch-Site", "same-origin");
        Assert.Equal(HttpStatusCode.Created, (await app.Client.SendAsync(own, Stop)).StatusCode);
    }

    [Fact]
    public async Task The_document_has_a_title_and_names_what_is_kept()
    {
        using var app = new HomeApp();
        var document = await app.Client.GetFromJsonAsync<JsonElement>("/openapi/v1.json", Stop);
        Assert.Equal(("StashMatch open interface", "1"), (document.GetProperty("info").GetProperty("title").GetString(), document.GetProperty("info").GetProperty("version").GetString()));
        foreach (var path in new[] { "leftovers/import", "leftovers/export", "plans", "export", "import", "backups" })
        {
            Assert.True(document.GetProperty("paths").TryGetProperty($"/api/v1/{path}", out _), path);
        }
    }

    private static Uri At(string path) => new($"/api/v1/{path}", UriKind.Relative);

    private static JsonObject Plan(string name, double metres) => new()
    {
        ["name"] = name,
        ["hat"] = "practice-hat",
        ["size"] = "C",
        ["stripes"] = 4,
        ["arrangement"] = "own-colours",
        ["question"] = new JsonObject { ["size"] = "C" },
        ["parts"] = new JsonArray(new JsonObject { ["leftover"] = "moss", ["part"] = "brim", ["metres"] = metres }),
    };

    private static async Task<HttpStatusCode> PutAsync(HttpClient client, string path, JsonObject body)
    {
        using var response = await client.PutAsJsonAsync(At(path), body, Stop);
        return response.StatusCode;
    }

    private static async Task<JsonElement> ImportAsync(HttpClient client, byte[] table, string how = "", HttpStatusCode expected = HttpStatusCode.OK)
    {
        using var content = new ByteArrayContent(table);
        content.Headers.ContentType = new("text/csv");
        using var response = await client.PostAsync(At("leftovers/import" + how), content, Stop);
        var text = await response.Content.ReadAsStringAsync(Stop);
        Assert.True(expected == response.StatusCode, $"{response.StatusCode}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }
}
