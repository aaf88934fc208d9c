using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

/// <summary>Bags and depths through the front door; every leftover is invented.</summary>
public sealed class FromThisBagTests(HomeApp app) : IClassFixture<HomeApp>
{
    private static readonly string[] Colours = ["#E8DCC0", "#5B7A3A", "#7D3A63", "#B0532E", "#1F7078", "#26374F", "#E0AE35", "#A8B45C"];

    private static JsonArray Bag(params int[] grams) => [.. grams.Select((g, i) => Leftover($"l{i}", g, Colours[i % Colours.Length]))];

    private static JsonObject Leftover(string id, double grams, string colour) => new()
    {
        ["id"] = id,
        ["grams"] = grams,
        ["scaleStepGrams"] = 0.1,
        ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 },
        ["weightClass"] = 1,
        ["fibre"] = "100% wool",
        ["colour"] = colour,
    };

    [Fact]
    public async Task Left_out_all_sizes_counts_and_the_usual_arrangements_are_looked_at()
    {
        var answer = await app.Client.PostAsync("from-this-bag", new JsonObject { ["hat"] = "side-to-side-sample", ["leftovers"] = Bag(25, 9) });
        var cells = answer.GetProperty("cells").EnumerateArray().ToList();
        Assert.Equal(8 * 9 * 4, cells.Count);
        Assert.Equal(["own-colours", "one-ground", "one-thread", "as-it-falls"], cells.Take(4).Select(c => c.GetProperty("arrangement").GetString()));
        Assert.Equal(10, answer.GetProperty("allowancePercent").GetDouble());
        Assert.All(cells, c => Assert.Equal("no", c.GetProperty("verdict").GetString()));
    }

    [Fact]
    public async Task A_cell_says_what_can_i_make_says_to_the_same_question()
    {
        var bag = Bag(22, 9, 8, 7, 12, 6, 5, 10);
        var answer = await app.Client.PostAsync("from-this-bag", new JsonObject
        {
            ["hat"] = "brim-up-sample",
            ["sizes"] = new JsonArray("A", "C"),
            ["stripeCounts"] = new JsonArray(4, 6),
            ["arrangements"] = new JsonArray("own-colours", "in-turn"),
            ["leftovers"] = bag.DeepClone(),
            ["allowancePercent"] = 5,
        });
        var cells = answer.GetProperty("cells").EnumerateArray().ToList();
        Assert.Equal(8, cells.Count);
        Assert.Contains(cells, c => c.GetProperty("verdict").GetString() != "no");
        foreach (var cell in cells)
        {
            var whole = await app.Client.PostAsync("can-i-make", new JsonObject
            {
                ["hat"] = "brim-up-sample",
                ["size"] = cell.GetProperty("size").GetString(),
                ["stripes"] = cell.GetProperty("stripes").GetInt32(),
                ["arrangement"] = cell.GetProperty("arrangement").GetString(),
                ["leftovers"] = bag.DeepClone(),
                ["allowancePercent"] = 5,
            });
            foreach (var field in new[] { "verdict", "why", "sureness", "reach", "shortMetres" })
            {
                Assert.Equal(whole.GetProperty(field).GetRawText(), cell.GetProperty(field).GetRawText());
            }

            Assert.NotNull(cell.GetProperty("weakestPart").GetString());
        }
    }

    [Fact]
    public async Task What_cannot_be_knitted_is_a_cell_and_no_failed_request()
    {
        var answer = await app.Client.PostAsync("from-this-bag", new JsonObject { ["hat"] = "side-to-side-sample", ["sizes"] = new JsonArray("C"), ["stripeCounts"] = new JsonArray(24), ["leftovers"] = new JsonArray() });
        var cell = answer.GetProperty("cells")[0];
        Assert.Equal("cannot-be-knitted", cell.GetProperty("why").GetString());
        Assert.Equal(JsonValueKind.Null, cell.GetProperty("weakestPart").ValueKind);
        Assert.Contains("4 to 12", cell.GetProperty("text").GetString(), StringComparison.Ordinal);
        var printed = await app.Client.PostAsync("from-this-bag", new JsonObject { ["hat"] = "practice-hat", ["sizes"] = new JsonArray("C"), ["leftovers"] = new JsonArray() });
        Assert.Equal(["too-few-leftovers", "cannot-be-knitted", "cannot-be-knitted", "short"], printed.GetProperty("cells").EnumerateArray().Select(c => c.GetProperty("why").GetString()));
    }

    [Theory]
    [InlineData("sizes", """["Z"]""", "sizes[0]")]
    [InlineData("sizes", """["A","A"]""", "sizes[1]")]
    [InlineData("sizes", "[]", "sizes")]
    [InlineData("stripeCounts", "[0]", "stripeCounts[0]")]
    [InlineData("stripeCounts", "[25]", "stripeCounts[0]")]
    [InlineData("stripeCounts", "[6,6]", "stripeCounts[1]")]
    [InlineData("arrangements", """["heap"]""", "arrangements[0]")]
    [InlineData("arrangements", "[null]", "arrangements[0]")]
    [InlineData("allowancePercent", "101", "allowancePercent")]
    [InlineData("hat", "\"nobody's\"", "hat")]
    [InlineData("leftovers", """[{"id":"a"}]""", "leftovers[0].grams")]
    public async Task A_field_that_cannot_be_read_is_named(string field, string value, string named)
    {
        var body = new JsonObject { ["hat"] = "side-to-side-sample", ["leftovers"] = new JsonArray() };
        body[field] = JsonNode.Parse(value);
        var problem = await app.Client.PostAsync("from-this-bag", body, HttpStatusCode.BadRequest);
        Assert.True(problem.GetProperty("errors").TryGetProperty(named, out _), problem.GetRawText());
    }

    [Fact]
    public async Task A_whole_bag_lays_out_hat_by_hat_no_more_than_is_there()
    {
        var bag = Bag(26, 24, 9, 8, 9, 7, 12, 10);
        var answer = await app.Client.PostAsync("whole-bag", new JsonObject { ["hat"] = "brim-up-sample", ["sizes"] = new JsonArray("A"), ["leftovers"] = bag.DeepClone() });
        var hats = answer.GetProperty("hats").EnumerateArray().ToList();
        Assert.Equal(answer.GetProperty("atLeast").GetInt32(), hats.Count);
        Assert.InRange(hats.Count, 1, answer.GetProperty("atMost").GetInt32());
        foreach (var leftover in bag)
        {
            var taken = hats.SelectMany(h => h.GetProperty("parts").EnumerateArray()).SelectMany(p => p.GetProperty("from").EnumerateArray())
                .Where(f => f.GetProperty("leftover").GetString() == (string?)leftover!["id"]).Sum(f => f.GetProperty("metres").GetDecimal());
            Assert.True(taken * 1.1m <= (decimal)(double)leftover!["grams"]! * 4, $"{leftover["id"]}: {taken} m");
        }

        var problem = await app.Client.PostAsync("whole-bag", new JsonObject { ["hat"] = "brim-up-sample", ["sizes"] = new JsonArray("Q") }, HttpStatusCode.BadRequest);
        Assert.True(problem.GetProperty("errors").TryGetProperty("sizes[0]", out _));
    }

    [Fact]
    public async Task Depths_make_a_hat_that_can_be_asked_about_and_keeps_them()
    {
        var bag = Bag(5, 8, 7, 6, 10, 7);
        var answer = await app.Client.PostAsync("depths-from-leftovers", new JsonObject { ["hat"] = "side-to-side-sample", ["size"] = "C", ["leftovers"] = bag.DeepClone(), ["leastRows"] = 10 });
        Assert.Equal("covered", answer.GetProperty("why").GetString());
        Assert.True(answer.GetProperty("provenBest").GetBoolean());
        var stripes = answer.GetProperty("stripes").EnumerateArray().ToList();
        Assert.Equal(188 - 15, stripes.Sum(s => s.GetProperty("rows").GetInt32()));
        Assert.Equal(answer.GetProperty("leftMetres").GetDecimal(), stripes.Sum(s => s.GetProperty("leftMetres").GetDecimal()));
        bag.Add(Leftover("brim", 30, "#101010"));
        bag.Add(Leftover("scrap", 10, "#F0F0F0"));
        var asked = await app.Client.PostAsync("can-i-make", new JsonObject
        {
            ["hat"] = JsonNode.Parse(answer.GetProperty("hat").GetRawText()),
            ["size"] = "C",
            ["leftovers"] = bag,
            ["locks"] = new JsonArray([.. stripes.Select(s => new JsonObject { ["part"] = s.GetProperty("part").GetString(), ["leftover"] = s.GetProperty("leftover").GetString() })]),
        });
        Assert.NotEqual("no", asked.GetProperty("verdict").GetString());
        foreach (var stripe in stripes)
        {
            var part = asked.Part(stripe.GetProperty("part").GetString()!);
            Assert.Equal(stripe.GetProperty("rows").GetInt32(), part.GetProperty("rows").GetInt32());
            Assert.Equal(stripe.GetProperty("needMetres").GetDecimal(), part.GetProperty("needMetres").GetDecimal());
        }
    }

    [Fact]
    public async Task Logged_leftovers_are_named_by_their_ids_and_too_little_yarn_is_an_answer()
    {
        var id = (await app.Client.PostAsync("leftovers", new JsonObject { ["name"] = "Peat", ["grams"] = 5, ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 }, ["weightClass"] = 1 }, HttpStatusCode.Created)).GetProperty("id").GetString();
        var hat = JsonNode.Parse("""{"weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},"stripeCounts":{"least":1,"most":4},"sizes":[{"size":"C","headCm":52}]}""");
        var answer = await app.Client.PostAsync("depths-from-leftovers", new JsonObject { ["hat"] = hat, ["size"] = "C", ["leftovers"] = new JsonArray(id) });
        Assert.Equal("short", answer.GetProperty("why").GetString());
        Assert.True(answer.GetProperty("shortMetres").GetDouble() > 10);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("hat").ValueKind);
    }

    [Theory]
    [InlineData("size", "\"Z\"", "size")]
    [InlineData("size", "null", "size")]
    [InlineData("hat", "\"practice-hat\"", "hat")]
    [InlineData("leftovers", "[]", "leftovers")]
    [InlineData("leftovers", "null", "leftovers")]
    [InlineData("leftovers", """["nobody's"]""", "leftovers[0]")]
    [InlineData("leftovers", "[7]", "leftovers[0]")]
    [InlineData("leftovers", """[{"id":"a","grams":"six"}]""", "leftovers[0].grams")]
    [InlineData("leastRows", "1", "leastRows")]
    [InlineData("mostRows", "3", "mostRows")]
    [InlineData("mostRows", "12", "leftovers")]
    [InlineData("allowancePercent", "-1", "allowancePercent")]
    public async Task A_field_of_the_depths_that_cannot_be_read_is_named(string field, string value, string named)
    {
        var body = new JsonObject { ["hat"] = "side-to-side-sample", ["size"] = "C", ["leftovers"] = Bag(12, 12, 12, 12), ["leastRows"] = 4 };
        body[field] = JsonNode.Parse(value);
        var problem = await app.Client.PostAsync("depths-from-leftovers", body, HttpStatusCode.BadRequest);
        Assert.True(problem.GetProperty("errors").TryGetProperty(named, out _), problem.GetRawText());
    }
}
