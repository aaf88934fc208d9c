using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using StashMatch.Store;
using StashMatch.Web.Pieces;
using Xunit;

namespace StashMatch.Web.Tests.Pages.KnittingSheet;

/// <summary>What the sheet says of the yarn ahead: what lacks, where to stop, what is put by.</summary>
public sealed partial class SafeTests : SheetPages
{
    private static readonly (string Id, double Grams, double Yards)[] Scant = [("oat", 18.0, 250), ("moss", 3, 240), ("teal", 15, 250)];

    [Fact]
    public async Task A_plan_of_an_answer_no_says_no_with_what_each_part_lacks_as_the_answer_did()
    {
        await LogAsync(Scant, 0.1);
        const string Asked = "/can-i-make?hat=practice-hat&size=D&stripes=4&keep=brim~oat&keep=crown~oat";
        using var same = await Client.PostAsJsonAsync("/api/v1/can-i-make", new { hat = "practice-hat", size = "D", stripes = 4, locks = new[] { new { part = "brim", leftover = "oat" }, new { part = "crown", leftover = "oat" } } }, Stop);
        var lacks = (await same.Content.ReadFromJsonAsync<System.Text.Json.JsonElement>(Stop)).GetProperty("parts").EnumerateArray()
            .Select(p => (Part: p.GetProperty("part").GetString()!, By: Math.Ceiling(p.GetProperty("shortMetres").GetDecimal() * 10) / 10)).Where(p => p.By > 0).ToList();
        Assert.True(lacks.Count > 2);
        var total = Total().Match(Plain(await TextAsync(Asked))).Groups["total"].Value;
        Assert.NotEqual("", total);
        var at = await SaveAsync("Scant hat", Asked);
        var html = await TextAsync(at);
        var text = Plain(html);
        Assert.Contains($"From here: no, short by {total} / ", text, StringComparison.Ordinal);
        Assert.Contains($" It is short by {total} / ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("There is enough", text, StringComparison.Ordinal);
        Assert.DoesNotContain("chance that the yarn lasts", text, StringComparison.Ordinal);
        foreach (var (part, by) in lacks)
        {
            var says = string.Create(CultureInfo.InvariantCulture, $"{Words.The(part)} is short by {by:0.0} m");
            Assert.Contains(says, text, StringComparison.Ordinal);
            var step = Plain(Regex.Match(html, $"id=\"step-{part.Split(" strand")[0].Replace(' ', '-')}\".*?</li>\\s*(<li class=\"step|</ol>)", RegexOptions.Singleline, TimeSpan.FromSeconds(5)).Value);
            Assert.Contains(Terms.Capital(says), step, StringComparison.Ordinal);
        }

        Assert.Contains($"{Terms.Capital(Words.The(lacks[0].Part))} is short by", Plain(await TextAsync($"{at}?form=words")), StringComparison.Ordinal);

        // What is knitted all the same is not ahead any more.
        await GoAsync(at, "tick", ("tick", lacks[0].Part));
        Assert.DoesNotContain($"{Words.The(lacks[0].Part)} is short", Plain(await TextAsync(at)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("&arrangement=own-colours")]
    [InlineData("&arrangement=as-it-falls&nextDoor=blend")]
    [InlineData("&arrangement=as-it-falls&nextDoor=blend&hold=oat&keep=brim~oat%2Boat")]
    [InlineData("&arrangement=as-it-falls&nextDoor=blend&hold=teal&holdWith=oat&keep=stripe 1~teal%2Boat")]
    [InlineData("&arrangement=as-it-falls&nextDoor=blend&join=moss~teal")]
    public async Task The_sheet_is_short_by_what_its_answer_was_however_it_was_asked(string how)
    {
        await LogAsync(Scant, 0.1);
        var asked = "/can-i-make?hat=practice-hat&size=D&stripes=4" + how;
        var total = Total().Match(Plain(await TextAsync(asked))).Groups["total"].Value;
        Assert.NotEqual("", total);
        Assert.Contains($"From here: no, short by {total} / ", Plain(await TextAsync(await SaveAsync("Scant hat", asked))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_to_stop_speaks_of_the_ball_without_what_is_put_by()
    {
        // 10.6 g and a hair, so 10.7, are the brim's 26.5 yd; the crown's 13.9 yd were wound off before.
        await LogAsync();
        var text = Plain(await TextAsync(await SaveAsync("Winter hat")));
        Assert.Contains("Start only if the ball weighs 10.7 g or more.", text, StringComparison.Ordinal);
        Assert.Contains("Start the brim only if the ball weighs 10.7 g or more.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Start the crown only", text, StringComparison.Ordinal);
        Assert.Contains("Use the yarn kept for it.", text, StringComparison.Ordinal);
        Assert.Contains("Weigh the whole ball, with the yarn you wound off.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_a_heavier_weighing_the_put_by_figure_is_the_forecast_with_the_allowance()
    {
        // 2.286 m to the gram: 22.86 m for the brim are 10 g, and the crown's 13.716 m with the allowance 15.1 m.
        await LogAsync([("oat", 30, 250)], 0.1);
        var at = await PlanAsync(("oat", "brim", 22_860), ("oat", "stripe 1", 9_144), ("oat", "crown", 13_716));
        Assert.Contains("Wind off 15.1 m / 16.6 yd (6.7 g) of", Plain(await TextAsync(at)), StringComparison.Ordinal);
        await GoAsync(at, "tick", ("tick", "brim"));
        await GoAsync(at, "weigh", ("ball", "oat"), ("grams", "19"), ("core", ""), ("step", "0.1"));

        // 11 g in place of 10: 10 % more, so 13.716 m · 1.1 · 1.1 = 16.6 m.
        var text = Plain(await TextAsync(at));
        Assert.Contains("10.0 % more than planned", text, StringComparison.Ordinal);
        Assert.Contains("Wind off 16.6 m / 18.2 yd (7.3 g) of Oat for the crown, in all.", text, StringComparison.Ordinal);

        // With nothing else ahead on the ball there is nothing to keep it from.
        await GoAsync(at, "tick", ("tick", "stripe 1"));
        text = Plain(await TextAsync(at));
        Assert.DoesNotContain("Wind off", text, StringComparison.Ordinal);
        Assert.Contains("or more, with the yarn kept for it.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_that_is_short_is_named_longest_first_with_the_sum_and_whose_rate_it_is()
    {
        await LogAsync();
        var at = await PlanAsync(("oat", "brim", 24_300), ("moss", "stripe 1", 19_700), ("plum", "stripe 2", 19_000), ("oat", "crown", 12_800));
        await GoAsync(at, "tick", ("tick", "brim"));
        await GoAsync(at, "weigh", ("ball", "oat"), ("grams", "5.0"), ("core", ""), ("step", "0.1"));
        var text = Plain(await TextAsync(at));
        var why = Regex.Match(text, "At your rate, it is short by (?<sum>[0-9.]+) m / [0-9.]+ yd in all: (?<which>.*?)\\. ", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
        Assert.True(why.Success, text);
        foreach (var name in new[] { "Oat is short by", "Moss is short by", "Plum is short by" })
        {
            Assert.Contains(name, why.Groups["which"].Value, StringComparison.Ordinal);
        }

        var by = Regex.Matches(why.Groups["which"].Value, "short by ([0-9.]+) m").Select(m => decimal.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(by.OrderDescending(), by);
        Assert.InRange(decimal.Parse(why.Groups["sum"].Value, CultureInfo.InvariantCulture), by.Sum() - (0.1m * by.Count), by.Sum());
        Assert.Contains("Judged by Oat; weigh the others to be surer.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_state_ahead_stands_in_one_line_above_the_boxes_and_is_not_printed()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        var html = await TextAsync(at);
        var line = html.IndexOf("class=\"no-print state-ahead\"", StringComparison.Ordinal);
        Assert.InRange(line, 0, html.IndexOf("<article class=\"sheet", StringComparison.Ordinal));
        Assert.Matches($"From here: <strong>yes, (over )?[0-9]+ % chance that the yarn lasts</strong>\\. <a href=\"{at}#ahead\">Will my yarn last\\?</a>", WebUtility.HtmlDecode(html));
    }

    [Fact]
    public async Task Grams_of_a_part_go_up_as_fine_as_the_scale()
    {
        // 9 m at 2.286 m/g are 3.937 g.
        await LogAsync([("oat", 30, 250)], 0.01);
        var at = await PlanAsync(("oat", "stripe 1", 9_000));
        Assert.Contains("9.0 m / 9.9 yd, 3.94 g. Join.", Plain(await TextAsync(at)), StringComparison.Ordinal);
        Assert.Contains("3.94 grams", Plain(await TextAsync($"{at}?form=words")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_by_its_hats_name_says_the_name_once_and_the_list_says_how_far_it_is()
    {
        await LogAsync();
        var named = await SaveAsync("Practice hat, size D, 4 stripes");
        var head = Regex.Match(await TextAsync(named), "<header class=\"sheet-head\".*?</header>", RegexOptions.Singleline, TimeSpan.FromSeconds(5)).Value;
        Assert.Single(Regex.Matches(head, "size D"));
        await GoAsync(named, "tick", ("tick", "brim"));
        await GoAsync(named, "tick", ("tick", "braid 1"));
        var list = Plain(await TextAsync("/plans"));
        Assert.Contains("2 of 8 parts done", list, StringComparison.Ordinal);
        Assert.Contains("so that no other hat takes it", list, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(Regex.Match(list, "Each hat here keeps its yarn.*?open the sheet", RegexOptions.None, TimeSpan.FromSeconds(5)).Value, "size D"));
    }

    [Fact]
    public async Task Before_finishing_it_says_what_that_does_and_how_it_is_undone()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        var html = await TextAsync(at);
        var told = html.IndexOf("You can undo it under", StringComparison.Ordinal);
        Assert.InRange(told, 1, html.IndexOf("Finish and put the rest back", StringComparison.Ordinal));
        Assert.Contains("<a href=\"/leftovers\">My leftovers</a>", html, StringComparison.Ordinal);
    }

    private async Task<string> PlanAsync(params (string Ball, string Part, long Millimetres)[] parts)
    {
        var saved = await Plans.SaveAsync(new NewPlan("By hand", "no-such-hat", "Q", 3, "as-it-falls", [.. parts.Select(p => new PlannedPart(p.Ball, p.Part, p.Millimetres))]), Stop);
        Assert.True(saved.Saved);
        return $"/plans/{saved.Id}";
    }

    [GeneratedRegex("(?<total>[0-9.]+ m) ?short, in ", RegexOptions.ExplicitCapture)]
    private static partial Regex Total();
}
