using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

// Figures worked by hand from our own rule; the table's are in YarnTableTests.
public sealed class BrimRuleTests
{
    [Theory]
    [InlineData("100% wool", true, YarnMake.Plied, 84, BrimKeeping.Keeps, false, false)]
    [InlineData("100% wool", false, YarnMake.Drape, 95, BrimKeeping.Keeps, false, false)]
    [InlineData("100% wool", true, YarnMake.Singles, 74, BrimKeeping.Relaxes, false, false)]
    [InlineData("100% viscose", false, YarnMake.Singles, 5, BrimKeeping.Prone, false, false)]
    [InlineData("60% wool, 40% unknown", false, YarnMake.Plied, 80, BrimKeeping.Keeps, true, false)]
    [InlineData("50% wool, 50% unknown", false, YarnMake.Plied, 75, BrimKeeping.Relaxes, false, true)]
    [InlineData("unknown", false, YarnMake.Plied, 50, BrimKeeping.Prone, false, true)]
    [InlineData("48% superwash, 50% acrylic, 2% elastane", false, YarnMake.Plied, 74.3, BrimKeeping.Keeps, false, false)]
    [InlineData("49% superwash, 50% acrylic, 1% elastane", false, YarnMake.Plied, 74.4, BrimKeeping.Relaxes, false, false)]
    [InlineData("98% wool, 2% elastane", false, YarnMake.Plied, 100, BrimKeeping.Keeps, false, false)]
    [InlineData("70% wool, 30% alpaca", false, YarnMake.Plied, 79, BrimKeeping.Relaxes, true, false)]
    [InlineData("90% acrylic, 10% silk", false, YarnMake.Plied, 62, BrimKeeping.Relaxes, true, false)]
    [InlineData("90% wool, 10% alpaca", false, YarnMake.Singles, 83, BrimKeeping.Keeps, true, false)]
    [InlineData("91% wool, 9% alpaca", false, YarnMake.Singles, 83.7, BrimKeeping.Keeps, false, false)]
    [InlineData("10% wool, 90% lyocell", false, YarnMake.Plied, 28, BrimKeeping.Prone, false, false)]
    public void A_yarn_is_rated_for_a_brim(string fibre, bool superwash, YarnMake make, double index, BrimKeeping keeping, bool close, bool unknown)
    {
        Assert.True(FibreBlend.TryParse(fibre, out var blend, out var message), message);
        var rating = BrimRule.Rate(blend, superwash, make);
        Assert.Equal(((decimal)index, keeping, close, unknown), (Math.Round(rating.Index, 1), rating.Keeping, rating.CloseCall, rating.FibreUnknown));
    }
}
