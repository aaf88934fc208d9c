using StashMatch.Knitting.Quantities;
using StashMatch.Web.Pieces;
using Xunit;

namespace StashMatch.Web.Tests.Pieces;

public sealed class ShownTests
{
    [Fact]
    public void What_is_left_is_to_nearest_and_a_need_up_each_unit_from_the_millimetres()
    {
        // 1.302 m is 1.4239 yd; 20.331 m is 22.2342 yd.
        Assert.Equal("1.3 m / 1.4 yd", Shown.Both(Metres.FromMillimetres(1302)));
        Assert.Equal("1.4 m / 1.5 yd", Shown.BothUp(Metres.FromMillimetres(1302)));
        Assert.Equal("20.4 m / 22.3 yd", Shown.BothUp(Metres.FromMillimetres(20331)));
        Assert.Equal("20.0 m / 21.9 yd", Shown.Both(Metres.FromMillimetres(20000)));
        Assert.Equal("20.0 m / 21.9 yd", Shown.BothUp(Metres.FromMillimetres(20000)));
    }

    [Fact]
    public void The_least_shortfall_shows_as_a_tenth_never_as_nothing() =>
        Assert.Equal("0.1 m / 0.1 yd", Shown.BothUp(Metres.FromMillimetres(1)));

    [Theory]
    [InlineData(0, "0 %")]
    [InlineData(0.004, "under 1 %")]
    [InlineData(0.799, "79 %")]
    [InlineData(0.9951, "over 99 %")]
    public void A_chance_is_rounded_to_the_safe_side(double chance, string shown) => Assert.Equal(shown, Shown.Chance(chance));
}
