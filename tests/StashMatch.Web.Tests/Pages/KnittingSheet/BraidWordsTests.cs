using Bunit;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests;
using StashMatch.Web.Pages.KnittingSheet;
using Xunit;

namespace StashMatch.Web.Tests.Pages.KnittingSheet;

/// <summary>
/// A braid's bumps lie on the right side. Set-up is worked from the right side, so in flat work the row after it is worked from the wrong side, where
/// a knitted stitch shows its bump on the right side; the third row is a right-side row again and is purled. In the round both are purled.
/// </summary>
public sealed class BraidWordsTests : PageContext
{
    [Theory]
    [InlineData(Construction.SideToSide)]
    [InlineData(Construction.BrimUpFlat)]
    public void In_rows_the_wrong_side_row_of_a_braid_is_knitted_with_the_strands_on_the_right_side(Construction construction)
    {
        var words = Words(construction);
        Assert.Equal(3, words.Count);
        Assert.StartsWith("Set-up, on the right side: knit 1 of strand a, knit 1 of strand b", words[0], StringComparison.Ordinal);
        Assert.StartsWith("Over, on the wrong side: hold both strands at the back, which is the right side, and knit each stitch", words[1], StringComparison.Ordinal);
        Assert.DoesNotContain("purl", words[1], StringComparison.Ordinal);
        Assert.StartsWith("Under, on the right side: hold both strands in front and purl each stitch", words[2], StringComparison.Ordinal);
    }

    [Fact]
    public void In_the_round_both_are_purled()
    {
        var words = Words(Construction.BrimUpRound);
        Assert.StartsWith("Over: purl each stitch", words[1], StringComparison.Ordinal);
        Assert.StartsWith("Under: purl each stitch", words[2], StringComparison.Ordinal);
        Assert.All(words, w => Assert.DoesNotContain("wrong side", w, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("side-to-side", "knit on the wrong side, strands over", "purl, strands under")]
    [InlineData("brim-up-flat", "knit on the wrong side, strands over", "purl, strands under")]
    [InlineData("brim-up-round", "purl, strands over", "purl, strands under")]
    public async Task The_row_list_says_the_same(string construction, string over, string under)
    {
        await ReadyAsync();
        GoTo("/hats");
        var page = Render<StashMatch.Web.Pages.DescribeHat.DescribeHat>();
        page.FindAll("label").Single(l => l.TextContent.Trim() == "knitted").ParentElement!.QuerySelector("select")!.Change(construction);
        var braid = page.FindAll("ol.rows li").First(li => li.TextContent.StartsWith("braid 1", StringComparison.Ordinal)).TextContent;
        Assert.EndsWith($"stitches {over}, then 1 × {braid.Split(" × ")[^1].Split(' ')[0]} stitches {under}", braid.Trim(), StringComparison.Ordinal);
    }

    private static IReadOnlyList<string> Words(Construction construction)
    {
        var hat = Samples.SideToSide with { Construction = construction };
        var plan = hat.PlanOf("F", 5);
        return StepWords.Of(plan, plan.Parts.First(p => p.Kind == PartKind.Strand));
    }
}
