using Bunit;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;
using Xunit;
using Answer = StashMatch.Web.Pages.CanIMakeIt.CanIMakeIt;
using Page = StashMatch.Web.Pages.FromThisBag.FromThisBag;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.FromThisBag;

public sealed class FromThisBagTests : PageContext
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task With_nothing_weighed_the_page_asks_for_the_first_ball()
    {
        await ReadyAsync();
        GoTo("/from-this-bag");
        var page = Render<Page>();
        Assert.Equal("/leftovers", page.Find("a.button").GetAttribute("href"));
        Assert.Empty(page.FindAll("table"));
    }

    [Fact]
    public async Task Yarn_kept_for_other_hats_is_said_and_counted_when_asked_to_and_the_cells_open_the_same()
    {
        await ReadyAsync();
        foreach (var (name, colour) in new[] { ("Moss", "#5B7A3A"), ("Oat", "#E2D3B2"), ("Plum", "#6F3F66"), ("Rust", "#A9522F"), ("Teal", "#1F7480") })
        {
            await Leftovers.WeighAsync(
                new NewLeftover(name, new(Grams.From(40), default, Grams.From(0.1m)), new(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed))
                {
                    Class = WeightClass.SuperFine,
                    Colour = YarnColour.TryParse(colour, out var c, out _) ? c : null,
                },
                cancel: Stop);
        }

        var plans = Services.GetRequiredService<PlanStore>();
        PlannedPart[] parts = [.. new[] { "moss", "oat", "plum", "rust", "teal" }.Select(l => new PlannedPart(l, "brim", 150_000))];
        Assert.True((await plans.SaveAsync(new NewPlan("Winter hat", "side-to-side-sample", "A", 4, "as-it-falls", parts), Stop)).Saved);
        GoTo("/from-this-bag?size=A&arrangement=as-it-falls");
        var page = Render<Page>();
        Assert.StartsWith("Not counted: 150.0 m of ", page.Find(".kept-note").TextContent, StringComparison.Ordinal);
        Assert.Contains("kept for your other hats.", page.Find(".kept-note").TextContent, StringComparison.Ordinal);
        Assert.Equal("no", page.Find("table.cells td a .word").TextContent);

        GoTo(page.Find(".kept-note a").GetAttribute("href")!);
        page = Render<Page>();
        Assert.StartsWith("Counted too: 150.0 m of ", page.Find(".kept-note").TextContent, StringComparison.Ordinal);
        Assert.Equal("Leave it out", page.Find(".kept-note a").TextContent);
        var cell = page.Find("table.cells td a");
        Assert.Contains("kept=count", cell.GetAttribute("href"), StringComparison.Ordinal);
        GoTo(cell.GetAttribute("href")!);
        var told = Render<Answer>().Find(".word").TextContent;
        Assert.Contains(cell.QuerySelector(".word")!.TextContent, told, StringComparison.Ordinal);
        Assert.DoesNotMatch("^no\\b", told.Trim());
    }

    [Fact]
    public async Task One_hat_a_size_hangs_on_the_tape_of_heads_each_with_its_word_and_its_picture()
    {
        await WithDemoAsync("/from-this-bag");
        var page = Render<Page>();
        var pegs = page.FindAll(".pegs a");
        Assert.Equal(["A", "B", "C", "D", "E", "F", "G", "H"], pegs.Select(p => p.QuerySelector(".sz")!.TextContent));
        Assert.All(pegs, p => Assert.Contains(p.QuerySelector(".v b")!.TextContent, new[] { "yes", "only just", "no" }));
        Assert.All(pegs, p => Assert.StartsWith("/hat.png?", p.QuerySelector("img")!.GetAttribute("src"), StringComparison.Ordinal));

        // Eyelets stand where the heads are, 48 to 61 cm, so the steps between them are as 2 2 2 1 2 2 2.
        var eyes = page.FindAll(".tape-of-heads circle").Select(c => double.Parse(c.GetAttribute("cx")!, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        var steps = eyes.Zip(eyes.Skip(1)).Select(e => e.Second - e.First).ToList();
        var cm = steps.Sum() / 13;
        Assert.Equal([2, 2, 2, 1, 2, 2, 2], steps.Select(s => (int)Math.Round(s / cm)));
    }

    [Fact]
    public async Task The_heading_counts_the_words_on_the_rail()
    {
        await WithDemoAsync("/from-this-bag");
        var page = Render<Page>();
        var words = page.FindAll(".pegs .v b").Select(w => w.TextContent).ToList();
        var (yes, just) = (words.Count(w => w == "yes"), words.Count(w => w == "only just"));
        var told = page.Find("h1").TextContent;
        Assert.Matches("^(One|Two|Three|Four|Five|Six|Seven) sizes? (is|are) a yes, (one|two|three|four|five|six|seven) only just[.]$", told);
        string[] numbers = ["no", "one", "two", "three", "four", "five", "six", "seven"];
        Assert.StartsWith(numbers[yes], told, StringComparison.OrdinalIgnoreCase);
        Assert.Contains($"{numbers[just]} only just", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_surest_the_words_never_get_better_down_the_row_and_by_used_up_other_hats_may_lead()
    {
        await WithDemoAsync("/from-this-bag?by=surest");
        var words = Render<Page>().FindAll(".pegs .v b").Select(w => Array.IndexOf(["yes", "only just", "no"], w.TextContent)).ToList();
        Assert.Equal(words.Order(), words);
        GoTo("/from-this-bag?by=uses-up-most");
        Assert.Equal("no", Render<Page>().FindAll(".pegs .v b")[^1].TextContent);
    }

    [Fact]
    public async Task A_hat_on_the_rail_opens_as_the_answer_it_told()
    {
        await WithDemoAsync("/from-this-bag");
        foreach (var peg in Render<Page>().FindAll(".pegs a"))
        {
            var (word, figure) = (peg.QuerySelector(".v b")!.TextContent, peg.QuerySelector(".v")!.TextContent.Split(' ', 2)[^1]);
            GoTo(peg.GetAttribute("href")!);
            var answer = Render<Answer>();
            Assert.Contains(word, answer.Find(".word").TextContent, StringComparison.Ordinal);
            if (word != "no")
            {
                Assert.Contains(figure.Split(' ')[^2], answer.Find(".chance").TextContent, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task Each_arrangement_is_a_table_of_words_and_the_best_of_each_size_is_marked()
    {
        await WithDemoAsync("/from-this-bag?hat=side-to-side-sample&arrangement=own-colours&arrangement=one-ground&size=A&size=F&size=H");
        var page = Render<Page>();
        Assert.Equal(2, page.FindAll("table.cells").Count);
        Assert.StartsWith("Every stripe different, keeping 10 % in reserve.", page.Find("table.cells caption").TextContent, StringComparison.Ordinal);
        Assert.Equal(2 * 3 * 9, page.FindAll("table.cells td").Count);
        Assert.All(page.FindAll("table.cells td .word"), w => Assert.Contains(w.TextContent, new[] { "yes", "only just", "no" }));
        Assert.Equal(3, page.FindAll("table.cells a.best").Count);
    }

    [Fact]
    public async Task A_cell_opens_its_plan_with_its_word_and_what_is_short()
    {
        await WithDemoAsync("/from-this-bag?arrangement=own-colours&arrangement=in-turn&size=A&size=H&bag=The%20bread%20bin&allowance=5");
        var page = Render<Page>();
        foreach (var link in page.FindAll("table.cells td a").Where((_, i) => i % 5 == 0))
        {
            GoTo(link.GetAttribute("href")!);
            Assert.Contains(link.QuerySelector(".word")!.TextContent, Render<Answer>().Find(".word").TextContent, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_is_short_and_why_is_there_to_read_and_to_hear()
    {
        await WithDemoAsync("/from-this-bag?arrangement=own-colours&size=H");
        var cell = Render<Page>().FindAll("table.cells td a").First(a => a.ClassList.Contains("no"));
        Assert.Matches(@"^no [\d.]+ m short, size H, [0-9]+ stripes$", cell.TextContent);
        Assert.Equal("The brim is short most.", cell.GetAttribute("title"));
    }

    [Fact]
    public async Task Chosen_leftovers_alone_are_looked_at_and_go_along_into_the_plan()
    {
        await WithDemoAsync("/from-this-bag?arrangement=as-it-falls&size=A&leftover=quince&leftover=sloe");
        var cell = Render<Page>().Find("table.cells td a");
        Assert.EndsWith("&leftovers=quince&leftovers=sloe", cell.GetAttribute("href"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hat=zzz", "hat", "Hat is not one of the hats here.")]
    [InlineData("size=Q", "sizes", "Size must be one of A, B, C, D, E, F, G, H.")]
    [InlineData("arrangement=heap", "arrangements", "Arrangement must be one of")]
    [InlineData("allowance=ten", "allowancePercent", "The reserve must be a number")]
    [InlineData("bag=nowhere", "bag", "Bag is not one of the bags here.")]
    [InlineData("leftover=nobody", "leftovers", "Leftover nobody is not among the leftovers")]
    public async Task What_cannot_be_read_is_named_beside_its_field(string query, string field, string says)
    {
        await WithDemoAsync($"/from-this-bag?{query}");
        var page = Render<Page>();
        Assert.Contains(says, page.Find($"#{field}-message").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("table"));
    }

    [Fact]
    public async Task A_printed_hat_has_the_arrangements_that_apply_and_no_depths()
    {
        await WithDemoAsync("/from-this-bag?hat=practice-hat");
        var page = Render<Page>();
        Assert.Equal(["own-colours", "as-it-falls", "usual"], page.FindAll("#arrangement option").Select(o => o.GetAttribute("value")));
        Assert.Equal(5, page.FindAll("table.cells td").Count);
        Assert.Contains("This needs a hat described by measurements.", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_whole_bag_says_at_least_and_at_most_and_which_leftover_goes_where()
    {
        await WithDemoAsync("/from-this-bag?hat=brim-up-sample&size=A&arrangement=own-colours");
        var page = Render<Page>();
        Assert.Matches("^(at least [0-9]+ hats?, at most [0-9]+|[0-9]+ hats?)[.]$", page.Find(".whole summary b").TextContent);
        Assert.Matches("Only [a-z]+ balls? (is|are) long enough for a |hold too little for more", page.Find(".whole summary").TextContent);
        Assert.NotEmpty(page.FindAll(".hats > li"));
        Assert.Contains("stripe 1", page.Find(".hats li ul").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Depths_are_found_told_stripe_by_stripe_and_opened_as_a_hat()
    {
        await WithDemoAsync("/from-this-bag?arrangement=own-colours&size=A&depthSize=A&least=6&chosen=quince&chosen=rosehip&chosen=damson&chosen=gooseberry");
        var page = Render<Page>();
        var rows = page.FindAll("#depths tbody tr");
        Assert.Equal(4, rows.Count);
        Assert.Contains("No other stripes leave less", page.Markup, StringComparison.Ordinal);
        Assert.Contains("Used up, but for your reserve: Rosehip", page.Markup, StringComparison.Ordinal);
        var address = page.Find("#depths a.button").GetAttribute("href")!;
        Assert.Contains("rows=", address, StringComparison.Ordinal);
        GoTo(address);
        var plan = Render<Answer>();
        foreach (var row in rows)
        {
            var part = plan.Find($".row[data-part='{row.QuerySelector("th")!.TextContent}']");
            var deep = int.Parse(row.QuerySelectorAll("td")[1].TextContent, System.Globalization.CultureInfo.InvariantCulture);
            Assert.StartsWith($"{Terms.Number(deep)} rows", part.GetAttribute("data-more"), StringComparison.Ordinal);
            Assert.Contains(row.QuerySelector("td")!.TextContent.Split(", knitted up")[0], part.TextContent, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("depths=28,29", "The stripes’ rows do not fit.")]
    [InlineData("depths=44,45,45,fish", "The stripes’ rows must be whole rows")]
    [InlineData("depths=44,45,45,45&stripes=6", "The stripes’ rows must be whole rows")]
    [InlineData("depths=45,45,45,44", "The stripes’ rows do not fit. Knitted flat")]
    public async Task Depths_that_do_not_fit_are_a_message_beside_the_question(string query, string says)
    {
        await ReadyAsync();
        GoTo($"/can-i-make?hat=side-to-side-sample&size=C&{query}");
        var page = Render<Answer>();
        Assert.Contains(says, page.Find("#rows-message").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".stage"));
    }

    [Theory]
    [InlineData("least=x", "leastRows")]
    [InlineData("least=9&most=8", "mostRows")]
    [InlineData("depthSize=Q", "size")]
    [InlineData("chosen=nobody", "leftovers")]
    public async Task A_bound_of_the_depths_that_cannot_be_read_is_named_and_the_rest_still_stands(string query, string field)
    {
        await WithDemoAsync($"/from-this-bag?arrangement=own-colours&size=A&chosen=quince&{query}");
        var page = Render<Page>();
        Assert.NotEmpty(page.Find($"#{field}-message").TextContent);
        Assert.NotEmpty(page.FindAll("table.cells"));
    }

    private async Task WithDemoAsync(string address)
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(Stop);
        GoTo(address);
    }
}
