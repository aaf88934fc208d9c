using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Hats;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Data;

public sealed class DiskTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task On_a_full_disk_nothing_is_called_saved_that_is_not_and_reading_goes_on()
    {
        using var disk = new SmallDisk(1_500);
        await using var shelf = await Shelf.ReadyAsync(Path.Combine(disk.Folder, "data"));
        var saved = await SaveUntilItFailsAsync(shelf, StoreFailure.DiskFull);
        Assert.Equal(saved, (await shelf.Leftovers.ListAsync(Stop)).Count);
        disk.Fill();
        var noBackup = await Assert.ThrowsAsync<StoreFailedException>(() => shelf.Backups.BackUpAsync(Stop));
        Assert.Equal(StoreFailure.DiskFull, noBackup.Why);
        Assert.Empty(Directory.GetFiles(shelf.Place.Backups));
        Assert.Equal(saved, (await shelf.Leftovers.ListAsync(Stop)).Count);
        disk.MakeRoom();
    }

    [Fact]
    public async Task A_full_disk_at_the_start_still_lets_one_read_and_room_lets_one_save_again()
    {
        using var disk = new SmallDisk(3_000);
        var folder = Path.Combine(disk.Folder, "data");
        await using (var shelf = await Shelf.ReadyAsync(folder))
        {
            await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
            await shelf.CloseAsync();
        }

        disk.Fill();
        await using (var full = new Shelf(folder))
        {
            await full.Start.ReadyAsync(Stop);
            Assert.True(full.Place.ReadingOnly);
            Assert.Equal("Moss", Assert.Single(await full.Leftovers.ListAsync(Stop)).Name);
            await EveryVerbFailsAsync(full, StoreFailure.ReadOnly);
            await full.CloseAsync();
        }

        disk.MakeRoom();
        await using var roomy = await Shelf.ReadyAsync(folder);
        Assert.False(roomy.Place.ReadingOnly);
        await roomy.Leftovers.WeighAsync(Shelf.Moss("Oat"), cancel: Stop);
        Assert.Equal(2, (await roomy.Leftovers.ListAsync(Stop)).Count);
    }

    [Fact]
    public async Task On_a_disk_that_may_only_be_read_one_reads_and_every_save_says_why_not()
    {
        using var disk = new SmallDisk(4_000);
        var folder = Path.Combine(disk.Folder, "data");
        await using (var shelf = await Shelf.ReadyAsync(folder))
        {
            await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
            await shelf.Backups.BackUpAsync(Stop);
            await shelf.CloseAsync();
        }

        disk.MakeReadOnly();
        await using var locked = new Shelf(folder);
        await locked.Start.ReadyAsync(Stop);
        Assert.Equal("Moss", Assert.Single(await locked.Leftovers.ListAsync(Stop)).Name);
        Assert.NotEmpty(await locked.Table.WriteAsync(cancel: Stop));
        Assert.NotEmpty(await locked.Everything.WriteAsync(Stop));
        await EveryVerbFailsAsync(locked, StoreFailure.ReadOnly);
        await Assert.ThrowsAsync<RestoreRefusedException>(() => locked.Backups.RestoreAsync(locked.Backups.List()[0].Name, Stop));
        await locked.CloseAsync();
    }

    [Fact]
    public async Task An_old_file_on_a_full_disk_is_not_half_brought_up_to_date()
    {
        using var disk = new SmallDisk(1_000);
        Released.LayInto(disk.Folder);
        disk.Fill();
        await using var shelf = new Shelf(disk.Folder);
        var refused = await Assert.ThrowsAsync<StoreRefusedException>(() => shelf.Start.ReadyAsync(Stop));
        Assert.Contains("could not be", refused.Message, StringComparison.Ordinal);
        await shelf.CloseAsync();
        disk.MakeRoom();
        await shelf.Start.ReadyAsync(Stop);
        await Released.CheckAsync(shelf);
        await shelf.CloseAsync();
    }

    [Theory]
    [InlineData("PRAGMA max_page_count=40", StoreFailure.DiskFull)]
    [InlineData("PRAGMA query_only=ON", StoreFailure.ReadOnly)]
    public async Task Without_a_disk_to_fill_the_database_itself_is_told_that_it_is_full_or_locked(string told, StoreFailure why)
    {
        await using var ready = await Shelf.ReadyAsync();
        await using var shelf = new Shelf(ready.Folder, onOpen: told);
        var saved = await SaveUntilItFailsAsync(shelf, why);
        Assert.Equal(saved, (await shelf.Leftovers.ListAsync(Stop)).Count);
        Assert.Equal(saved, (await ready.Leftovers.ListAsync(Stop)).Count);

        // Both draw from one pool of connections; those that were told so go.
        await shelf.CloseAsync();
        await ready.Leftovers.WeighAsync(Shelf.Moss("Plum"), cancel: Stop);
    }

    [Fact]
    public async Task A_file_somebody_holds_too_long_is_told_as_busy()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await using var quick = new Shelf(shelf.Folder, onOpen: "PRAGMA busy_timeout=1");
        await using var holder = shelf.Open();
        await using var held = await holder.Database.BeginTransactionAsync(Stop);
        var failed = await Assert.ThrowsAsync<StoreFailedException>(() => quick.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop));
        Assert.Equal(StoreFailure.Busy, failed.Why);
        Assert.Empty(await quick.Leftovers.ListAsync(Stop));
    }

    private static async Task<int> SaveUntilItFailsAsync(Shelf shelf, StoreFailure why)
    {
        for (var saved = 0; ; saved++)
        {
            Assert.InRange(saved, 0, 5_000);
            try
            {
                await shelf.Leftovers.WeighAsync(Shelf.Moss($"Ball {saved}") with { Note = new string('n', 500) }, cancel: Stop);
            }
            catch (StoreFailedException e)
            {
                Assert.Equal(why, e.Why);
                Assert.StartsWith("Not saved:", e.Message, StringComparison.Ordinal);
                return saved;
            }
        }
    }

    private static async Task EveryVerbFailsAsync(Shelf shelf, StoreFailure why)
    {
        foreach (var verb in new Func<Task>[]
        {
            () => shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop),
            () => shelf.Leftovers.ReweighAsync("moss", Shelf.Reading(1), Stop),
            () => shelf.Leftovers.EditAsync("moss", d => d with { Lot = "8" }, Stop),
            () => shelf.Leftovers.KnitUpAsync("moss", Stop),
            () => shelf.Leftovers.RemoveAsync("moss", Stop),
            () => shelf.Plans.SaveAsync(new NewPlan("Hat", "h", "C", 1, "own-colours", []), Stop),
            () => shelf.Settings.SaveAsync(new Settings(), Stop),
            () => shelf.Knitter.AddAsync("swatch", new Calibration(1, 0.02), Stop),
            () => shelf.Hats.SaveAsync(Described.Hat(Described.Plain), Stop),
            () => shelf.Everything.DeleteAsync(backupsToo: false, Stop),
        })
        {
            Assert.Equal(why, (await Assert.ThrowsAsync<StoreFailedException>(verb)).Why);
        }

        Assert.Equal(20m, Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Left.Value);
    }
}
