using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

/// <summary>The practice hat, its leftovers and every figure are our own and invented.</summary>
public sealed class CanIMakeTests(HomeApp app) : IClassFixture<HomeApp>
{
    private static JsonArray Five() =>
    [
        Asking.Yards("oat", 20, 2.5, colour: "#E8DCC0"), Asking.Yards("moss", 9, 2.4, colour: "#5B7A3A"), Asking.Yards("plum", 7.5, 2.5, colour: "#7D3A63"),
        Asking.Yards("rust", 7, 2.3, colour: "#B0532E"), Asking.Yards("teal", 12, 2.5, colour: "#1F7078"),
    ];

    private static JsonArray Locked() =>
        [Lock("M", "oat"), Lock("S1", "moss"), Lock("S2", "plum"), Lock("S3", "rust"), Lock("S4", "teal")];

    [Fact]
    public async Task Size_C_is_only_just_and_only_rust_misses_the_allowance()
    {
        var answer = await app.Client.PostAsync("can-i-make", Question(Five(), Locked()));
        Assert.Equal("only-just", answer.GetProperty("verdict").GetString());
        Assert.Equal("allowance", answer.GetProperty("why").GetString());
        Assert.Equal("rust", answer.GetProperty("weakestLeftover").GetString());
        Assert.Equal(8.7, answer.GetProperty("marginPercent").GetDouble());
        Assert.Equal(0, answer.GetProperty("shortMetres").GetDouble());
        foreach (var (id, yards, grams) in new[] { ("oat", 15.3, 6.1), ("moss", 6.8, 2.8), ("plum", 3.95, 1.6), ("rust", 1.3, 0.6), ("teal", 15.2, 6.1) })
        {
            var left = answer.Leftover(id).GetProperty("leftMetres").GetDouble() / 0.9144;
            Assert.InRange(left - yards, -0.051, 0.051);
            var perGram = id switch { "moss" => 2.4, "rust" => 2.3, _ => 2.5 };
            Assert.InRange((left / perGram) - grams, -0.051, 0.051);
        }

        Assert.Contains("braid-same-value", answer.Codes("warnings"));
        Assert.Contains(answer.GetProperty("repairs").EnumerateArray(), r => r.GetProperty("verdict").GetString() == "yes");
    }

    [Fact]
    public async Task A_lock_may_name_two_leftovers_held_double()
    {
        var bag = Five();
        bag.Add(new JsonObject { ["id"] = "a", ["grams"] = 22, ["scaleStepGrams"] = 0.1, ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 420 } });
        bag.Add(new JsonObject { ["id"] = "b", ["grams"] = 15, ["scaleStepGrams"] = 0.1, ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 } });
        JsonObject[] ways =
        [
            new() { ["part"] = "stripe 1", ["leftover"] = new JsonArray("a", "b"), ["held"] = "double" },
            new() { ["part"] = "stripe 1", ["leftover"] = "a", ["held"] = "double" },
        ];
        foreach (var way in ways)
        {
            var answer = await app.Client.PostAsync("can-i-make", Question((JsonArray)bag.DeepClone(), [way]));
            var part = answer.Part("stripe 1");
            Assert.Equal("double", part.GetProperty("held").GetString());
            var from = part.GetProperty("from").EnumerateArray().ToList();
            Assert.Equal(way["leftover"] is JsonArray ? 2 : 1, from.Count);
            Assert.Equal(2 * 10.973, from.Sum(f => f.GetProperty("metres").GetDouble()), 3);
            Assert.Equal(part.GetProperty("needMetres").GetDouble() - part.GetProperty("shortMetres").GetDouble(), from.Sum(f => f.GetProperty("metres").GetDouble()), 3);
            Assert.Contains("weight-class-mix", answer.Codes("warnings"));
        }
    }

    [Fact]
    public async Task Stripes_are_ordered_by_colour_without_loss()
    {
        var totals = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var order in new[] { "any", "gradient", "contrast" })
        {
            var question = Question(Five(), [Lock("M", "oat")]);
            question["colourOrder"] = order;
            var answer = await app.Client.PostAsync("can-i-make", question);
            Assert.Equal("only-just", answer.GetProperty("verdict").GetString());
            Assert.Equal(0, answer.GetProperty("shortMetres").GetDouble());
            var colours = Enumerable.Range(1, 4).Select(n => answer.Part($"stripe {n}").From()).ToList();
            totals[order] = colours.Zip(colours.Skip(1)).Sum(p => Step(p.First, p.Second));
        }

        Assert.True(totals["gradient"] <= totals["any"] && totals["any"] <= totals["contrast"]);
        Assert.True(totals["gradient"] < totals["contrast"]);
    }

    private static double Step(string a, string b)
    {
        Knitting.Colours.Lab Of(string id)
        {
            var hex = Five().Single(l => (string?)l!["id"] == id)!["colour"]!.GetValue<string>();
            return Knitting.Colours.YarnColour.TryParse(hex, out var colour, out _) ? colour.Lab : default;
        }

        return Knitting.Colours.ColourDifference.Ciede2000(Of(a), Of(b));
    }

    [Fact]
    public async Task Unlocked_it_is_only_just_as_well_and_proven_best()
    {
        var answer = await app.Client.PostAsync("can-i-make", Question(Five(), []));
        Assert.Equal("only-just", answer.GetProperty("verdict").GetString());
        Assert.True(answer.GetProperty("provenBest").GetBoolean());
        Assert.Equal("oat", answer.Part("brim").From());
    }

    [Fact]
    public async Task Oat_in_braid_2_in_place_of_rust_mends_contrast_and_yardage()
    {
        var locks = Locked();
        locks.Add(Lock("braid 2 strand a", "oat"));
        var answer = await app.Client.PostAsync("can-i-make", Question(Five(), locks));
        Assert.Equal("yes", answer.GetProperty("verdict").GetString());
        Assert.Equal("oat", answer.Part("braid 2 strand a").From());
        Assert.DoesNotContain(answer.GetProperty("warnings").EnumerateArray(), w => w.GetProperty("part").GetString() == "braid 2 strand a");
    }

    [Fact]
    public async Task Wool_is_proposed_for_the_brim_although_alpaca_is_longer()
    {
        var bag = Five();
        bag.RemoveAt(0);
        bag.Add(Asking.Yards("alpaca", 25, 2.2, "100% alpaca", "#A9845F"));
        bag.Add(Asking.Yards("wool", 16, 2.5, "100% wool", "#E8DCC0"));
        var answer = await app.Client.PostAsync("can-i-make", Question(bag, []));
        Assert.Equal("wool", answer.Part("brim").From());
        Assert.DoesNotContain("brim-stretch", answer.Codes("warnings"));

        bag.RemoveAt(bag.Count - 1);
        var without = await app.Client.PostAsync("can-i-make", Question(bag, []));
        Assert.Equal("alpaca", without.Part("brim").From());
        var warning = without.GetProperty("warnings").EnumerateArray().Single(w => w.GetProperty("code").GetString() == "brim-stretch");
        Assert.Contains("smaller needle", warning.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_little_yarn_is_a_full_answer_with_a_shortfall_and_what_to_buy()
    {
        var answer = await app.Client.PostAsync("can-i-make", new JsonObject { ["hat"] = "side-to-side-sample", ["size"] = "C", ["stripes"] = 6, ["leftovers"] = new JsonArray() });
        Assert.Equal("no", answer.GetProperty("verdict").GetString());
        Assert.Equal("too-few-leftovers", answer.GetProperty("why").GetString());
        var needs = answer.GetProperty("parts").EnumerateArray().Sum(p => p.GetProperty("needMetres").GetDecimal());
        Assert.Equal(needs, answer.GetProperty("shortMetres").GetDecimal());
        Assert.Equal([28, 29, 29, 29, 29, 29], answer.GetProperty("parts").EnumerateArray()
            .Where(p => p.GetProperty("kind").GetString() == "stripe").Select(p => p.GetProperty("rows").GetInt32()));
        Assert.Contains("buy", answer.Codes("repairs"));
    }

    [Fact]
    public async Task Two_alike_colours_stand_in_the_way_and_blending_is_the_first_repair()
    {
        var hat = JsonNode.Parse("""
            {"name":"two","weightClass":3,"printed":{"unit":"m","allowanceIncluded":false,"sizes":[{"size":"C","headCm":52,"parts":[
              {"part":"stripe 1","yarn":"A","length":10},{"part":"stripe 2","yarn":"B","length":10}]}]}}
            """);
        var bag = new JsonArray { Asking.Yards("one", 20, 2, colour: "#A8B45C"), Asking.Yards("other", 20, 2, colour: "#A9B55D") };
        var answer = await app.Client.PostAsync("can-i-make", new JsonObject { ["hat"] = hat, ["size"] = "C", ["leftovers"] = bag });
        Assert.Equal("no", answer.GetProperty("verdict").GetString());
        Assert.Equal("colour", answer.GetProperty("why").GetString());
        Assert.Equal("blend", answer.Codes("repairs").First());
        Assert.Equal("yes", answer.GetProperty("repairs")[0].GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task Sock_yarn_held_double_goes_in_a_thicker_hat_as_far_as_the_shorter_strand_runs()
    {
        // Worked by hand, all invented: A 22 g at 4.2 m/g, B 15 g at 4.0 m/g: 60 m together at 205 m to 100 g, 32.4 m of A over.
        JsonObject Sock(string id, double grams, double perGram, string fibre) => new()
        {
            ["id"] = id,
            ["grams"] = grams,
            ["scaleStepGrams"] = 0.1,
            ["label"] = new JsonObject { ["grams"] = 1, ["metres"] = perGram },
            ["weightClass"] = 1,
            ["fibre"] = fibre,
        };
        var bag = Five();
        bag.Add(Sock("a", 22, 4.2, "100% wool"));
        bag.Add(Sock("b", 15, 4.0, "100% superwash wool"));
        var question = Question(bag, [Lock("stripe 1", "both")]);
        question["heldTogether"] = new JsonArray(new JsonObject { ["id"] = "both", ["of"] = new JsonArray("a", "b") });
        var answer = await app.Client.PostAsync("can-i-make", question);
        Assert.Equal("both", answer.Part("stripe 1").From());
        Assert.InRange(answer.Leftover("both").GetProperty("metres").GetDouble(), 59.99, 60.0);
        Assert.InRange(answer.Leftover("a").GetProperty("metres").GetDouble(), 32.39, 32.4);
        Assert.Contains("care-mix", answer.Codes("warnings"));
        Assert.DoesNotContain("weight-class-mix", answer.Codes("warnings"));
        question["heldTogether"] = new JsonArray(new JsonObject { ["id"] = "both", ["of"] = new JsonArray("a", "a") });
        var doubled = await app.Client.PostAsync("can-i-make", question);
        Assert.InRange(doubled.Leftover("both").GetProperty("metres").GetDouble(), 46.19, 46.2);
        question["heldTogether"] = new JsonArray(new JsonObject { ["id"] = "both", ["of"] = new JsonArray("a", "zz") });
        question["locks"] = new JsonArray();
        var wrong = await app.Client.PostAsync("can-i-make", question, HttpStatusCode.BadRequest);
        Assert.True(wrong.GetProperty("errors").TryGetProperty("heldTogether[0].of", out _));
    }

    [Theory]
    [InlineData("""{"size":"C","leftovers":[]}""", "hat")]
    [InlineData("""{"hat":"no-such-hat","size":"C","leftovers":[]}""", "hat")]
    [InlineData("""{"hat":7,"size":"C","leftovers":[]}""", "hat")]
    [InlineData("""{"hat":"practice-hat","leftovers":[]}""", "size")]
    [InlineData("""{"hat":"practice-hat","size":"Q","leftovers":[]}""", "size")]
    [InlineData("""{"hat":"side-to-side-sample","size":"C","stripes":3,"leftovers":[]}""", "stripes")]
    [InlineData("""{"hat":"side-to-side-sample","size":"C","stripes":0,"leftovers":[]}""", "stripes")]
    [InlineData("""{"hat":"side-to-side-sample","size":"C","stripes":6.5,"leftovers":[]}""", "stripes")]
    [InlineData("""{"hat":"practice-hat","size":"C","arrangement":"sideways","leftovers":[]}""", "arrangement")]
    [InlineData("""{"hat":"practice-hat","size":"C","arrangement":"one-ground","leftovers":[]}""", "arrangement")]
    [InlineData("""{"hat":"practice-hat","size":"C","allowancePercent":-1,"leftovers":[]}""", "allowancePercent")]
    [InlineData("""{"hat":"practice-hat","size":"C","allowancePercent":101,"leftovers":[]}""", "allowancePercent")]
    [InlineData("""{"hat":"practice-hat","size":"C","colourOrder":"rainbow","leftovers":[]}""", "colourOrder")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[],"apart":["sleeve"]}""", "apart[0]")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[],"joined":[{"id":"j","of":["a","b"]}]}""", "joined[0].of")]
    [InlineData("""{"hat":"practice-hat","size":"C","nextDoor":"clash","leftovers":[]}""", "nextDoor")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":-3,"label":{"grams":100,"metres":400}}]}""", "leftovers[0].grams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":5001,"label":{"grams":100,"metres":400}}]}""", "leftovers[0].grams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":1e999,"label":{"grams":100,"metres":400}}]}""", "leftovers[0].grams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":"34","label":{"grams":100,"metres":400}}]}""", "leftovers[0].grams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":NaN,"label":{"grams":100,"metres":400}}]}""", "leftovers[0].grams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","label":{"grams":100,"metres":400}}]}""", "leftovers[0].grams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"grams":3,"label":{"grams":100,"metres":400}}]}""", "leftovers[0].id")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"tareGrams":3,"label":{"grams":100,"metres":400}}]}""", "leftovers[0].tareGrams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3}]}""", "leftovers[0].label")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100}}]}""", "leftovers[0].label.metres")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100,"ounces":4,"metres":400}}]}""", "leftovers[0].label.grams")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100,"metres":4}}]}""", "leftovers[0].label")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100,"metres":400},"fibre":"80% wool, 30% silk"}]}""", "leftovers[0].fibre")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100,"metres":400},"colour":"grene"}]}""", "leftovers[0].colour")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100,"metres":400},"weightClass":9}]}""", "leftovers[0].weightClass")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100,"metres":400},"ratioFrom":"heard"}]}""", "leftovers[0].ratioFrom")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[{"id":"a","grams":3,"label":{"grams":100,"metres":400}},{"id":"a","grams":3,"label":{"grams":100,"metres":400}}]}""", "leftovers[1].id")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[null]}""", "leftovers[0]")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[],"locks":[{"part":"sleeve","leftover":"a"}]}""", "locks[0].part")]
    [InlineData("""{"hat":"practice-hat","size":"C","leftovers":[],"locks":[{"part":"brim","leftover":"a"}]}""", "locks[0].leftover")]
    [InlineData("""{"hat":{"construction":"side-to-side"},"size":"C","leftovers":[]}""", "hat.gauge.rowsPer10cm")]
    [InlineData("""{"hat":{"weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":3,"rowsPer10cm":40}},"size":"C","leftovers":[]}""", "hat.gauge.stitchesPer10cm")]
    [InlineData("""{"hat":{"weightClass":1,"construction":"brim-up-flat","stripes":{"proportions":[1,0]},"gauge":{"stitchesPer10cm":28,"rowsPer10cm":40}},"size":"C","leftovers":[]}""", "hat.stripes.proportions[1]")]
    [InlineData("""{"hat":{"weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},"sizes":[{"size":"C","headCm":200}]},"size":"C","leftovers":[]}""", "hat.sizes[0].headCm")]
    [InlineData("""{"hat":{"weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":"40"}},"size":"C","leftovers":[]}""", "hat.gauge.rowsPer10cm")]
    [InlineData("""{"hat":{"weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},"brim":{"depthCm":21}},"size":"C","leftovers":[]}""", "brim.depthCm")]
    [InlineData("""{"hat":{"weightClass":3,"printed":{"unit":"ell","sizes":[{"size":"C","parts":[{"yarn":"A","length":10}]}]}},"size":"C","leftovers":[]}""", "hat.printed.unit")]
    [InlineData("""{"hat":{"weightClass":3,"printed":{"unit":"m","sizes":[{"size":"C","parts":[{"part":"sleeve","yarn":"A","length":10}]}]}},"size":"C","leftovers":[]}""", "hat.printed.sizes[0].parts[0].part")]
    [InlineData("""[]""", "body")]
    [InlineData("""null""", "body")]
    [InlineData("""{"hat":""", "hat")]
    public async Task What_cannot_be_read_is_named(string body, string field)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var response = await app.Client.PostAsync(new Uri("/api/v1/can-i-make", UriKind.Relative), content, TestContext.Current.CancellationToken);
        var text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(response.StatusCode == HttpStatusCode.BadRequest, $"{response.StatusCode}: {text}");
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        Assert.Contains(field, JsonNode.Parse(text)!["errors"]!.AsObject().Select(e => e.Key));
    }

    [Fact]
    public async Task A_body_over_the_limit_is_refused()
    {
        using var content = new StringContent(new string(' ', 9 * 1024 * 1024), Encoding.UTF8, "application/json");
        using var response = await app.Client.PostAsync(new Uri("/api/v1/can-i-make", UriKind.Relative), content, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, response.StatusCode);
    }

    private static JsonObject Question(JsonArray leftovers, JsonArray locks) => new()
    {
        ["hat"] = "practice-hat",
        ["size"] = "C",
        ["leftovers"] = leftovers.DeepClone(),
        ["locks"] = locks.DeepClone(),
    };

    private static JsonObject Lock(string part, string leftover) => new() { ["part"] = part, ["leftover"] = leftover };
}
