using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Hats;
using StashMatch.Store;
using StashMatch.Web.Pieces;
using Xunit;
using Page = StashMatch.Web.Pages.TesterResults.TesterResults;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.TesterResults;

/// <summary>Testers and figures are invented.</summary>
public sealed class TesterResultsTests : PageContext
{
    [Fact]
    public async Task The_practice_testers_are_typed_in_T3_is_named_and_S1_prints_16_metres_or_17_yards()
    {
        await ReadyAsync();
        GoTo("/testers?hat=practice-hat");
        var page = Render<Page>();
        Assert.Contains("so its table is all estimates", page.Markup, StringComparison.Ordinal);
        page.Find("#size").Change("C");
        foreach (var (who, before, after, stitches, extra) in new[] { ("T1", "10.0", "3,9", "22", "0"), ("T2", "10.0", "4.2", "22", "0"), ("T3", "12.0", "4.7", "20", "2") })
        {
            page.Find("#tester").Change(who);
            page.Find("#label").Change("1 g / 2.5 yd");
            page.Find("#ws").Change("22");
            page.Find("#wr").Change("30");
            page.Find("#gs").Change(stitches);
            page.Find("#extra").Change(extra);
            page.Find("input[aria-label='S1, grams before']").Change(before);
            page.Find("input[aria-label='S1, grams after']").Change(after);
            await page.Find("form").SubmitAsync();
            page.WaitForAssertion(() => Assert.Contains($"{who} is saved", page.Markup, StringComparison.Ordinal));
        }

        var rows = page.FindAll("[aria-label='Results'] tbody tr");
        Assert.Equal(["kept", "kept", "set aside: gauge 20 stitches, written for 22 × 30"], rows.Select(r => r.LastElementChild!.TextContent));
        Assert.Contains("6.1 g, 13.9 m / 15.3 yd", rows[0].TextContent, StringComparison.Ordinal);
        var printed = page.FindAll("[aria-label='What to print'] tbody tr").ToDictionary(r => r.FirstElementChild!.TextContent, r => r.Children[3].TextContent, StringComparer.Ordinal);
        Assert.Equal("16 m / 17 ydtesters", printed["C"]);
        Assert.EndsWith("estimated", printed["D"], StringComparison.Ordinal);
        Assert.EndsWith("estimated", printed["E"], StringComparison.Ordinal);
        Assert.Contains("× 1.01", page.Find("[aria-label='Factors'] tbody").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_is_read_wrong_sheets_are_named_and_sound_ones_kept_only_when_told_to()
    {
        await ReadyAsync();
        GoTo("/testers?hat=practice-hat");
        var page = Render<Page>();
        page.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(
            "tester,size,label,part,before_g,after_g\nAnn,C,1 g / 2.5 yd,S1,10,4\nBea,Z,1 g / 2.5 yd,S1,10,4\n", "sheets.csv"));
        page.WaitForAssertion(() => Assert.Contains("1 sheet read: Ann, size C", page.Markup, StringComparison.Ordinal));
        Assert.Contains("Bea: size must be one of A, B, C, D, E.", page.Find(".field-message").TextContent, StringComparison.Ordinal);
        var store = Services.GetRequiredService<TesterStore>();
        Assert.Empty(await store.ListAsync("practice-hat", TestContext.Current.CancellationToken));
        await page.FindAll("button").Single(b => b.TextContent == "Save it").ClickAsync();
        page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll("[aria-label='Results'] tbody tr")));
        Assert.Equal("Ann", Assert.Single(await store.ListAsync("practice-hat", TestContext.Current.CancellationToken)).Description.Tester);
        await page.Find(".sheets button").ClickAsync();
        Assert.Empty(await store.ListAsync("practice-hat", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_testers_factor_is_offered_taken_over_with_its_source_and_switched_off_again()
    {
        await ReadyAsync();
        var store = Services.GetRequiredService<TesterStore>();
        TesterDescription Sheet(string who, decimal after, decimal? stitches = 28) => new()
        {
            Tester = who,
            Size = "C",
            Stripes = 6,
            Label = "100 g / 400 m",
            ScaleStepGrams = 0.1m,
            Stitches = stitches,
            Parts = [new("brim", 60, after)],
        };
        await store.AddAsync("side-to-side-sample", [Sheet("Ada", 42.0m), Sheet("Bea", 42.3m), Sheet("Off", 30, 24)], TestContext.Current.CancellationToken);
        GoTo("/testers");
        var page = Render<Page>();
        var offer = page.WaitForElement(".take-over p").TextContent;

        // 18.0 and 17.7 g are 72.0 and 70.8 m, less 0.3 m of ends 71.1 on average; the brim's stitches take 73.8 m.
        Assert.Contains("2 testers used × 0.96 the yarn in the stitches alone on average", offer, StringComparison.Ordinal);
        await page.FindAll(".take-over button").Single(b => b.TextContent == "Use this factor").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("2 testers of Side to side, for this hat alone (Ada, Bea), since", page.Find(".taken").TextContent, StringComparison.Ordinal));
        var taken = await UsageAsync();
        Assert.InRange(taken.Factor, 0.97, 1.05);
        Assert.True(taken.Calibrated);
        Assert.DoesNotContain(page.FindAll(".take-over button"), b => b.TextContent.StartsWith("Use what the sheets say now", StringComparison.Ordinal));

        // What is weighed in size C is a length, and stays; the offer speaks of the bare metres, and stays too.
        Assert.Equal(offer, page.Find(".take-over p").TextContent);
        await page.FindAll(".taken button")[0].ClickAsync();
        page.WaitForAssertion(() => Assert.StartsWith("Switched off", page.Find(".taken").TextContent, StringComparison.Ordinal));
        Assert.Equal(Usage.Uncalibrated, await UsageAsync());

        // A third sheet says something else: what was taken over stays until it is taken over again.
        await store.AddAsync("side-to-side-sample", [Sheet("Cem", 38)], TestContext.Current.CancellationToken);
        page = Render<Page>();
        await page.WaitForElement(".take-over button").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("3 testers of", page.Find(".taken").TextContent, StringComparison.Ordinal));
        Assert.True((await UsageAsync()).Factor > taken.Factor);
        await page.FindAll(".taken button")[1].ClickAsync();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".taken")));
    }

    [Fact]
    public async Task Three_testers_of_whom_one_wrote_ounces_leave_a_sound_table_and_the_slip_is_asked_about()
    {
        await ReadyAsync();
        var store = Services.GetRequiredService<TesterStore>();
        TesterDescription Sheet(string who, decimal before, decimal after) => new()
        {
            Tester = who,
            Size = "C",
            Stripes = 6,
            Label = "100 g / 400 m",
            ScaleStepGrams = 0.01m,
            Stitches = 28,
            Rows = 40,
            Parts = [new("brim", before, after)],
        };

        // 18.0 g, 18.3 g, and 18.2 g written as 0.64 oz.
        TesterDescription[] sheets = [Sheet("Ada", 60, 42), Sheet("Bea", 60, 41.7m), Sheet("Cem", 2.12m, 1.48m)];
        await store.AddAsync("side-to-side-sample", sheets, TestContext.Current.CancellationToken);
        GoTo("/testers");
        var page = Render<Page>();
        var cem = page.WaitForElements("[aria-label='Results'] tbody").Single(b => b.TextContent.Contains("Cem", StringComparison.Ordinal));
        Assert.Contains("Are these ounces, not grams?", cem.TextContent, StringComparison.Ordinal);
        Assert.Contains("2 testers used × 0.98 the yarn in the stitches alone", page.Find(".take-over p").TextContent, StringComparison.Ordinal);
        Assert.Single(page.FindAll(".take-over button"), b => b.TextContent == Terms.UseThisFactor);

        // Two who differ as much as these leave nothing to take over.
        await store.AddAsync("side-to-side-sample", [Sheet("Dot", 60, 47), Sheet("Eli", 60, 31.5m)], TestContext.Current.CancellationToken);
        page = Render<Page>();
        page.WaitForAssertion(() => Assert.Contains("We do not offer this factor", page.Find(".take-over").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll(".take-over button"));
    }

    private async Task<Usage> UsageAsync() =>
        ((HatDesign)(await Services.GetRequiredService<HatStore>().FindAsync("side-to-side-sample", TestContext.Current.CancellationToken))!).Usage;

    [Fact]
    public async Task What_cannot_be_read_is_named_and_what_was_typed_stays()
    {
        await ReadyAsync();
        GoTo("/testers");
        var page = Render<Page>();
        page.Find("#label").Change("thick");
        page.Find("input[aria-label='brim, grams before']").Change("20");
        page.Find("input[aria-label='brim, grams after']").Change("21");
        await page.Find("form").SubmitAsync();
        var said = string.Join(' ', page.FindAll(".field-message").Select(m => m.TextContent));
        Assert.Contains("Tester is missing", said, StringComparison.Ordinal);
        Assert.Contains("Label cannot be read", said, StringComparison.Ordinal);
        Assert.Contains("After must be less than before, for brim", said, StringComparison.Ordinal);
        Assert.Equal("20", page.Find("input[aria-label='brim, grams before']").GetAttribute("value"));
    }
}
