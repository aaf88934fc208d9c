using Bunit;
using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;
using Xunit;

namespace StashMatch.Web.Tests.Pieces;

public sealed class VerdictThreadTests : BunitContext
{
    [Theory]
    [InlineData(Verdict.Yes, "yes", 4.5)]
    [InlineData(Verdict.OnlyJust, "only just", 1.4)]
    [InlineData(Verdict.No, "no", 3.4)]
    public void The_verdict_is_a_word_and_its_thread_is_whole_thin_or_broken(Verdict verdict, string word, double width)
    {
        var piece = Render<VerdictThread>(p => p.Add(t => t.Verdict, verdict));
        Assert.Equal(word, piece.Find(".word").TextContent);
        var thread = piece.Find("svg.thread path");
        Assert.Equal(width, double.Parse(thread.GetAttribute("stroke-width")!, System.Globalization.CultureInfo.InvariantCulture));

        // A thread that is drawn in one go is whole; a broken one starts again on the far side of its gap.
        Assert.Equal(verdict == Verdict.No, thread.GetAttribute("d")!.IndexOf('M', 1) > 0);
        Assert.Equal("true", piece.Find("svg.thread").GetAttribute("aria-hidden"));
    }
}
