using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Hats;
using StashMatch.Store;
using Xunit;
using Page = StashMatch.Web.Pages.DescribeHat.DescribeHat;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.DescribeHat;

public sealed class DescribeHatTests : PageContext
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private HatStore Hats => Services.GetRequiredService<HatStore>();

    [Fact]
    public async Task Drawing_and_totals_follow_what_is_typed_and_the_hat_is_saved()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Assert.Contains("44 stitches × 188 rows", page.Markup, StringComparison.Ordinal);
        var before = page.Find("table tr td").TextContent;
        Type(page, "name", "Bobbin");
        Type(page, "stitches to 10 cm", "24");
        Assert.DoesNotContain("44 stitches", page.Markup, StringComparison.Ordinal);
        Assert.NotEqual(before, page.Find("section table tr td").TextContent);
        await ByLabel(page, "knitted").ChangeAsync("brim-up-flat");
        Assert.Contains("lines of decreases", page.Markup, StringComparison.Ordinal);
        await page.Find("form.hat-form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Bobbin is saved", page.Markup, StringComparison.Ordinal));
        var saved = (await Hats.ListAsync(Stop)).Single(h => !h.IsSample);
        var design = Assert.IsType<HatDesign>(saved.Hat);
        Assert.Equal((Construction.BrimUpFlat, 24m), (design.Construction, design.Gauge.StitchesPer10Cm));
    }

    [Fact]
    public async Task A_wrong_number_is_named_and_nothing_is_lost()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "rows to 10 cm", "4.000,5");
        Assert.Contains("Rows to 10 cm has more than one decimal sign", page.Find(".field-message").TextContent, StringComparison.Ordinal);
        Assert.Equal("4.000,5", ByLabel(page, "rows to 10 cm").GetAttribute("value"));
        Type(page, "rows to 10 cm", "40");
        Assert.Empty(page.FindAll(".field-message"));
    }

    [Theory]
    [InlineData("most stripes", "99999", "Most stripes must be a whole number from the least to 24.")]
    [InlineData("pom-pom takes, metres (empty for none)", "0", "The pom-pom must be a number over 0 and at most 1000.")]
    [InlineData("stitches to 10 cm", "", "Stitches to 10 cm is missing.")]
    [InlineData("for a head of, cm", "12", "The head fits no size of this hat.")]
    public async Task What_is_wrong_stands_beside_its_field_and_marks_it(string label, string typed, string message)
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, label, typed);
        var field = ByLabel(page, label);
        Assert.Equal("true", field.GetAttribute("aria-invalid"));
        Assert.Equal(typed, field.GetAttribute("value") ?? "");
        Assert.Equal(message, page.Find($"#{field.GetAttribute("aria-describedby")}").TextContent);
        Assert.Single(page.FindAll(".field-message"));
    }

    [Fact]
    public async Task Many_mistakes_are_all_said_each_beside_its_own_field()
    {
        await ReadyAsync();
        var page = Render<Page>();
        await ByLabel(page, "stripes").ChangeAsync("depths");
        foreach (var (label, typed) in new[] { ("stitches to 10 cm", "x"), ("rows to 10 cm", "900"), ("brim depth (empty for none)", "99"), ("depth of each, from the first", "2 x"), ("pom-pom takes, metres (empty for none)", "-1") })
        {
            Type(page, label, typed);
        }

        await ByLabel(page, "braids").ChangeAsync("beside-brim-too");
        await page.Find("[aria-label='head of size 2']").InputAsync("9");
        Assert.Equal(["stitches", "rows", "brim", "braids", "values", "pompom", "head-2"], page.FindAll("[aria-invalid=true]").Select(e => e.Id));
        Assert.Contains("Depth of each: number 2 must be a number", page.Find("#values-message").TextContent, StringComparison.Ordinal);
        Assert.Contains("“beside the brim too” is only for", page.Find("#braids-message").TextContent, StringComparison.Ordinal);
        Assert.Contains("Head of size 2 must be a number from 30 to 75", page.Find("#head-2-message").TextContent, StringComparison.Ordinal);
        Assert.True(page.Find("details.sizes").HasAttribute("open"));
        Assert.Contains("Correct the marked fields to save", page.Find(".save").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_hat_keeps_its_gauge_until_it_is_described_at_mine()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "my stitches to 10 cm", "26");
        Type(page, "my rows to 10 cm", "38");
        Assert.Contains("keeps 28 stitches and 40 rows", page.Find(".keeps").TextContent, StringComparison.Ordinal);
        await page.FindAll("button").Single(b => b.TextContent == "Use my gauge for this hat").ClickAsync();
        Assert.Equal(("26", "38"), (ByLabel(page, "stitches to 10 cm").GetAttribute("value"), ByLabel(page, "rows to 10 cm").GetAttribute("value")));
        Assert.Empty(page.FindAll(".keeps"));
    }

    [Fact]
    public async Task A_pasted_table_becomes_a_hat_and_copies_back_the_same()
    {
        await ReadyAsync();
        var page = Render<Page>();
        await page.FindAll("input[type=radio]")[1].ChangeAsync("on");
        page.Find("#table").Input("part\tyarn\tA\tB\nbrim\tM\t19\t20,9\nBraid 1 first colour\tS1\t2\t2,5\nbraid 1: second colour\tS2\t2\t2,5\nstripe 1\tS1\t10\t11\nstripe 2\tS2\t10\t11\ncrown\tM\t10\t11\n");
        Assert.Contains("whole hat", page.Markup, StringComparison.Ordinal);
        Type(page, "name", "Pasted");
        await page.Find("form.hat-form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Pasted is saved", page.Markup, StringComparison.Ordinal));
        var saved = (await Hats.ListAsync(Stop)).Single(h => !h.IsSample);
        Assert.Equal(20.9m * 0.9144m, Assert.IsType<PrintedHat>(saved.Hat).Sizes[1].Lines[0].Length);
        await page.Find("#copy").ChangeAsync(saved.Id);
        Assert.Contains(Assert.IsType<PrintedHat>(saved.Hat).Sizes[1].Lines, l => l.Part == "braid 1 strand b");
        Assert.Contains("braid 1 second colour\tS2\t2\t2.5", page.Find("#table").GetAttribute("value"), StringComparison.Ordinal);
        Assert.Contains("stripe 2\tS2\t10\t11", page.Find("#table").GetAttribute("value"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Own_gauge_shows_what_size_comes_out_and_a_head_picks_the_size()
    {
        await ReadyAsync();
        var page = Render<Page>();
        Type(page, "my stitches to 10 cm", "26");
        Type(page, "my rows to 10 cm", "38");
        // 188 rows at 38 to 10 cm: 49.5 cm; 44 stitches at 26: 16.9 cm.
        Assert.Contains("49.5 cm", page.Find(".said").TextContent, StringComparison.Ordinal);
        Assert.Contains("16.9 cm", page.Find(".said").TextContent, StringComparison.Ordinal);
        Type(page, "for a head of, cm", "58,6");
        Assert.Contains("What size G in", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_weighed_swatch_is_used_at_once_and_can_be_switched_off()
    {
        await ReadyAsync();
        var page = Render<Page>();
        var before = Assert.IsType<HatDesign>(await Hats.FindAsync("side-to-side-sample", Stop)).Usage;
        foreach (var (label, value) in new[] { ("stitches cast on", "40"), ("rows knitted", "50"), ("stitches to 10 cm", "28"), ("rows to 10 cm", "40"), ("the swatch weighs, grams", "8.2"), ("the yarn’s label", "100 g / 400 m") })
        {
            var id = page.FindAll("form.swatch-form:not(.finished-form) label").Single(l => l.TextContent == label).GetAttribute("for");
            await page.Find($"#{id}").InputAsync(value);
        }

        await page.Find("form.swatch-form:not(.finished-form)").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("% more yarn than most knitters, give or take", page.Markup, StringComparison.Ordinal));
        var after = Assert.IsType<HatDesign>(await Hats.FindAsync("side-to-side-sample", Stop)).Usage;
        Assert.True(after.Calibrated && after.Factor > before.Factor && after.Spread < before.Spread);
        Assert.Contains("a swatch of 40 × 50, 8.2 g of 100 g / 400 m: 7 % more yarn than most knitters", page.Markup, StringComparison.Ordinal);
        await page.FindAll("button").Single(b => b.TextContent.StartsWith("switch off", StringComparison.Ordinal)).ClickAsync();
        Assert.Equal(before, Assert.IsType<HatDesign>(await Hats.FindAsync("side-to-side-sample", Stop)).Usage);
    }

    [Fact]
    public async Task A_finished_hats_weight_is_used_like_a_swatch()
    {
        await ReadyAsync();
        var page = Render<Page>();
        await page.Find("#fin-hat").ChangeAsync("side-to-side-sample");
        foreach (var (id, value) in new[] { ("size", "C"), ("stripes", "6"), ("part", "brim"), ("grams", "21.5"), ("label", "100 g / 400 m") })
        {
            await page.Find($"#fin-{id}").InputAsync(value);
        }

        // 42 rounds of rib and 4 at half weight, 122 stitches of 13.19 mm each, a round picked up at 13.89 mm, an edge of 3 × 0.436 m: 73.8 m.
        // 86.0 m less 0.3 m of ends are 1.161 times that, and 1.161 / 1.10 is 6 % more.
        await page.Find("form.finished-form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal("a finished hat, size C, brim, 21.5 g of 100 g / 400 m: 6 % more yarn than most knitters", page.Find(".known li span").TextContent));
    }

    private static IElement ByLabel(IRenderedComponent<Page> page, string label)
    {
        var id = page.FindAll("label").First(l => l.TextContent == label).GetAttribute("for");
        return page.Find($"#{id}");
    }

    private static void Type(IRenderedComponent<Page> page, string label, string text) => ByLabel(page, label).Input(text);
}
