using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Small questions of every kind answered by looking at every possibility.</summary>
public sealed class BruteForceTests
{
    private static readonly int Many = Long.Form ? 1_000 : 120;

    [Fact]
    public void Every_tier_is_what_looking_at_everything_says()
    {
        var cancel = TestContext.Current.CancellationToken;
        var proofs = Proofs.Of(Many, SmallInstances.Of, q => Comparison.Of(q, (sheet, _) => Everything.Of(sheet), (question, hat) =>
            Everything.WhyOf(question, hat), cancel));
        ProofFigures.Tell("up to five leftovers, every possibility looked at: all equal where proven", Proofs.Percent(proofs.Words, proofs.Asked),
            "500 and more, all equal");
        Assert.True(proofs.Words >= 0.99 * proofs.Asked, $"{proofs.Words} of {proofs.Asked} proven");
    }
}
