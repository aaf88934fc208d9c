using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Leftovers;

public sealed class DemoBagTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_demo_is_listed_in_the_order_of_its_table_and_marked_as_demo()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Demo.LoadOnceAsync(Stop);
        var list = await shelf.Leftovers.ListAsync(Stop);
        Assert.Equal(24, list.Count);
        Assert.Equal(DemoBag.Read().Select(d => d.Name), list.Select(l => l.Name));
        Assert.Equal(24, list.Select(l => l.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.All(list, l => Assert.Equal((true, "The bread bin"), (l.IsDemo, l.Bag)));
        Assert.Equal("last-inch", Assert.Single(list, l => !l.ForHats).Id);
    }

    [Fact]
    public async Task A_demo_that_was_removed_whole_or_in_part_comes_back_as_it_was()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Demo.LoadOnceAsync(Stop);
        await shelf.Leftovers.RemoveAsync("oatcake", Stop);
        await shelf.Demo.LoadAgainAsync(Stop);
        Assert.Equal(24, (await shelf.Leftovers.ListAsync(Stop)).Count);
        await shelf.Demo.RemoveAsync(Stop);
        Assert.False(await shelf.Demo.IsHereAsync(Stop));
        await shelf.Demo.LoadAgainAsync(Stop);
        Assert.True(await shelf.Demo.IsHereAsync(Stop));
        Assert.Equal(DemoBag.Read().Select(d => d.Name).Order(), (await shelf.Leftovers.ListAsync(Stop)).Select(l => l.Name).Order());
    }

    [Fact]
    public async Task The_lessons_of_the_demo_come_through_the_table()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Demo.LoadOnceAsync(Stop);
        var list = (await shelf.Leftovers.ListAsync(Stop)).ToDictionary(l => l.Id, StringComparer.Ordinal);
        Assert.Equal(new LabelRatio(4, MassUnit.Ounces, 205, LengthUnit.Yards, RatioSource.Printed), list["wellington"].Ratio);
        Assert.Equal(1m, list["wellington"].Weighing.ScaleStep.Value);
        Assert.Equal((4.0m, 21.2m), (list["coal-scuttle"].Weighing.Tare.Value, list["coal-scuttle"].Weighing.Net.Value));
        Assert.Equal((RatioSource.Guessed, RatioSource.Measured), (list["pear-skin"].Ratio!.Source, list["no-band"].Ratio!.Source));
        Assert.True(list["no-band"].Fibre.IsUnknown);
        Assert.Equal((YarnMake.Singles, YarnMake.Plied), (list["candle-end"].Make, list["oatcake"].Make));
        Assert.Equal(("Top shelf", "glass jar", "#E0AE35"), (list["quince"].Lot, list["quince"].KeptIn, list["quince"].Colour?.Hex));
        Assert.Null(list["last-inch"].Ratio);
    }

    [Fact]
    public async Task The_demo_loads_once_and_stays_away_when_cleared()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Demo.LoadOnceAsync(Stop);
        await shelf.Demo.LoadOnceAsync(Stop);
        Assert.Equal(24, await shelf.Demo.RemoveAsync(Stop));
        await shelf.Demo.LoadOnceAsync(Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
        await using var context = shelf.Open();
        Assert.Empty(await context.Leftovers.ToListAsync(Stop));
        Assert.Empty(await context.Ledger.ToListAsync(Stop));
    }

    [Fact]
    public async Task Clearing_the_demo_leaves_what_is_ones_own()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Demo.LoadOnceAsync(Stop);
        var own = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        Assert.Equal(24, await shelf.Demo.RemoveAsync(Stop));
        Assert.Equal(own, Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Id);
    }

    [Fact]
    public async Task The_demo_does_not_come_to_a_store_in_use()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.RemoveAsync(await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop), Stop);
        await shelf.Demo.LoadOnceAsync(Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task A_load_stopped_half_way_leaves_nothing_and_can_be_done_again()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await using (var context = shelf.Open())
        {
            await context.Database.ExecuteSqlRawAsync(
                "CREATE TRIGGER trip BEFORE INSERT ON Leftovers WHEN NEW.PublicId = 'kelp' BEGIN SELECT RAISE(ABORT, 'tripped'); END", Stop);
            await Assert.ThrowsAsync<StoreFailedException>(() => shelf.Demo.LoadOnceAsync(Stop));
            Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
            await context.Database.ExecuteSqlRawAsync("DROP TRIGGER trip", Stop);
        }

        await shelf.Demo.LoadOnceAsync(Stop);
        Assert.Equal(24, (await shelf.Leftovers.ListAsync(Stop)).Count);
    }

    [Fact]
    public async Task Many_who_load_it_at_once_load_it_once()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => shelf.Demo.LoadOnceAsync(Stop), Stop)));
        Assert.Equal(24, (await shelf.Leftovers.ListAsync(Stop)).Count);
    }
}
