using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

/// <summary>The practice hat, its kit and every figure are our own and invented.</summary>
public sealed class KitsCheckTests(HomeApp app) : IClassFixture<HomeApp>
{
    [Fact]
    public async Task The_practice_kit_makes_size_E_at_10_and_at_15_per_cent()
    {
        var cell = await CellAsync(20, 10);
        Assert.True(cell.GetProperty("passes").GetBoolean());
        Assert.Equal(0, cell.GetProperty("shortForAllowanceMetres").GetDouble());
        var nominal = cell.GetProperty("nominal");
        Assert.Equal(("yes", 15.7, "brim", "M"), (nominal.GetProperty("verdict").GetString(), nominal.GetProperty("marginPercent").GetDouble(), nominal.GetProperty("weakestPart").GetString(), nominal.GetProperty("weakestSkein").GetString()));
        Assert.Equal(0, nominal.GetProperty("shortMetres").GetDouble());
        Assert.InRange(cell.GetProperty("chanceOfEnough").GetDouble(), 0.8, 1);
        Assert.Equal("only-just", cell.GetProperty("lightest").GetProperty("verdict").GetString());
        Assert.True((await CellAsync(20, 15)).GetProperty("passes").GetBoolean());
    }

    [Fact]
    public async Task With_M_6_per_cent_light_it_is_short_by_half_a_yard_and_only_just()
    {
        var cell = await CellAsync(18.8, 10);
        Assert.False(cell.GetProperty("passes").GetBoolean());
        Assert.InRange(cell.GetProperty("shortForAllowanceMetres").GetDouble() / 0.9144, 0.51, 0.53);
        Assert.Equal("only-just", cell.GetProperty("nominal").GetProperty("verdict").GetString());
        Assert.Equal(0, cell.GetProperty("nominal").GetProperty("shortMetres").GetDouble());
        var six = await CellAsync(20, 10, lightest: 6);
        Assert.True(six.GetProperty("passes").GetBoolean());
        Assert.Equal(("only-just", 8.7), (six.GetProperty("lightest").GetProperty("verdict").GetString(), six.GetProperty("lightest").GetProperty("marginPercent").GetDouble()));
    }

    [Fact]
    public async Task Left_out_sizes_counts_and_arrangements_are_all_the_hat_has_and_the_usual_four()
    {
        var answer = await app.Client.PostAsync("kits/check", JsonNode.Parse("""
            {"hat":"side-to-side-sample","skeins":[{"name":"Ground","grams":50,"label":{"grams":50,"metres":210}},{"name":"Mini","grams":10,"count":7,"label":{"grams":100,"metres":400}}]}
            """)!);
        var cells = answer.GetProperty("cells").EnumerateArray().ToList();
        Assert.Equal(8 * 9 * 4, cells.Count);
        Assert.Equal(["own-colours", "one-ground", "one-thread", "as-it-falls"], cells.Take(4).Select(c => c.GetProperty("arrangement").GetString()));
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("smallest").ValueKind);
        Assert.All(cells, c => Assert.Equal(c.GetProperty("passes").GetBoolean(), c.GetProperty("shortForAllowanceMetres").GetDouble() == 0));
        Assert.Contains(cells, c => c.GetProperty("passes").GetBoolean());
        Assert.Contains(cells, c => c.GetProperty("nominal").GetProperty("verdict").GetString() == "no");
    }

    [Fact]
    public async Task Skeins_of_another_weight_class_are_named_as_left_out()
    {
        var answer = await app.Client.PostAsync("kits/check", JsonNode.Parse("""
            {"hat":"practice-hat","sizes":["C"],"skeins":[{"name":"Thin","grams":100,"label":{"grams":100,"metres":400}},{"name":"Right","grams":20,"label":{"grams":1,"yards":2.5}}]}
            """)!);
        Assert.Equal(["Thin"], answer.GetProperty("leftOut").EnumerateArray().Select(n => n.GetString()));
    }

    [Fact]
    public async Task What_cannot_be_knitted_is_a_cell_that_says_so()
    {
        var answer = await app.Client.PostAsync("kits/check", JsonNode.Parse("""
            {"hat":"practice-hat","sizes":["C"],"arrangements":["one-ground"],"skeins":[{"grams":20,"label":{"grams":1,"yards":2.5}}]}
            """)!);
        var cell = Assert.Single(answer.GetProperty("cells").EnumerateArray().ToList());
        Assert.Equal("cannot-be-knitted", cell.GetProperty("why").GetString());
        Assert.False(cell.GetProperty("passes").GetBoolean());
        Assert.Equal(JsonValueKind.Null, cell.GetProperty("nominal").ValueKind);
    }

    [Fact]
    public async Task The_smallest_kit_says_what_its_brims_are_knitted_from()
    {
        async Task<JsonElement> SmallestAsync(string big) => (await app.Client.PostAsync("kits/check", JsonNode.Parse(
            """{"hat":"practice-hat","sizes":["E"],"smallestFrom":[{"grams":10,"label":{"grams":1,"yards":2.5},"fibre":"100% acrylic"},{"grams":20,"label":{"grams":1,"yards":2.5},"fibre":"ALPACA"},{"grams":25,"label":{"grams":1,"yards":2.5},"fibre":"BIG"}]}"""
                .Replace("ALPACA", "100% alpaca", StringComparison.Ordinal).Replace("BIG", big, StringComparison.Ordinal))!)).GetProperty("smallest");
        var wool = await SmallestAsync("100% wool");
        Assert.Equal((65.0, "keeps-shape"), (wool.GetProperty("totalGrams").GetDouble(), wool.GetProperty("brim").GetString()));
        Assert.Equal(["100% acrylic", "100% wool"], wool.GetProperty("skeins").EnumerateArray().Select(s => s.GetProperty("fibre").GetString()));
        var alpaca = await SmallestAsync("100% alpaca");
        Assert.Equal((60.0, "stretches"), (alpaca.GetProperty("totalGrams").GetDouble(), alpaca.GetProperty("brim").GetString()));
        Assert.Contains("may stretch", alpaca.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_smallest_kit_for_every_size_of_the_practice_hat_is_60_grams_and_proven()
    {
        var answer = await app.Client.PostAsync("kits/check", JsonNode.Parse("""
            {"hat":"practice-hat","smallestFrom":[{"grams":10,"label":{"grams":1,"yards":2.5}},{"grams":20,"label":{"grams":1,"yards":2.5}}]}
            """)!);
        Assert.Empty(answer.GetProperty("cells").EnumerateArray());
        var smallest = answer.GetProperty("smallest");
        Assert.Equal((60.0, true), (smallest.GetProperty("totalGrams").GetDouble(), smallest.GetProperty("proven").GetBoolean()));
        Assert.Equal([(10.0, 4), (20.0, 1)], smallest.GetProperty("skeins").EnumerateArray().Select(s => (s.GetProperty("grams").GetDouble(), s.GetProperty("count").GetInt32())));
        var none = (await app.Client.PostAsync("kits/check", JsonNode.Parse("""
            {"hat":"practice-hat","sizes":["E"],"smallestFrom":[{"grams":10,"label":{"grams":1,"yards":2.5}}]}
            """)!)).GetProperty("smallest");
        Assert.Empty(none.GetProperty("skeins").EnumerateArray());
        Assert.Contains("47.6 yd", none.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"hat":"practice-hat"}""", "skeins")]
    [InlineData("""{"hat":"practice-hat","skeins":[{"label":{"grams":1,"yards":2.5}}]}""", "skeins[0].grams")]
    [InlineData("""{"hat":"practice-hat","skeins":[{"grams":10}]}""", "skeins[0].label")]
    [InlineData("""{"hat":"practice-hat","skeins":[{"grams":10,"count":0,"label":{"grams":1,"yards":2.5}}]}""", "skeins[0].count")]
    [InlineData("""{"hat":"practice-hat","skeins":[{"name":"a","grams":10,"label":{"grams":1,"yards":2.5}},{"name":"a","grams":10,"label":{"grams":1,"yards":2.5}}]}""", "skeins[1].name")]
    [InlineData("""{"hat":"practice-hat","skeins":[],"sizes":["Z"]}""", "sizes[0]")]
    [InlineData("""{"hat":"practice-hat","skeins":[],"sizes":["C","C"]}""", "sizes[1]")]
    [InlineData("""{"hat":"practice-hat","skeins":[],"stripeCounts":[25]}""", "stripeCounts[0]")]
    [InlineData("""{"hat":"practice-hat","skeins":[],"arrangements":["sideways"]}""", "arrangements[0]")]
    [InlineData("""{"hat":"practice-hat","skeins":[],"lightestPercent":91}""", "lightestPercent")]
    [InlineData("""{"hat":"practice-hat","skeins":[],"allowancePercent":101}""", "allowancePercent")]
    [InlineData("""{"hat":"practice-hat","smallestFrom":[]}""", "smallestFrom")]
    [InlineData("""{"hat":"practice-hat","smallestFrom":[{"grams":0,"label":{"grams":1,"yards":2.5}}]}""", "smallestFrom[0].grams")]
    public async Task A_field_that_cannot_be_read_is_named(string body, string field)
    {
        var problem = await app.Client.PostAsync("kits/check", JsonNode.Parse(body)!, HttpStatusCode.BadRequest);
        Assert.True(problem.GetProperty("errors").TryGetProperty(field, out _), problem.ToString());
    }

    private async Task<JsonElement> CellAsync(double gramsOfM, double allowance, double? lightest = null)
    {
        JsonObject Of(string name, double grams, int count) => new()
        {
            ["name"] = name,
            ["grams"] = grams,
            ["count"] = count,
            ["label"] = new JsonObject { ["grams"] = 1, ["yards"] = 2.5 },
            ["weightClass"] = 3,
        };
        var body = new JsonObject
        {
            ["hat"] = "practice-hat",
            ["sizes"] = new JsonArray("E"),
            ["arrangements"] = new JsonArray("own-colours"),
            ["allowancePercent"] = allowance,
            ["skeins"] = new JsonArray(Of("M", gramsOfM, 1), Of("S", 10, 4)),
        };
        if (lightest is not null)
        {
            body["lightestPercent"] = lightest;
        }

        return Assert.Single((await app.Client.PostAsync("kits/check", body)).GetProperty("cells").EnumerateArray().ToList());
    }
}
