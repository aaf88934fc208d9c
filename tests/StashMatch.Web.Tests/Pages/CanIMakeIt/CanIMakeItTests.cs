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

    [Theory]
    [InlineData("practice-hat", "F", "E")]
    [InlineData("practice-hat", "H", "E")]
    [InlineData("practice-hat", "C", null)]
    public async Task A_size_the_hat_has_not_becomes_the_nearest_it_has_and_the_page_says_so(string hat, string asked, string? instead)
    {
        await ReadyAsync();
        GoTo($"/can-i-make?hat={hat}&size={asked}&allowance=10");
        var page = Render<Page>();
        Assert.Contains($"size {instead ?? asked}", page.Find(".verdict").TextContent, StringComparison.Ordinal);
        Assert.Equal(instead ?? asked, page.Find("#size option[selected]").GetAttribute("value"));
        Assert.Equal(instead is not null, page.Markup.Contains($"has no size {asked}. Size {instead} is the nearest", StringComparison.Ordinal));
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

    [Fact]
    public async Task A_size_the_hat_does_not_have_is_named_beside_its_field_and_the_rest_is_kept()
    {
        await ReadyAsync();
        GoTo("/can-i-make?hat=brim-up-sample&size=Z&stripes=5&allowance=15");
        var page = Render<Page>();
        Assert.Equal("Size must be one of A, B, C, D, E, F, G, H.", page.Find("#size-message").TextContent);
        Assert.Equal("true", page.Find("#size").GetAttribute("aria-invalid"));
        Assert.Equal("size-message", page.Find("#size").GetAttribute("aria-describedby"));
        Assert.Equal("5", page.Find("#stripes option[selected]").GetAttribute("value"));
        Assert.Equal("15", page.Find("#allowance").GetAttribute("value"));
        Assert.Empty(page.FindAll(".verdict"));
    }

    [Fact]
    public async Task A_count_that_cannot_be_knitted_says_the_largest_that_can_and_offers_it()
    {
        await ReadyAsync();
        GoTo("/can-i-make?hat=side-to-side-sample&size=C&stripes=13");
        var page = Render<Page>();
        Assert.Contains("4 to 12 stripes", page.Find(".cannot").TextContent, StringComparison.Ordinal);
        Assert.EndsWith("stripes=12", page.Find(".cannot a").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_short_is_bracketed_on_the_tape_drawn_open_and_said_in_both_units()
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        GoTo("/can-i-make?hat=side-to-side-sample&size=H&stripes=8");
        var page = Render<Page>();
        Assert.Equal("no", page.Find(".verdict .word").TextContent);
        Assert.Matches(@"lacks [\d.]+ m / [\d.]+ yd", page.Find("ul.short").TextContent);
        Assert.NotNull(page.Find(".tape-gap[data-part='brim']"));
        Assert.Single(page.FindAll(".tape-need"));
        Assert.NotEmpty(page.FindAll("svg.hat [data-part='brim'] .gap"));
    }

    [Fact]
    public async Task A_leftover_can_be_kept_where_it_is_or_sent_elsewhere_and_the_form_says_so()
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        var first = Render<Page>();
        var row = first.Find("tr[data-part='stripe 3']");
        var name = row.QuerySelector(".code")!.NextSibling!.TextContent.Trim();
        var links = row.QuerySelectorAll(".decide a");
        Assert.Equal(3, links.Length);

        GoTo(links[1].GetAttribute("href")!);
        var sent = Render<Page>();
        Assert.Contains($"{name} does not go in stripe 3", sent.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain(name, sent.Find("tr[data-part='stripe 3'] .code").ParentElement!.TextContent, StringComparison.Ordinal);
        Assert.StartsWith("put it back", sent.Find("tr[data-part='stripe 3'] .decide a").TextContent, StringComparison.Ordinal);

        GoTo(links[0].GetAttribute("href")!);
        var kept = Render<Page>();
        Assert.Contains($"{name} stays in stripe 3", kept.Markup, StringComparison.Ordinal);
        Assert.Contains(name, kept.Find("tr[data-part='stripe 3']").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Drawing_tape_and_table_give_a_part_the_same_number()
    {
        await ReadyAsync();
        await Services.GetRequiredService<DemoBag>().LoadOnceAsync(TestContext.Current.CancellationToken);
        var page = Render<Page>();
        foreach (var part in new[] { "stripe 2", "stripe 6" })
        {
            var number = page.Find($"tr[data-part='{part}'] td.num").TextContent;
            Assert.Equal(number, page.Find($".tape-cut[data-part='{part}']").TextContent);
            Assert.Equal(number, page.Find($"svg.hat [data-part='{part}'] text.number").TextContent);
        }
    }
}
