using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pages.WeighLeftovers;
using Xunit;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class WeighFormTests
{
    [Theory]
    [InlineData("34", "", "0.1", "100 g/210 yd", "65.3 m / 71.4 yd")]
    [InlineData("18.6", "", "0.1", "20 g/80 m", "74.4 m / 81.4 yd")]
    [InlineData("27.5", "4.0", "0.1", "50 g/125 m", "58.8 m / 64.2 yd")]
    [InlineData("15", "", "0.1", "4 oz/190 yd", "23.0 m / 25.1 yd")]
    [InlineData("6", "", "1", "100 g/210 yd", "11.5 m / 12.6 yd, give or take 8\u00A0%")]
    [InlineData("1.2", "", "0.1", "", "1.2 g. No label yet, so no hat can use it.")]
    public void An_evening_of_six_balls_shows_both_units_and_no_false_precision(string grams, string tare, string step, string label, string shown)
    {
        var form = new WeighForm { Name = "Ball", Grams = grams, Tare = tare, Step = step, Label = label };
        Assert.Equal(shown, form.Live());
        Assert.NotNull(form.Read(new FieldErrors()));
    }

    [Theory]
    [InlineData("1,5")]
    [InlineData("1.5")]
    [InlineData("1½")]
    [InlineData("１．５")]
    [InlineData(" 1 1/2 ")]
    [InlineData("1.5 g")]
    [InlineData("1,5Grams ")]
    public void Grams_are_read_as_people_type_them(string grams)
    {
        var leftover = new WeighForm { Name = "Ball", Grams = grams, Step = "0.1" }.Read(new FieldErrors());
        Assert.Equal(1.5m, leftover!.Weighing.Net.Value);
    }

    [Theory]
    [InlineData("")]
    [InlineData("-3")]
    [InlineData("NaN")]
    [InlineData("1e308")]
    [InlineData("1.234,5")]
    [InlineData("0")]
    [InlineData("g")]
    [InlineData("12 oz")]
    [InlineData("5001")]
    public void A_number_that_is_none_is_a_message_and_never_a_wrong_gram(string grams)
    {
        var form = new WeighForm { Name = "Ball", Grams = grams, Label = "100 g/400 m" };
        var errors = new FieldErrors();
        Assert.Null(form.Read(errors));
        Assert.Equal(["grams"], errors.ByField.Keys);
        Assert.Null(form.Live());
    }

    [Fact]
    public void Every_field_that_cannot_be_read_is_named_at_once()
    {
        var form = new WeighForm { Name = " ", Grams = "5", Tare = "5", Label = "100 g", Class = "8", Fibre = "80% merino, 30% nylon", Colour = "moonlight", Care = "boil it", Bag = new string('b', 81) };
        var errors = new FieldErrors();
        Assert.Null(form.Read(errors));
        Assert.Equal(["bag", "care", "colour", "fibre", "label", "name", "tareGrams", "weightClass"], errors.ByField.Keys);
    }

    [Fact]
    public void A_scale_step_over_a_tenth_of_the_reading_is_minded_and_stops_nobody()
    {
        Assert.Null(new WeighForm { Name = "Ball", Grams = "10", Step = "1" }.Mind());
        var form = new WeighForm { Name = "Ball", Grams = "9", Step = "1" };
        Assert.Contains("Your scale is too coarse", form.Mind(), StringComparison.Ordinal);
        Assert.NotNull(form.Read(new FieldErrors()));
    }

    [Fact]
    public void The_core_counts_against_the_reading()
    {
        Assert.Null(new WeighForm { Grams = "12", Step = "1" }.Mind());
        Assert.Contains("Your scale is too coarse", new WeighForm { Grams = "12", Tare = "3", Step = "1" }.Mind(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_finer_than_the_scale_step_is_asked_about()
    {
        Assert.Contains("it shows every 1 g", new WeighForm { Grams = "34.5" }.Mind(), StringComparison.Ordinal);
        Assert.Null(new WeighForm { Grams = "34.5", Step = "0.1" }.Mind());
    }

    [Fact]
    public void Ten_metres_on_a_coarse_scale_are_too_few_to_measure_by()
    {
        var form = new WeighForm { Grams = "38", Step = "1", Label = "4 g / 10 m", From = RatioSource.Measured };
        Assert.Contains("Measure a longer one: 20 to 40 m", form.Mind(), StringComparison.Ordinal);
        form.Label = "12 g / 30 m";
        Assert.Null(form.Mind());
        Assert.StartsWith("95.0 m / 103.9 yd", form.Live(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("38", "1", "2.5 g / 10 m", RatioSource.Measured, "152.0 m / 166.2 yd, give or take 20\u00A0%")]
    [InlineData("38", "0.1", "4.1 g / 10 m", RatioSource.Measured, "92.7 m / 101.4 yd, give or take 2\u00A0%")]
    [InlineData("38", "1", "100 g / 400 m", RatioSource.Guessed, "152.0 m / 166.2 yd, give or take 25\u00A0%")]
    [InlineData("38", "1", "100 g / 400 m", RatioSource.Printed, "152.0 m / 166.2 yd, give or take 1\u00A0%")]
    public void What_the_ratio_may_be_off_counts_beside_the_scale(string grams, string step, string label, RatioSource from, string shown) =>
        Assert.Equal(shown, new WeighForm { Name = "Ball", Grams = grams, Step = step, Label = label, From = from }.Live());

    [Fact]
    public void A_lost_label_is_measured_off_and_marked_so()
    {
        var form = new WeighForm { Name = "Blue-grey", Grams = "38.0", Step = "0.1", Label = "4.1 g / 10 m", From = RatioSource.Measured };
        Assert.StartsWith("92.7 m / 101.4 yd", form.Live(), StringComparison.Ordinal);
        var leftover = form.Read(new FieldErrors())!;
        Assert.Equal(RatioSource.Measured, leftover.Ratio!.Source);
        Assert.True(leftover.Fibre.IsUnknown);
    }

    [Fact]
    public void The_next_ball_starts_empty_but_for_the_scale_and_the_bag()
    {
        var form = new WeighForm { Name = "Moss", Grams = "6", Step = "0.1", Label = "100 g/400 m", From = RatioSource.Guessed, Superwash = true, Bag = "Peg bag" };
        form.Next();
        Assert.Equal(("", "", "", "0.1", RatioSource.Printed, false, "Peg bag"), (form.Name, form.Grams, form.Label, form.Step, form.From, form.Superwash, form.Bag));
    }

    [Fact]
    public void A_borrowed_ratio_says_whose_it_is_until_it_is_typed_over()
    {
        var form = new WeighForm { Name = "Second", Grams = "12", Step = "0.1" };
        form.SameYarnAs(WeighLeftoversTests.Logged("Moss bank", 20, "50 g / 125 m"));
        Assert.Equal("50 g / 125 m", form.Label);
        Assert.Contains("is Moss bank’s label", form.Borrowed(), StringComparison.Ordinal);
        form.Label = "50 g / 120 m";
        Assert.Null(form.Borrowed());
    }

    [Fact]
    public void What_was_typed_before_the_page_was_lost_is_put_back()
    {
        var form = new WeighForm { Step = "1" };
        form.PutBack(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["name"] = "Moss",
            ["grams"] = "1,5",
            ["core-or-bowl"] = "4",
            ["label"] = "4 oz / 190 yd",
            ["scale-step"] = "0.1",
            ["from"] = "Measured",
            ["superwash"] = "yes",
            ["singles"] = "",
            ["bag"] = "Tin",
            ["stranger"] = "x",
        });
        Assert.Equal(("Moss", "1,5", "4", "4 oz / 190 yd", "0.1", RatioSource.Measured, true, false, "Tin"), (form.Name, form.Grams, form.Tare, form.Label, form.Step, form.From, form.Superwash, form.Singles, form.Bag));
    }

    [Theory]
    [InlineData("dark green", "#27512F")]
    [InlineData("#5b7a3a", "#5B7A3A")]
    public void A_colour_is_typed_as_a_plain_word_or_a_code(string typed, string code) =>
        Assert.Equal(code, new WeighForm { Name = "Moss", Grams = "6", Colour = typed }.Read(new FieldErrors())!.Colour!.Value.Hex);

    [Fact]
    public void An_entry_has_one_key_until_something_else_is_typed_or_the_next_ball_comes()
    {
        var form = new WeighForm { Name = "Moss", Grams = "6" };
        var key = form.Once();
        Assert.Equal(key, form.Once());
        form.Grams = "6.5";
        var other = form.Once();
        Assert.NotEqual(key, other);
        form.Next();
        (form.Name, form.Grams) = ("Moss", "6.5");
        Assert.NotEqual(other, form.Once());
    }
}
