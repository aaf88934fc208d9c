using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

public sealed class WeightClassesTests
{
    // Edges of our own envelopes, metres per 100 g.
    [Theory]
    [InlineData(5000, WeightClass.Lace)]
    [InlineData(600, WeightClass.Lace)]
    [InlineData(599, WeightClass.SuperFine)]
    [InlineData(330, WeightClass.SuperFine)]
    [InlineData(329, WeightClass.Fine)]
    [InlineData(270, WeightClass.Fine)]
    [InlineData(269, WeightClass.Light)]
    [InlineData(200, WeightClass.Light)]
    [InlineData(199, WeightClass.Medium)]
    [InlineData(150, WeightClass.Medium)]
    [InlineData(149, WeightClass.Bulky)]
    [InlineData(100, WeightClass.Bulky)]
    [InlineData(99, WeightClass.SuperBulky)]
    [InlineData(45, WeightClass.SuperBulky)]
    [InlineData(44, WeightClass.Jumbo)]
    [InlineData(5, WeightClass.Jumbo)]
    public void A_label_falls_in_one_envelope(int metres, WeightClass expected) =>
        Assert.Equal(expected, WeightClasses.Guess(Ratio(metres)));

    [Fact]
    public void What_is_usual_for_a_class_lies_in_its_envelope() => Assert.All(
        Enum.GetValues<WeightClass>(),
        c => Assert.Equal(c, WeightClasses.Guess(Ratio(WeightClasses.TypicalMetresPer100Grams(c)))));

    [Fact]
    public void A_gauge_between_whole_stitches_counts_as_the_nearest()
    {
        Assert.Equal([WeightClass.SuperFine], WeightClasses.ForGauge(26.5m));
        Assert.Equal([WeightClass.Fine], WeightClasses.ForGauge(26.4m));
        Assert.Equal([WeightClass.Medium], WeightClasses.ForGauge(20.3m));
        Assert.Empty(WeightClasses.ForGauge(0));
        Assert.Empty(WeightClasses.ForGauge(41));
    }

    private static LabelRatio Ratio(decimal metres) => new(100, MassUnit.Grams, metres, LengthUnit.Metres, RatioSource.Printed);
}
