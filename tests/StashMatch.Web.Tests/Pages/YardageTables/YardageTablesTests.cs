using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store;
using StashMatch.Web.Tests.OpenInterface;
using Xunit;

namespace StashMatch.Web.Tests.Pages.YardageTables;

public sealed partial class YardageTablesTests(HomeApp app) : IClassFixture<HomeApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/tables.csv?hat=side-to-side-sample&size=A&size=C&from=5&to=6", "side-to-side.csv")]
    [InlineData("/tables.txt?hat=side-to-side-sample&size=A&size=C&size=F&from=5&to=6&label=50%20g%20%2F%20210%20m", "side-to-side.txt")]
    [InlineData("/tables.csv?hat=practice-hat&allowance=15", "practice.csv")]
    [InlineData("/tables.txt?hat=brim-up-sample&size=A&size=H&from=1&to=24", "brim-up.txt")]
    public async Task A_file_reads_as_expected(string address, string expected)
    {
        using var response = await app.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Contains("attachment", response.Content.Headers.ContentDisposition?.ToString(), StringComparison.Ordinal);
        var text = (await response.Content.ReadAsStringAsync(Stop)).ReplaceLineEndings("\n");
        var place = Path.Combine(AppContext.BaseDirectory, "Expected", expected);
        if (Environment.GetEnvironmentVariable("WRITE_EXPECTED") is { Length: > 0 } to)
        {
            await File.WriteAllTextAsync(Path.Combine(to, expected), text, Stop);
        }

        Assert.Equal((await File.ReadAllTextAsync(place, Stop)).ReplaceLineEndings("\n"), text);
    }

    [Fact]
    public async Task The_page_prints_what_the_open_interface_says()
    {
        var document = await PageAsync("/tables?hat=side-to-side-sample&from=4&to=12");
        var answer = await app.Client.PostAsync("yardage", new JsonObject { ["hat"] = "side-to-side-sample", ["allowancePercent"] = 10 });
        var rows = document.QuerySelectorAll("table.yardage tbody tr").ToList();
        Assert.Equal(72, rows.Count);
        Assert.Equal(72, answer.GetProperty("rows").GetArrayLength());
        foreach (var (row, told) in rows.Zip(answer.GetProperty("rows").EnumerateArray()))
        {
            Assert.Equal(told.GetProperty("size").GetString(), row.Children[0].TextContent);
            Assert.Equal(told.GetProperty("stripes").GetInt32().ToString(System.Globalization.CultureInfo.InvariantCulture), row.Children[1].TextContent.Trim());
            Assert.StartsWith(Both(told.GetProperty("stripeMetres").GetDecimal()), row.Children[4].TextContent, StringComparison.Ordinal);
            Assert.StartsWith(Both(told.GetProperty("braidStrandMetres").GetDecimal()), row.Children[5].TextContent, StringComparison.Ordinal);
            Assert.StartsWith(Both(told.GetProperty("brimMetres").GetDecimal()), row.Children[6].TextContent, StringComparison.Ordinal);
        }

        static string Both(decimal metres) => $"{Math.Ceiling(metres)} m / {Math.Ceiling(metres / 0.9144m)} yd";
    }

    [Fact]
    public async Task It_is_a_plain_table_that_a_word_processor_takes()
    {
        var document = await PageAsync("/tables?hat=brim-up-sample&form=pages");
        var tables = document.QuerySelectorAll("table.yardage").ToList();
        Assert.Equal(8, tables.Count);
        Assert.All(tables, t =>
        {
            Assert.Contains(" cm / ", t.QuerySelector("caption")!.TextContent, StringComparison.Ordinal);
            Assert.All(t.QuerySelectorAll("thead th"), h => Assert.Equal("col", h.GetAttribute("scope")));
            Assert.All(t.QuerySelectorAll("tbody th"), h => Assert.Equal("row", h.GetAttribute("scope")));
            Assert.DoesNotContain(t.QuerySelectorAll("*").Select(e => e.LocalName), n => n is not ("caption" or "thead" or "tbody" or "tr" or "th" or "td" or "a" or "br"));
        });
        var columns = tables[0].QuerySelectorAll("thead th").Length;
        Assert.All(tables[0].QuerySelectorAll("tbody tr"), r => Assert.Equal(columns, r.Children.Length));
    }

    [Theory]
    [InlineData("words")]
    [InlineData("large")]
    public async Task In_words_there_are_no_signs_at_all(string form)
    {
        var document = await PageAsync($"/tables?hat=side-to-side-sample&form={form}&size=C&from=5&to=6");
        var article = document.QuerySelector($"article.{form}")!;
        Assert.Empty(article.QuerySelectorAll("table, svg"));
        Assert.Matches(OnlyWords(), article.TextContent);
        Assert.Contains("A stripe has 29 rows and is 7.3 centimetres or 2 and 7 eighths inches deep.", article.TextContent, StringComparison.Ordinal);
        Assert.Contains("A stripe takes 23 metres or 25 yards, 5.7 grams.", article.TextContent, StringComparison.Ordinal);
        Assert.Contains("These figures are estimated.", article.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_working_of_a_row_ends_in_what_the_row_prints_and_every_step_has_its_mark()
    {
        var document = await PageAsync("/tables?hat=side-to-side-sample&size=C&from=6&to=6&working=C~6");
        var working = document.QuerySelector("#working")!;
        Assert.Contains("0.90 × a head of 52 cm = 46.8 cm", working.TextContent, StringComparison.Ordinal);
        Assert.Contains("√(21.6 / (2.8 × 4)) = 13.887 mm", working.TextContent, StringComparison.Ordinal);
        Assert.Contains("28, 29, 29, 29, 29, 29; 5 braids of 3 rows", working.TextContent, StringComparison.Ordinal);
        var steps = working.QuerySelectorAll("tbody tr:not(.figure)").ToList();
        Assert.True(steps.Count > 12);
        Assert.All(steps, s => Assert.NotEqual("", s.LastElementChild!.TextContent.Trim()));
        var row = document.QuerySelector("table.yardage tbody tr")!;
        foreach (var cell in row.Children.Skip(4).Take(4))
        {
            var printed = cell.InnerHtml.Split("<br", 2)[0].Trim();
            Assert.Contains(working.QuerySelectorAll("tr.figure strong"), f => f.TextContent == printed);
        }
    }

    [Fact]
    public async Task A_count_that_cannot_be_knitted_is_a_row_that_says_so()
    {
        var id = await SavedAsync("""{"name":"Bulky","weightClass":6,"construction":"brim-up-round","gauge":{"stitchesPer10cm":10,"rowsPer10cm":14},"sizes":[{"size":"S","headCm":48}]}""");
        var document = await PageAsync($"/tables?hat={id}&from=4&to=24");
        Assert.Contains("cannot be knitted: ", document.QuerySelector("table.yardage tbody tr:last-child")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hat=zzz", "Hat is not one of the hats here.")]
    [InlineData("from=0", "From must be a whole number from 1 to 24.")]
    [InlineData("from=9&to=4", "To must not be less than “from”.")]
    [InlineData("allowance=1.2,3", "The reserve has more than one decimal sign")]
    [InlineData("label=thick", "Label cannot be read: type one weight and one length")]
    [InlineData("form=wide", "Form must be one of")]
    public async Task A_field_that_cannot_be_read_is_named_on_the_page_and_in_the_file(string query, string says)
    {
        Assert.Contains(says, (await PageAsync($"/tables?{query}")).Body!.TextContent, StringComparison.Ordinal);
        using var file = await app.Client.GetAsync(new Uri($"/tables.csv?{query}", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.BadRequest, file.StatusCode);
        Assert.Contains(says, await file.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_testers_used_stands_in_page_and_open_interface_alike_and_is_marked()
    {
        using var own = new HomeApp();
        var store = own.Services.GetRequiredService<TesterStore>();
        using (await own.Client.GetAsync(new Uri("/tables", UriKind.Relative), Stop))
        {
        }

        await store.AddAsync(
            "side-to-side-sample",
            [new TesterDescription { Tester = "Ada", Size = "C", Stripes = 6, Label = "100 g / 400 m", Parts = [new("brim", 60, 35)] }],
            Stop);
        using var response = await own.Client.GetAsync(new Uri("/tables?size=B&size=C&from=6&to=6", UriKind.Relative), Stop);
        var rows = (await new HtmlParser().ParseDocumentAsync(await response.Content.ReadAsStringAsync(Stop))).QuerySelectorAll("table.yardage tbody tr").ToList();
        Assert.EndsWith("estimated", rows[0].TextContent.Trim(), StringComparison.Ordinal);
        Assert.Contains("110 m / 121 yd", rows[1].TextContent, StringComparison.Ordinal);
        Assert.EndsWith("testers: brim; the rest estimated", rows[1].TextContent.Trim(), StringComparison.Ordinal);
        var answer = await own.Client.PostAsync("yardage", new JsonObject { ["hat"] = "side-to-side-sample", ["sizes"] = new JsonArray("C"), ["stripeCounts"] = new JsonArray(6) });
        Assert.Equal(110.0, answer.GetProperty("rows")[0].GetProperty("brimMetres").GetDouble());
        Assert.Equal(["estimated", "tester"], answer.GetProperty("rows")[0].GetProperty("figures").EnumerateArray().Select(f => f.GetString()));
    }

    [Fact]
    public async Task A_factor_taken_over_from_testers_counts_in_the_table_the_working_and_the_open_interface_and_is_named()
    {
        using var own = new HomeApp();
        async Task<(string Total, string Working, string Says)> LookAsync()
        {
            var answer = await own.Client.PostAsync("yardage", new JsonObject { ["hat"] = "side-to-side-sample", ["sizes"] = new JsonArray("C"), ["stripeCounts"] = new JsonArray(6) });
            using var response = await own.Client.GetAsync(new Uri("/tables?size=C&from=6&to=6&working=C~6", UriKind.Relative), Stop);
            var page = await new HtmlParser().ParseDocumentAsync(await response.Content.ReadAsStringAsync(Stop));
            return (answer.GetProperty("rows")[0].GetProperty("totalMetres").GetRawText(), page.QuerySelector("#working")!.TextContent, page.QuerySelector(".stated")!.TextContent);
        }

        var before = await LookAsync();
        Assert.Contains("× 1.1, what knitting really takes", before.Working, StringComparison.Ordinal);
        Assert.DoesNotContain("Estimates are", before.Says, StringComparison.Ordinal);
        var knitter = own.Services.GetRequiredService<KnitterStore>();
        await knitter.TakeOverAsync("side-to-side-sample", "2 testers (Ada, Bea)", new(1.02, 0.06), Stop);
        var after = await LookAsync();
        Assert.NotEqual(before.Total, after.Total);
        Assert.Contains("× 1.02, what knitting really takes", after.Working, StringComparison.Ordinal);
        Assert.Contains("Estimates are 1.02 times the yarn in the stitches alone, from 2 testers (Ada, Bea).", after.Says, StringComparison.Ordinal);
        await knitter.SwitchAsync((await knitter.OfHatAsync("side-to-side-sample", Stop))!.Id, true, Stop);
        Assert.Equal(before, await LookAsync());
    }

    private async Task<AngleSharp.Html.Dom.IHtmlDocument> PageAsync(string address)
    {
        using var response = await app.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await new HtmlParser().ParseDocumentAsync(await response.Content.ReadAsStringAsync(Stop));
    }

    private async Task<string> SavedAsync(string hat)
    {
        using var response = await app.Client.PostAsJsonAsync("/api/v1/hats", JsonNode.Parse(hat), Stop);
        return (await response.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetString()!;
    }

    [GeneratedRegex(@"^[A-Za-z0-9\s,.’']+$", RegexOptions.None, 1000)]
    private static partial Regex OnlyWords();
}
