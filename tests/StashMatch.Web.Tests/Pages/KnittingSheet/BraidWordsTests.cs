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
        Assert.StartsWith("Set-up, on the right side: knit 1 in the first colour, 1 in the second", words[0], StringComparison.Ordinal);
        Assert.StartsWith("Over, on the wrong side: hold both yarns at the back. Knit each stitch", words[1], StringComparison.Ordinal);
        Assert.DoesNotContain("purl", words[1], StringComparison.Ordinal);
        Assert.StartsWith("Under, on the right side: hold both yarns in front. Purl each stitch", words[2], StringComparison.Ordinal);
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
    [InlineData("side-to-side", "braid, knitted from the wrong side, yarns crossed over", "braid, purled, yarns crossed under")]
    [InlineData("brim-up-flat", "braid, knitted from the wrong side, yarns crossed over", "braid, purled, yarns crossed under")]
    [InlineData("brim-up-round", "braid, purled, yarns crossed over", "braid, purled, yarns crossed under")]
    public async Task The_row_list_says_the_same(string construction, string over, string under)
    {
        await ReadyAsync();
        GoTo("/hats");
        var page = Render<StashMatch.Web.Pages.DescribeHat.DescribeHat>();
        page.FindAll("label").Single(l => l.TextContent.Trim() == "knitted").ParentElement!.QuerySelector("select")!.Change(construction);
        var braid = page.FindAll("ol.rows li").First(li => li.TextContent.StartsWith("braid 1", StringComparison.Ordinal)).TextContent;
        Assert.Matches($"stitches, {over}; then 1 row of \\d+ stitches, {under}$", braid.Trim());
    }

    private static IReadOnlyList<string> Words(Construction construction)
    {
        var hat = Samples.SideToSide with { Construction = construction };
        var plan = hat.PlanOf("F", 5);
        return StepWords.Of(plan, plan.Parts.First(p => p.Kind == PartKind.Strand));
    }
}
