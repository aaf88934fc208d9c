using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Store.Tests.Knitter;

public sealed class SettingsStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_somebody_prefers_comes_back_and_before_that_the_usual()
    {
        await using var shelf = await Shelf.ReadyAsync();
        Assert.Equal((LengthUnit.Metres, 1m, 10m), (await shelf.Settings.ReadAsync(Stop)) is var usual ? (usual.FirstUnit, usual.ScaleStep.Value, usual.AllowancePercent) : default);
        var wanted = new Settings { FirstUnit = LengthUnit.Yards, ScaleStep = Grams.From(0.1m), AllowancePercent = 7.5m };
        await shelf.Settings.SaveAsync(new Settings { AllowancePercent = 50 }, Stop);
        await shelf.Settings.SaveAsync(wanted, Stop);
        Assert.Equal(wanted, await shelf.Settings.ReadAsync(Stop));
    }

    [Fact]
    public async Task What_cannot_be_is_named_and_not_saved()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var wrong = new Settings { FirstUnit = (LengthUnit)7, ScaleStep = default, AllowancePercent = 101 };
        var errors = new FieldErrors();
        wrong.Check(errors);
        Assert.Equal(["allowancePercent", "firstUnit", "scaleStepGrams"], errors.ByField.Keys);
        await Assert.ThrowsAsync<ArgumentException>(() => shelf.Settings.SaveAsync(wrong, Stop));
        Assert.Equal(new Settings(), await shelf.Settings.ReadAsync(Stop));
    }
}
