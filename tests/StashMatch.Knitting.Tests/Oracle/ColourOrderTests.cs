using StashMatch.Knitting.Matching;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The order of colours against a model that settles all four tiers at once.</summary>
public sealed class ColourOrderTests
{
    [Theory]
    [InlineData(ColourOrder.Gradient)]
    [InlineData(ColourOrder.Contrast)]
    public void The_order_of_colours_lowers_nothing_else_and_is_within_three_per_cent_of_the_best_nine_times_in_ten(ColourOrder order)
    {
        var (settled, near) = (0, 0);
        Parallel.For(0, 24, new ParallelOptions { CancellationToken = TestContext.Current.CancellationToken, MaxDegreeOfParallelism = 2 }, seed =>
        {
            var question = Instances.Tied(10 + (seed % 5), 4 + (seed % 3), seed);
            var (any, ordered) = (Ask(question), Ask(question with { ColourOrder = order }));
            var sheet = Sheet.Of(question, any.Hat);
            var (before, after) = (Comparison.BallOf(sheet, any.Parts), Comparison.BallOf(sheet, ordered.Parts));
            Assert.Equal((any.Verdict, any.Why, any.Reach, any.Sureness, any.Short, any.ProvenBest), (ordered.Verdict, ordered.Why, ordered.Reach,
                ordered.Sureness, ordered.Short, ordered.ProvenBest));
            if (any.Verdict == Verdict.No || !any.ProvenBest)
            {
                return;
            }

            var rungs = new Rungs(sheet);
            var (word, rung, keeps) = rungs.Judge(sheet.LoadsOf(before));
            var bears = keeps ? rungs.Kept(word, rung) : rungs.Bears(word, rung);
            var (width, worth) = (sheet.WidthOf(before), sheet.Worth(bears, before));
            Assert.Null(sheet.Broken(after, bears, width));
            Assert.Equal(worth, sheet.Worth(bears, after));
            var gradient = order == ColourOrder.Gradient;
            var best = ColourOrderModel.Solve(sheet, bears, width, worth, gradient, sheet.SeamDiffers(after));
            if (best.Proof != Proof.Best)
            {
                return;
            }

            Assert.Equal(best.Value, ColourOrderModel.SumOf(sheet, best.BallOf, gradient));
            var (ours, sign) = (ColourOrderModel.SumOf(sheet, after, gradient), gradient ? 1 : -1);
            Assert.True(sign * (ours - best.Value) >= 0, $"{seed}: {ours} is better than the best, {best.Value}");
            Interlocked.Increment(ref settled);
            Interlocked.Add(ref near, Math.Abs(ours - best.Value) <= 0.03 * best.Value ? 1 : 0);
        });
        TestContext.Current.TestOutputHelper!.WriteLine($"{order}: {near} of {settled} within 3 %");
        Assert.True(settled >= 15, $"{settled} settled");
        Assert.True(near >= 0.9 * settled, $"{near} of {settled} within 3 %");
    }

    private static Answer Ask(Question question) =>
        Matcher.TryAnswer(question, out var answer, out var why, TestContext.Current.CancellationToken) ? answer
            : throw new InvalidOperationException(why.Reason);
}
