using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store;
using Xunit;
using Page = StashMatch.Web.Pages.CanIMakeIt.CanIMakeIt;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.CanIMakeIt;

public sealed class CanIMakeItTests : PageContext
{
    private const string SizeF = "/can-i-make?hat=side-to-side-sample&size=F&stripes=6";

    [Fact]
    public async Task An_empty_bag_is_no_verdict_but_the_hat_what_it_takes_and_one_thing_to_do()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Assert.Empty(page.FindAll(".word"));
        Assert.Empty(page.FindAll(".row"));
        Assert.NotEmpty(page.FindAll("img.wool"));
        Assert.Matches("^This hat takes about [0-9]{3} m of yarn in seven colours.$", page.Find("h1").TextContent);
        Assert.Equal("/leftovers", page.Find(".acts a").GetAttribute("href"));
    }

    [Fact]
    public async Task With_the_demo_the_word_comes_first_with_its_chance_its_proof_its_reason_and_a_way_to_a_yes()
    {
        var page = await AskAsync("/");
        Assert.Equal("only just", WordOf(page));
        Assert.EndsWith("chance the yarn lasts", page.Find(".chance").TextContent.Trim(), StringComparison.Ordinal);
        Assert.Matches(@"^Hearth rug: brim [\d.]+ mleaves [\d.]+ m; you asked [\d.]+$", page.Find(".ends").TextContent);
        Assert.Matches("^There is enough, but Hearth rug leaves about [0-9.]+\\sm less in reserve than you asked.$", page.Find(".why").TextContent);
        Assert.Contains("may stretch in the brim", page.Find("#good-to-know").TextContent, StringComparison.Ordinal);
        var single = page.FindAll(".way").Single(w => w.TextContent.Contains("Single brim, not folded", StringComparison.Ordinal));
        Assert.Matches("yes (over )?[0-9]+ %", single.TextContent);
        var after = await AskAsync(single.GetAttribute("href")!);
        Assert.Equal("yes", WordOf(after));
        Assert.Empty(after.FindAll(".ways"));
    }

    [Fact]
    public async Task A_reader_hears_the_answer_first_and_the_allotment_once()
    {
        var page = await AskAsync(SizeF);
        Assert.StartsWith("only just: Side to side, size F, 6 stripes", page.Find("h1").TextContent, StringComparison.Ordinal);
        foreach (var control in page.FindAll("select, input:not([type=hidden])"))
        {
            var labels = page.FindAll($"label[for='{control.Id}']");
            var name = control.GetAttribute("aria-label") ?? (labels.Count > 0 ? labels[0].TextContent : control.ParentElement!.TextContent);
            Assert.True(name.Trim().Length >= 3, $"“{name}” says too little: {control.OuterHtml}");
        }

        // Folded parts are closed; what is hidden from listening is not counted.
        var read = page.Nodes.QuerySelectorAll("[data-alive]").Single().Clone() as IElement;
        foreach (var closed in read!.QuerySelectorAll("details:not([open]) > :not(summary), option:not([selected]), [aria-hidden=true], .only-phone, svg")
            .ToList())
        {
            closed.Remove();
        }

        Assert.InRange(read.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length, 60, 900);
    }

    [Theory]
    [InlineData("practice-hat", "F", "E")]
    [InlineData("practice-hat", "H", "E")]
    [InlineData("practice-hat", "C", null)]
    public async Task A_size_the_hat_has_not_becomes_the_nearest_it_has_and_the_page_says_so(string hat, string asked, string? instead)
    {
        await ReadyAsync();
        GoTo($"/can-i-make?hat={hat}&size={asked}&allowance=10");
        var page = Render<Page>();
        Assert.Single(page.FindAll(".stage"));
        Assert.Equal(instead ?? asked, page.Find("#size option[selected]").GetAttribute("value"));
        Assert.Equal(instead is not null, page.Markup.Contains($"has no size {asked}. This is size {instead}, the nearest.", StringComparison.Ordinal));
        Assert.Empty(page.FindAll(".field-message"));
    }

    [Fact]
    public async Task A_size_no_hat_has_is_named_and_nothing_is_guessed()
    {
        await ReadyAsync();
        GoTo("/can-i-make?hat=practice-hat&size=Q");
        Assert.Contains("Size must be one of A, B, C, D, E", Render<Page>().Find("#size-message").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_leftovers_that_are_ticked_are_asked_about()
    {
        var page = await AskAsync("/can-i-make?hat=brim-up-sample&size=A&stripes=4&leftover=quince&leftover=sloe");
        Assert.Equal("no", WordOf(page));
        Assert.DoesNotContain(page.FindAll(".row .yarn"), y => y.TextContent.Contains("Oatcake", StringComparison.Ordinal));
        Assert.Contains("Using 2 of", page.Find(".which summary").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_printed_hat_has_its_picture_and_its_rows_but_no_piece()
    {
        var page = await AskAsync("/can-i-make?hat=practice-hat&size=C");
        Assert.NotEmpty(page.FindAll("img.wool"));
        Assert.Empty(page.FindAll(".piece svg"));
        Assert.Equal(["brim", "braid 1", "stripe 1", "stripe 2", "braid 2", "stripe 3", "stripe 4", "crown"],
            page.FindAll(".row .part").Select(r => r.TextContent));
    }

    [Fact]
    public async Task A_count_that_cannot_be_knitted_says_the_largest_that_can_and_offers_it()
    {
        var page = await AskAsync("/can-i-make?hat=side-to-side-sample&size=C&stripes=13");
        Assert.Contains("4 to 12 stripes", page.Find(".plainly").TextContent, StringComparison.Ordinal);
        Assert.EndsWith("stripes=12", page.Find(".plainly a").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_read_is_named_beside_its_field_and_the_rest_is_kept()
    {
        var page = await AskAsync("/can-i-make?hat=brim-up-sample&size=C&stripes=5&allowance=ten");
        var message = page.Find("#allowancePercent-message").TextContent;
        Assert.StartsWith("The reserve", message, StringComparison.Ordinal);
        Assert.Equal("allowancePercent-message", page.Find("#allowance").GetAttribute("aria-describedby"));
        Assert.NotNull(page.Find(".more").GetAttribute("open"));
        Assert.Equal("5", page.Find("#stripes option[selected]").GetAttribute("value"));
        Assert.Equal("ten", page.Find("#allowance").GetAttribute("value"));
        Assert.Empty(page.FindAll(".word"));
    }

    [Fact]
    public async Task A_no_says_where_yarn_is_missing_under_the_word_in_the_row_on_the_hat_and_on_the_piece()
    {
        var page = await AskAsync("/can-i-make?hat=side-to-side-sample&size=H&stripes=6");
        Assert.Equal("no", WordOf(page));
        var metres = page.Find(".chance b").TextContent;
        Assert.Equal("short, in the brim", page.Find(".chance small").TextContent);
        Assert.Equal("No ball is long enough for a folded brim in size H.", page.Find(".why").TextContent);
        Assert.Equal($"{metres} short", page.Find(".row[data-part=brim] .left").TextContent);
        Assert.EndsWith($", {metres} short", page.Find(".tag[data-part=brim]").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".piece [data-part=brim] .ghost"));
        Assert.NotEmpty(page.FindAll(".way"));
        Assert.Contains("quiet", page.Find(".go").ClassName, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_menu_of_a_part_keeps_its_yarn_sends_it_away_leaves_it_out_or_takes_another()
    {
        var menu = await AskAsync($"{SizeF}&choose=stripe%203");
        var name = menu.Find(".row[data-part='stripe 3'] .name").TextContent;
        string Act(string text) => menu.FindAll(".menu .act").Single(a => a.TextContent.StartsWith(text, StringComparison.Ordinal)).GetAttribute("href")!;

        var kept = await AskAsync(Act($"Always use {name} here"));
        Assert.Equal(name, kept.Find(".row[data-part='stripe 3'] .name").TextContent);
        Assert.Contains($"always use {name} in stripe 3", kept.Find(".decided").TextContent, StringComparison.Ordinal);
        var again = await AskAsync(kept.Find("[data-alive]").GetAttribute("data-address")! + "&choose=stripe%203");
        Assert.Contains(again.FindAll(".menu .act"), a => a.TextContent == "Choose freely again");

        var without = await AskAsync(Act($"Don’t use {name}"));
        Assert.DoesNotContain(without.FindAll(".row .yarn"), y => y.TextContent.Contains(name, StringComparison.Ordinal));
        Assert.Contains($"You said: don’t use", without.Find("#not-used").TextContent, StringComparison.Ordinal);

        // Another one: the row has it, and its word is the one the menu said.
        var other = menu.FindAll(".menu .act").First(a => a.QuerySelector("b") is not null);
        var (otherName, then) = (other.QuerySelectorAll("span")[1].TextContent.Split(',')[0], other.QuerySelector("b")!.TextContent);
        var changed = await AskAsync(other.GetAttribute("href")!);
        Assert.Equal(otherName, changed.Find(".row[data-part='stripe 3'] .name").TextContent);
        Assert.Equal(then, $"{WordOf(changed)} {changed.Find(".chance b").TextContent}");
    }

    [Fact]
    public async Task One_change_leaves_the_rest_and_is_said_in_one_line()
    {
        var before = await AskAsync($"{SizeF}&choose=stripe%203");
        var rows = RowsOf(before);
        var used = rows.Values.SelectMany(v => v.Split(" + ")).ToHashSet(StringComparer.Ordinal);
        var other = before.FindAll(".menu .else option").First(o => o.TextContent.StartsWith("No band", StringComparison.Ordinal));
        Assert.DoesNotContain("No band", used);
        var pairs = before.FindAll(".menu .else input").Select(i => $"{i.GetAttribute("name")}={Uri.EscapeDataString(i.GetAttribute("value")!)}");
        var after = await AskAsync($"/can-i-make?{string.Join('&', pairs)}&keep={Uri.EscapeDataString(other.GetAttribute("value")!)}");
        Assert.Equal("No band", RowsOf(after)["stripe 3"]);
        Assert.Equal(rows.Where(r => r.Key != "stripe 3"), RowsOf(after).Where(r => r.Key != "stripe 3"));
        Assert.StartsWith($"Stripe 3 is now No band, not {rows["stripe 3"]}. The rest stays.", after.Find(".change").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hat_piece_and_rows_name_the_same_parts_in_knitting_order()
    {
        var page = await AskAsync(SizeF);
        var rows = page.FindAll(".row").Select(r => r.GetAttribute("data-part")).ToList();
        Assert.Equal(["stripe 1", "braid 1", "stripe 2"], rows.Take(3));
        Assert.Equal(rows.Where(r => r!.StartsWith("stripe", StringComparison.Ordinal) || r.StartsWith("braid", StringComparison.Ordinal)),
            page.FindAll(".piece .part").Select(p => p.GetAttribute("data-part")).Where(p => p != "brim"));
        Assert.All(page.FindAll(".areas a"), a => Assert.Contains(a.GetAttribute("data-part"), rows));

        // Two threads a braid, one a stripe, each of two strokes.
        Assert.Equal(2 * (5 + (2 * 5) + 1 + 2), page.FindAll(".piece > svg > path").Count + (2 * (6 + 10 + 2 - 18)));
    }

    [Fact]
    public async Task A_plan_is_opened_by_its_small_hat()
    {
        var page = await AskAsync("/can-i-make?hat=side-to-side-sample&size=A&stripes=6");
        var plans = page.FindAll(".plan");
        Assert.InRange(plans.Count, 2, 3);
        Assert.Equal("surest", plans[0].QuerySelector("b")!.TextContent);
        Assert.Equal("true", plans[0].GetAttribute("aria-current"));
        var said = plans[1].QuerySelector("small")!.TextContent;
        var other = await AskAsync(plans[1].GetAttribute("href")!);
        Assert.Equal("true", other.FindAll(".plan")[1].GetAttribute("aria-current"));
        Assert.Equal(said, $"{WordOf(other)} {other.Find(".chance b").TextContent}");
        Assert.NotEqual(RowsOf(page), RowsOf(other));
    }

    private static string WordOf(IRenderedComponent<Page> page) => page.Find(".word > span").TextContent;

    private static Dictionary<string, string> RowsOf(IRenderedComponent<Page> page) =>
        page.FindAll(".row")
            .ToDictionary(r => r.GetAttribute("data-part")!, r => r.QuerySelector(".name, .yarn .unseen, .none")!.TextContent, StringComparer.Ordinal);

    private async Task<IRenderedComponent<Page>> AskAsync(string address)
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        GoTo(address);
        return Render<Page>();
    }
}
