using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class YarnLookTests
{
    [Fact]
    public void Fibres_stand_off_in_the_order_a_hand_feels_them()
    {
        double[] order = [Halo("cotton"), Halo("merino", superwash: true), Halo("merino"), Halo("cashmere"), Halo("alpaca"), Halo("mohair")];
        Assert.Equal(order.Order(), order);
        Assert.Equal(order.Length, order.Distinct().Count());
    }

    [Fact]
    public void A_blend_lies_between_and_singles_are_hairier_than_plied()
    {
        Assert.InRange(Halo("50% alpaca, 50% cotton"), Halo("cotton") + 0.2, Halo("alpaca") - 0.2);
        Assert.True(YarnLook.HaloOf(FibreBlend.Unknown, false, YarnMake.Singles) > YarnLook.UnknownHalo);
        Assert.Equal(YarnLook.UnknownHalo, YarnLook.HaloOf(FibreBlend.Unknown, false, YarnMake.Plied));
    }

    private static double Halo(string text, bool superwash = false) =>
        FibreBlend.TryParse(text, out var blend, out var why) ? YarnLook.HaloOf(blend, superwash, YarnMake.Plied) : throw new InvalidOperationException(why);
}
