using CsCheck;
using StashMatch.Knitting.Quantities;
using Xunit;

namespace StashMatch.Knitting.Tests.Quantities;

public sealed class QuantityTests
{
    private static readonly Gen<long> Whole = Gen.Long[0, 1_000_000_000];

    [Fact]
    public void Units_are_the_exact_ones()
    {
        // International yard and pound of 1959; international inch.
        Assert.Equal(0.9144m, Metres.PerYard);
        Assert.Equal(28.349523125m, Grams.PerOunce);
        Assert.Equal(453.59237m, Grams.PerOunce * 16);
        Assert.Equal(2.54m, Centimetres.PerInch);
        Assert.Equal(20m, Centimetres.From(50.8m).Inches);
        Assert.Equal(100m, Metres.FromMillimetres(91_440).Yards);
    }

    [Fact]
    public void Nothing_is_a_valid_quantity()
    {
        Assert.Equal(0m, default(Grams).Value);
        Assert.Equal(0m, default(Metres).Value);
        Assert.Equal("0 m", default(Metres).ToString());
        Assert.Equal("23.5 g", Grams.From(23.5m).ToString());
    }

    [Fact]
    public void What_is_held_rounds_down_and_what_is_needed_rounds_up()
    {
        Assert.Equal(1_000, Metres.Held(1.0009m).Millimetres);
        Assert.Equal(1_001, Metres.Needed(1.0001).Millimetres);
        Assert.Equal(1_000, Metres.Needed(1.0000000001).Millimetres);
        Assert.Equal(3, Grams.From(0.0025m).Milligrams);
        Assert.Equal(1_101, Metres.FromMillimetres(1_000).WithAllowance(10.01m).Millimetres);
        Assert.Equal(1_100, Metres.FromMillimetres(1_000).WithAllowance(10).Millimetres);
    }

    [Fact]
    public void A_quantity_below_nought_is_a_mistake_in_the_program()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Grams.From(-0.001m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metres.Held(-0.001m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metres.Needed(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metres.Needed(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metres.FromMillimetres(1) - Metres.FromMillimetres(2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grams.FromMilligrams(1) - Grams.FromMilligrams(2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Centimetres.From(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Gauge.Of(3.9m, 30));
        Assert.Throws<ArgumentOutOfRangeException>(() => Gauge.Of(22, 81));
    }

    [Fact]
    public void What_is_shared_out_adds_up_to_what_was_weighed() => Gen.Select(Whole, Whole).Sample((a, b) =>
    {
        var (metres, more) = (Metres.FromMillimetres(a), Metres.FromMillimetres(b));
        var (grams, heavier) = (Grams.FromMilligrams(a), Grams.FromMilligrams(b));
        return metres + more == more + metres && metres + more - more == metres
            && grams + heavier == heavier + grams && grams + heavier - heavier == grams
            && (metres < more) == (a < b) && (metres >= more) == (a >= b)
            && Math.Sign(grams.CompareTo(heavier)) == Math.Sign(a.CompareTo(b));
    });

    [Fact]
    public void An_allowance_never_makes_a_need_smaller_and_is_under_a_millimetre_too_big() =>
        Gen.Select(Whole, Gen.Int[0, 1000]).Sample((need, tenths) =>
        {
            var planned = Metres.FromMillimetres(need).WithAllowance(tenths / 10m).Millimetres;
            var exact = need * (1000m + tenths) / 1000;
            return planned >= exact && planned < exact + 1;
        });
}
