using Bunit;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store;
using Xunit;
using Page = StashMatch.Web.Pages.CanIMakeIt.CanIMakeIt;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.CanIMakeIt;

public sealed class CanIMakeItTests : PageContext
{
    [Fact]
    public async Task With_no_leftovers_the_hat_is_drawn_all_the_same_and_every_part_is_short()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Assert.Equal("no", page.Find(".verdict .word").TextContent);
        Assert.Equal(2, page.FindAll("svg.hat").Count);
        Assert.NotEmpty(page.FindAll("svg.hat [data-part='stripe 3']"));
        Assert.Contains("Short by", page.Markup, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".tape-gap"));
        Assert.Contains("Nothing is weighed yet", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_the_demo_the_verdict_comes_first_with_its_chance_its_reason_and_a_repair_to_try()
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        var page = Render<Page>();
        Assert.Equal("only just", page.Find(".verdict .word").TextContent);
        Assert.Contains("chance that nothing runs out", page.Find(".chance").TextContent, StringComparison.Ordinal);
        Assert.Contains("misses the allowance", page.Find(".why").TextContent, StringComparison.Ordinal);
        Assert.Contains("prone to stretching", page.Find(".notices").TextContent, StringComparison.Ordinal);
        var single = page.FindAll(".repairs li").Single(li => li.TextContent.Contains("brim single", StringComparison.Ordinal));
        var address = single.QuerySelector("a")!.GetAttribute("href")!;
        GoTo(address);
        var after = Render<Page>();
        Assert.Equal("yes", after.Find(".verdict .word").TextContent);
        Assert.Contains("Oatcake", after.Find("tr[data-part='brim']").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_leftovers_that_are_ticked_are_asked_about()
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        GoTo("/can-i-make?hat=brim-up-sample&size=A&stripes=4&leftover=quince&leftover=sloe");
        var page = Render<Page>();
        Assert.Equal("no", page.Find(".verdict .word").TextContent);
        Assert.DoesNotContain(page.FindAll("table.parts td"), td => td.TextContent.Contains("Oatcake", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_printed_hat_is_sketched_on_the_head_alone()
    {
        await ReadyAsync();
        GoTo("/can-i-make?hat=practice-hat&size=C");
        var page = Render<Page>();
        Assert.Single(page.FindAll("svg.hat"));
        Assert.Contains("sketched from the printed lengths", page.Markup, StringComparison.Ordinal);
    }
}
