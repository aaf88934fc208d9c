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

    [Theory]
    [InlineData("1", WeightClass.SuperFine)]
    [InlineData("fingering", WeightClass.SuperFine)]
    [InlineData("Fingering (4-ply)", WeightClass.SuperFine)]
    [InlineData(" 4 ply ", WeightClass.SuperFine)]
    [InlineData("Super Fine", WeightClass.SuperFine)]
    [InlineData("dk", WeightClass.Light)]
    [InlineData("Aran", WeightClass.Medium)]
    [InlineData("chunky", WeightClass.Bulky)]
    [InlineData("super bulky", WeightClass.SuperBulky)]
    public void A_class_is_read_by_its_number_or_by_what_people_call_it(string typed, WeightClass expected)
    {
        Assert.True(WeightClasses.TryRead(typed, out var read));
        Assert.Equal(expected, read);
    }

    [Theory]
    [InlineData("")]
    [InlineData("8")]
    [InlineData("thick")]
    [InlineData("(4-ply)")]
    public void What_is_no_class_is_not_read(string typed) => Assert.False(WeightClasses.TryRead(typed, out _));

    [Fact]
    public void No_word_means_two_classes() => Assert.All(
        Enum.GetValues<WeightClass>().SelectMany(c => WeightClasses.CalledOf(c).Append(WeightClasses.Name(c)).Select(word => (word, c))),
        w => Assert.True(WeightClasses.TryRead(w.word, out var read) && read == w.c, w.word));

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
