using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pages.WeighLeftovers;
using Xunit;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class DetailsFormTests
{
    [Fact]
    public void Only_what_was_typed_over_is_changed_and_what_another_browser_changed_meanwhile_stays()
    {
        var form = DetailsForm.Of(WeighLeftoversTests.Logged("Moss", 20, "50 g / 125 m"));
        (form.Name, form.Fibre) = ("Moss bank", "100% wool");
        var change = form.ReadChange(new FieldErrors())!;
        var after = change(new LeftoverDetails("Moss", null) { Bag = "Tin", Make = YarnMake.Drape, NotForHats = true });
        Assert.Equal(("Moss bank", "100% wool", "Tin", YarnMake.Drape, true), (after.Name, after.Fibre.ToString(), after.Bag, after.Make, after.NotForHats));
        Assert.Null(after.Ratio);
    }

    [Fact]
    public void What_is_logged_reads_back_the_same()
    {
        var logged = WeighLeftoversTests.Logged("Moss", 20, "4 oz / 190 yd", RatioSource.Guessed) with { Make = YarnMake.Drape, Class = WeightClass.Light, KeptBackFor = "mittens", Note = "two knots", Crumb = true };
        var read = DetailsForm.Of(logged).ReadDetails(new FieldErrors())!;
        Assert.Equal((logged.Name, logged.Code, logged.Ratio, logged.Make, logged.Class, logged.KeptBackFor, logged.Note, logged.Crumb), (read.Name, read.Code, read.Ratio, read.Make, read.Class, read.KeptBackFor, read.Note, read.Crumb));
    }
}
