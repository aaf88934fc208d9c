using Bunit;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Bags;
using StashMatch.Store;
using Xunit;
using Answer = StashMatch.Web.Pages.CanIMakeIt.CanIMakeIt;
using Page = StashMatch.Web.Pages.FromThisBag.FromThisBag;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.FromThisBag;

public sealed class FromThisBagTests : PageContext
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task With_nothing_weighed_the_page_says_so_and_shows_the_way()
    {
        await ReadyAsync();
        GoTo("/from-this-bag");
        var page = Render<Page>();
        Assert.Contains("Nothing is weighed yet", page.Markup, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("table"));
    }

    [Fact]
    public async Task Each_arrangement_is_a_table_of_words_and_the_best_of_each_size_stands_on_top()
    {
        await WithDemoAsync("/from-this-bag?hat=side-to-side-sample&arrangement=own-colours&arrangement=one-ground&size=A&size=F&size=H");
        var page = Render<Page>();
        Assert.Equal(["Own colours", "One ground"], page.FindAll("section:has(table.cells) h2").Select(h => h.TextContent));
        Assert.Equal(2 * 3 * 9, page.FindAll("table.cells td").Count);
        Assert.All(page.FindAll("table.cells td .word"), w => Assert.Contains(w.TextContent, new[] { "yes", "only just", "no" }));
        var best = page.FindAll(".best a");
        Assert.Equal(3, best.Count);
        Assert.Matches("^Size A, [0-9]+ stripes, own colours: yes, (over )?[0-9]+ %$", best[0].TextContent);
        Assert.Matches(@"^Size H, .*: no, short by [\d.]+ m / [\d.]+ yd$", best[2].TextContent);
        Assert.Contains("to spare", page.Find(".best small").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cell_opens_its_plan_and_the_plan_says_the_same()
    {
        await WithDemoAsync("/from-this-bag?arrangement=own-colours&arrangement=in-turn&size=A&size=F&bag=The%20bread%20bin&allowance=5");
        var page = Render<Page>();
        foreach (var link in page.FindAll("table.cells td a").Where((_, i) => i % 5 == 0))
        {
            GoTo(link.GetAttribute("href")!);
            var plan = Render<Answer>();
            Assert.Equal(link.QuerySelector(".word")!.TextContent, plan.Find(".word > span").TextContent);
            var small = link.QuerySelector("small")!.TextContent;
            Assert.Contains(small, small.EndsWith('%') ? plan.Find(".chance").TextContent : plan.Markup, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_is_short_and_where_is_there_to_read_and_to_hear_in_both_units()
    {
        await WithDemoAsync("/from-this-bag?arrangement=own-colours&size=H");
        var cell = Render<Page>().FindAll("table.cells td a").First(a => a.ClassList.Contains("no"));
        Assert.Matches(@"short by [\d.]+ m\s*[\d.]+ yd\s*brim is the weakest part\. Size H, [0-9]+ stripes, own colours", cell.TextContent);
        Assert.Matches(@"no, short by [\d.]+ m / [\d.]+ yd; the brim lacks most", cell.GetAttribute("title")!);
    }

    [Fact]
    public async Task Chosen_leftovers_alone_are_looked_at_and_go_along_into_the_plan()
    {
        await WithDemoAsync("/from-this-bag?arrangement=as-it-falls&size=A&leftover=quince&leftover=sloe");
        var cell = Render<Page>().Find("table.cells td a");
        Assert.EndsWith("&leftover=quince&leftover=sloe", cell.GetAttribute("href"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hat=zzz", "hat", "Hat is not one of the hats here.")]
    [InlineData("size=Q", "size", "Size must be one of A, B, C, D, E, F, G, H.")]
    [InlineData("arrangement=heap", "arrangement", "Arrangement must be one of")]
    [InlineData("allowance=ten", "allowance", "Spare must be a number")]
    [InlineData("bag=nowhere", "bag", "Bag is not one of the bags here.")]
    [InlineData("leftover=nobody", "leftover", "Leftover is not among the leftovers")]
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
        Assert.Equal(["Own colours", "As it falls"], page.FindAll("section:has(table.cells) h2").Select(h => h.TextContent));
        Assert.Equal(10, page.FindAll("table.cells td").Count);
        Assert.Contains("Depths belong to", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_whole_bag_says_at_least_and_at_most_and_which_leftover_goes_where()
    {
        await WithDemoAsync("/from-this-bag?hat=brim-up-sample&size=A&arrangement=own-colours");
        var page = Render<Page>();
        Assert.Matches("^(At least [0-9]+, at most [0-9]+|[0-9]+ hats?, no more and no less)[.]$", page.Find(".count").TextContent);
        Assert.NotEmpty(page.FindAll(".hats > li"));
        Assert.Contains("stripe 1", page.Find(".hats li ul").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Depths_are_found_told_stripe_by_stripe_and_opened_as_a_hat()
    {
        await WithDemoAsync("/from-this-bag?arrangement=own-colours&size=A&depthSize=A&least=6&chosen=quince&chosen=rosehip&chosen=damson&chosen=gooseberry");
        var page = Render<Page>();
        var rows = page.FindAll("section[aria-labelledby=depths] tbody tr");
        Assert.Equal(4, rows.Count);
        Assert.Contains("No other depths leave less", page.Markup, StringComparison.Ordinal);
        Assert.Contains("Knitted up but for the spare: Rosehip", page.Markup, StringComparison.Ordinal);
        var address = page.Find("section[aria-labelledby=depths] a.button").GetAttribute("href")!;
        Assert.Contains("depths=", address, StringComparison.Ordinal);
        GoTo(address);
        var plan = Render<Answer>();
        foreach (var row in rows)
        {
            var part = plan.Find($"tr[data-part='{row.QuerySelector("th")!.TextContent}']");
            Assert.Equal(row.QuerySelectorAll("td")[1].TextContent, part.QuerySelectorAll("td")[1].TextContent);
            Assert.Contains(row.QuerySelector("td")!.TextContent.Split(", knitted up")[0], part.TextContent, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("depths=28,29", "Depths do not fit.")]
    [InlineData("depths=44,45,45,fish", "Depths must be whole rows")]
    [InlineData("depths=44,45,45,45&stripes=6", "Depths must be whole rows")]
    [InlineData("depths=45,45,45,44", "Depths do not fit. Worked flat")]
    public async Task Depths_that_do_not_fit_are_a_message_beside_the_question(string query, string says)
    {
        await ReadyAsync();
        GoTo($"/can-i-make?hat=side-to-side-sample&size=C&{query}");
        var page = Render<Answer>();
        Assert.Contains(says, page.Find("#rows-message").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".verdict"));
    }

    [Theory]
    [InlineData("least=x", "least")]
    [InlineData("least=9&most=8", "most")]
    [InlineData("depthSize=Q", "depthSize")]
    [InlineData("chosen=nobody", "chosen")]
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
