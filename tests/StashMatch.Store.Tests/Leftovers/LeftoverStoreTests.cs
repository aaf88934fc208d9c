using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Leftovers;

public sealed class LeftoverStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_weighed_comes_back_as_it_was_printed()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var ratio = new LabelRatio(4, MassUnit.Ounces, 205.5m, LengthUnit.Yards, RatioSource.Measured);
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss("Wellington") with { Ratio = ratio, Make = YarnMake.Singles, Superwash = true, Lot = "7" }, cancel: Stop);
        var logged = Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Equal((id, "Wellington", "We"), (logged.Id, logged.Name, logged.Code));
        Assert.Equal(ratio, logged.Ratio);
        Assert.Equal((YarnMake.Singles, true, "7"), (logged.Make, logged.Superwash, logged.Lot));
    }

    [Fact]
    public async Task Weighings_are_appended_and_the_last_one_counts()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        Assert.True(await shelf.Leftovers.ReweighAsync(id, new Weighing(Grams.From(12), default, Grams.From(1)), Stop));
        var logged = Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Equal((2, 12m), (logged.Weighings, logged.Weighing.Net.Value));
        await using var context = shelf.Open();
        var first = await context.Weighings.AsTracking().FirstAsync(Stop);
        first.GrossMilligrams = 1;
        await Assert.ThrowsAsync<InvalidOperationException>(() => context.SaveChangesAsync(Stop));
    }

    [Fact]
    public async Task One_key_logs_once_even_when_asked_many_times_at_once()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var ids = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => shelf.Leftovers.WeighAsync(Shelf.Moss(), "evening", Stop)));
        Assert.Single(ids.Distinct(StringComparer.Ordinal));
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task Another_owner_sees_nothing_and_writes_nothing()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using var other = await Shelf.ReadyAsync(shelf.Folder, new Owner(Guid.NewGuid()));
        Assert.Empty(await other.Leftovers.ListAsync(Stop));
        Assert.False(await other.Leftovers.RemoveAsync(id, Stop));
        await using var context = other.Open();
        var row = await context.Leftovers.IgnoreQueryFilters().AsTracking().FirstAsync(Stop);
        row.Name = "mine now";
        await Assert.ThrowsAsync<InvalidOperationException>(() => context.SaveChangesAsync(Stop));
        Assert.Equal("Moss", Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Name);
    }

    [Fact]
    public async Task Two_who_change_one_leftover_at_once_get_one_winner()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using var one = shelf.Open();
        await using var two = shelf.Open();
        var (a, b) = (await one.Leftovers.AsTracking().FirstAsync(Stop), await two.Leftovers.AsTracking().FirstAsync(Stop));
        (a.Note, b.Note) = ("first", "second");
        await one.SaveChangesAsync(Stop);
        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => two.SaveChangesAsync(Stop));
        Assert.Equal("first", Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Note);
    }

    [Fact]
    public async Task Removed_and_knitted_up_leftovers_can_be_put_back()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await shelf.Leftovers.KnitUpAsync(id, Stop);
        Assert.Empty(await shelf.Leftovers.ForHatsAsync(Stop));
        await shelf.Leftovers.RemoveAsync(id, Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
        Assert.True(await shelf.Leftovers.PutBackAsync(id, Stop));
        Assert.True(Assert.Single(await shelf.Leftovers.ListAsync(Stop)).KnittedUp);
        Assert.True(await shelf.Leftovers.PutBackAsync(id, Stop));
        Assert.Single(await shelf.Leftovers.ForHatsAsync(Stop));
    }

    [Fact]
    public async Task The_demo_loads_once_and_stays_away_when_cleared()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Demo.LoadOnceAsync(Stop);
        await shelf.Demo.LoadOnceAsync(Stop);
        var list = await shelf.Leftovers.ListAsync(Stop);
        Assert.Equal(24, list.Count);
        Assert.Equal("Oatcake", list[0].Name);
        Assert.Equal(24, list.Select(l => l.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(23, list.Count(l => l.ForHats));
        Assert.Equal(24, await shelf.Demo.RemoveAsync(Stop));
        await shelf.Demo.LoadOnceAsync(Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public void Two_letters_come_from_the_name_and_never_twice()
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        Assert.Equal("Hr", TwoLetters.For("Hearth rug", taken));
        Assert.Equal("Oa", TwoLetters.For("Oatcake", taken));
        for (var i = 0; i < 600; i++)
        {
            Assert.True(taken.Add(TwoLetters.For("Oatcake", taken)));
        }

        Assert.Matches("^[A-Z][a-z]$", TwoLetters.For("1234", taken));
    }
}
