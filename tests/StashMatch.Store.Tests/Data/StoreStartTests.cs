using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Data;

public sealed class StoreStartTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_fresh_file_has_every_migration_and_the_promised_settings()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await using var context = shelf.Open();
        Assert.Empty(await context.Database.GetPendingMigrationsAsync(Stop));
        Assert.False(context.Database.HasPendingModelChanges());
        Assert.Equal("wal", await PragmaAsync(context, "journal_mode"));
        Assert.Equal("2", await PragmaAsync(context, "synchronous"));
        Assert.Equal("1", await PragmaAsync(context, "foreign_keys"));
        Assert.Equal("5000", await PragmaAsync(context, "busy_timeout"));
    }

    [Fact]
    public async Task A_file_from_a_newer_version_is_refused_and_left_untouched()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using (var context = shelf.Open())
        {
            await context.Database.ExecuteSqlRawAsync("INSERT INTO __EFMigrationsHistory VALUES ('29991231_Later', '99')", Stop);
        }

        var refused = await Assert.ThrowsAsync<StoreRefusedException>(() => shelf.Start.ReadyAsync(Stop));
        Assert.Contains("newer version", refused.Message, StringComparison.Ordinal);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task A_migration_lock_left_by_a_killed_process_is_cleared_and_a_backup_made_before_migrating()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using (var context = shelf.Open())
        {
            // As if the last migration were still to come: what it made is taken away, and somebody died holding the lock.
            await context.Database.ExecuteSqlRawAsync(
                "DELETE FROM __EFMigrationsHistory WHERE MigrationId LIKE '%_Calibrations'; DROP TABLE Calibrations;"
                + "CREATE TABLE IF NOT EXISTS __EFMigrationsLock (Id INTEGER NOT NULL PRIMARY KEY, Timestamp TEXT NOT NULL);"
                + "INSERT INTO __EFMigrationsLock VALUES (1, '2020-01-01 00:00:00');",
                Stop);
        }

        await shelf.Start.ReadyAsync(Stop);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Single(Directory.GetFiles(Path.Combine(shelf.Folder, "backups")));
    }

    [Fact]
    public async Task Two_starts_at_once_make_one_store()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => shelf.Start.ReadyAsync(Stop)));
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    private static async Task<string> PragmaAsync(StashContext context, string name)
    {
        await context.Database.OpenConnectionAsync(Stop);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = "PRAGMA " + name;
        return $"{await command.ExecuteScalarAsync(Stop)}";
    }
}
