using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

public sealed class KnownKnitterTests
{
    // By hand, nine times in ten, a printed label, a fine scale: a known knitter √(5² + 1.5² + 2² + 3²) = 6.34 %, × 1.2816, e^ = 1.0847 of the need;
    // one nobody has weighed √(12² + 1.5² + 2² + 3²) = 12.61 %, 1.1754.
    [Theory]
    [InlineData(1.080, Verdict.OnlyJust, Why.Chance)]
    [InlineData(1.089, Verdict.OnlyJust, Why.NotCalibrated)]
    [InlineData(1.170, Verdict.OnlyJust, Why.NotCalibrated)]
    [InlineData(1.180, Verdict.Yes, Why.Covered)]
    public void Where_knowing_the_knitter_would_make_it_a_yes_that_is_said(double times, Verdict verdict, Why why)
    {
        var hat = Samples.SideToSide with { Braids = new Braids() };
        var needs = hat.Needs("C", 6);
        var ground = needs.Parts.Where(p => p.Kind is PartKind.Brim or PartKind.Stripe).Sum(p => (needs.Usage.Factor * p.BareMetres)) + 0.3;
        var question = new Question(hat, "C", [Samples.OfMetres("ground", (decimal)(times * ground)), Samples.OfMetres("thread", 60)])
        {
            Stripes = 6,
            Arrangement = Arrangement.OneGround,
            AllowancePercent = 0,
        };
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        Assert.Equal((verdict, why), (answer.Verdict, answer.Why));
    }
}
