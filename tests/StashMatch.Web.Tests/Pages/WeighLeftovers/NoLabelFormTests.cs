using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pages.WeighLeftovers;
using Xunit;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class NoLabelFormTests
{
    private static Weighing Ball(decimal step) => new(Grams.From(38), default, Grams.From(step));

    [Fact]
    public void Ten_metres_of_4_1_grams_are_244_metres_to_100_grams_and_the_ball_about_92_7()
    {
        var form = new NoLabelForm { Length = "10", Grams = "4,1" };
        Assert.Equal("244 m / 267 yd to 100 g, give or take 2 %; about 92.7 m / 101.4 yd in all", form.Told(Ball(0.1m), 0.1m));
        Assert.Null(form.Advice(0.1m));
        Assert.Equal(RatioSource.Measured, form.Measured(new FieldErrors())!.Source);
    }

    [Fact]
    public void On_a_scale_of_whole_grams_a_longer_length_is_asked_for()
    {
        var form = new NoLabelForm { Length = "10", Grams = "4" };
        Assert.Equal("250 m / 273 yd to 100 g, give or take 12.5 %", form.Told(null, 1));
        Assert.Contains("Measure a longer one: 20 to 40 m / 22 to 44 yd", form.Advice(1), StringComparison.Ordinal);
        (form.Length, form.Grams) = ("40", "16");
        Assert.Null(form.Advice(1));
    }

    [Fact]
    public void Yards_are_measured_as_well_as_metres()
    {
        var form = new NoLabelForm { Length = "10", Grams = "4", Unit = LengthUnit.Yards };
        Assert.Equal("4 g / 10 yd", form.Measured(new FieldErrors())!.ToString());
        Assert.StartsWith("229 m / 250 yd to 100 g", form.Told(null, 0.1m), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "4", "length measured off")]
    [InlineData("10", "", "its grams")]
    [InlineData("10", "four", "its grams")]
    [InlineData("10", "400", "its grams")]
    public void What_cannot_be_read_is_named_by_its_field(string length, string grams, string field)
    {
        var errors = new FieldErrors();
        var form = new NoLabelForm { Length = length, Grams = grams };
        Assert.Null(form.Measured(errors));
        Assert.Equal([field], errors.ByField.Keys);
        Assert.Null(form.Told(Ball(1), 1));
    }

    [Fact]
    public void A_guess_by_thickness_is_marked_guessed()
    {
        Assert.Null(new NoLabelForm().Guessed());
        var guess = new NoLabelForm { Class = "1" }.Guessed()!;
        Assert.Equal((RatioSource.Guessed, WeightClass.SuperFine), (guess.Source, WeightClasses.Guess(guess)));
    }
}
