using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
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
        Assert.Equal("wal", await ScalarAsync(context, "PRAGMA journal_mode"));
        Assert.Equal("2", await ScalarAsync(context, "PRAGMA synchronous"));
        Assert.Equal("1", await ScalarAsync(context, "PRAGMA foreign_keys"));
        Assert.Equal("5000", await ScalarAsync(context, "PRAGMA busy_timeout"));
        Assert.False(Directory.Exists(Path.Combine(shelf.Folder, "backups")));
    }

    [Fact]
    public async Task A_file_of_the_first_schema_is_backed_up_and_brought_up_to_date_with_all_that_was_in_it()
    {
        await using var shelf = new Shelf();
        await MakeFirstAsync(shelf);
        await shelf.Start.ReadyAsync(Stop);
        var logged = Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Equal(("moss", "Moss", 20m, null), (logged.Id, logged.Name, logged.Weighing.Net.Value, logged.Bag));

        var backup = Assert.Single(Directory.GetFiles(Path.Combine(shelf.Folder, "backups")));
        await using var kept = new SqliteConnection($"Data Source={backup};Mode=ReadOnly;Pooling=False");
        await kept.OpenAsync(Stop);
        Assert.Equal("ok", await ScalarAsync(kept, "PRAGMA integrity_check"));
        Assert.Equal("Moss", await ScalarAsync(kept, "SELECT Name FROM Leftovers"));
        Assert.Equal("0", await ScalarAsync(kept, "SELECT count(*) FROM pragma_table_info('Leftovers') WHERE name = 'Bag'"));
    }

    [Fact]
    public async Task A_start_with_nothing_to_do_makes_no_backup()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Start.ReadyAsync(Stop);
        Assert.False(Directory.Exists(Path.Combine(shelf.Folder, "backups")));
    }

    [Fact]
    public async Task A_migration_lock_left_by_a_killed_process_is_cleared()
    {
        await using var shelf = new Shelf();
        await MakeFirstAsync(shelf);
        await HoldLockAsync(shelf, DateTimeOffset.UtcNow.AddMinutes(-3));
        await shelf.Start.ReadyAsync(Stop).WaitAsync(TimeSpan.FromSeconds(30), Stop);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task A_migration_lock_that_grows_stale_while_waited_for_is_cleared_too()
    {
        await using var shelf = new Shelf();
        await MakeFirstAsync(shelf);
        await HoldLockAsync(shelf, DateTimeOffset.UtcNow.AddSeconds(-118));
        await shelf.Start.ReadyAsync(Stop).WaitAsync(TimeSpan.FromSeconds(30), Stop);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task A_migration_lock_of_a_start_that_was_killed_is_cleared_at_once()
    {
        await using var shelf = new Shelf(clock: new SetClock(DateTimeOffset.UtcNow));
        await MakeFirstAsync(shelf);
        await HoldLockAsync(shelf, DateTimeOffset.UtcNow);
        var sign = Path.Combine(shelf.Folder, "start.lock");
        await File.WriteAllTextAsync(sign, "m", Stop);
        await shelf.Start.ReadyAsync(Stop).WaitAsync(TimeSpan.FromSeconds(30), Stop);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Equal(0, new FileInfo(sign).Length);
    }

    [Fact]
    public async Task A_migration_lock_somebody_holds_is_waited_for()
    {
        await using var shelf = new Shelf();
        await MakeFirstAsync(shelf);
        await HoldLockAsync(shelf, DateTimeOffset.UtcNow);
        var ready = shelf.Start.ReadyAsync(Stop);
        await Task.Delay(1200, Stop);
        Assert.False(ready.IsCompleted);
        await using (var context = shelf.Open())
        {
            Assert.Equal("1", await ScalarAsync(context, "SELECT count(*) FROM __EFMigrationsLock"));
            await context.Database.ExecuteSqlRawAsync("DELETE FROM __EFMigrationsLock", Stop);
        }

        await ready.WaitAsync(TimeSpan.FromSeconds(30), Stop);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task A_file_from_a_newer_version_is_refused_and_not_a_byte_of_it_changed()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using (var context = shelf.Open())
        {
            await context.Database.ExecuteSqlRawAsync("INSERT INTO __EFMigrationsHistory VALUES ('29991231_Later', '99'); PRAGMA journal_mode=DELETE;", Stop);
        }

        SqliteConnection.ClearAllPools();
        var before = await File.ReadAllBytesAsync(shelf.File, Stop);
        var refused = await Assert.ThrowsAsync<StoreRefusedException>(() => shelf.Start.ReadyAsync(Stop));
        Assert.Contains("newer version", refused.Message, StringComparison.Ordinal);
        SqliteConnection.ClearAllPools();
        Assert.Equal(before, await File.ReadAllBytesAsync(shelf.File, Stop));
        Assert.False(Directory.Exists(Path.Combine(shelf.Folder, "backups")));
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_refused_in_plain_words_and_left_untouched()
    {
        await using var shelf = new Shelf();
        var text = string.Concat(Enumerable.Repeat("a shopping list\n", 500));
        await File.WriteAllTextAsync(shelf.File, text, Stop);
        var refused = await Assert.ThrowsAsync<StoreRefusedException>(() => shelf.Start.ReadyAsync(Stop));
        Assert.Contains("damaged or is no database", refused.Message, StringComparison.Ordinal);
        Assert.Equal(text, await File.ReadAllTextAsync(shelf.File, Stop));
    }

    [Fact]
    public async Task Another_programs_database_is_refused_and_gets_no_tables_of_ours()
    {
        await using var shelf = new Shelf();
        await using var theirs = new SqliteConnection($"Data Source={shelf.File};Pooling=False");
        await theirs.OpenAsync(Stop);
        await ScalarAsync(theirs, "CREATE TABLE Recipes (Id INTEGER PRIMARY KEY)");
        await Assert.ThrowsAsync<StoreRefusedException>(() => shelf.Start.ReadyAsync(Stop));
        Assert.Equal("1", await ScalarAsync(theirs, "SELECT count(*) FROM sqlite_master"));
    }

    [Fact]
    public async Task A_folder_that_cannot_be_made_is_told_in_plain_words()
    {
        await using var shelf = new Shelf();
        var file = Path.Combine(shelf.Folder, "in-the-way");
        await File.WriteAllTextAsync(file, "", Stop);
        await using var blocked = new Shelf(Path.Combine(file, "below"));
        var refused = await Assert.ThrowsAsync<StoreRefusedException>(() => blocked.Start.ReadyAsync(Stop));
        Assert.Contains("cannot be written", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_starts_at_once_make_one_store()
    {
        await using var shelf = new Shelf();
        await using var beside = new Shelf(shelf.Folder);
        await Task.WhenAll(Enumerable.Range(0, 6).Select(i => Task.Run(() => (i % 2 == 0 ? shelf : beside).Start.ReadyAsync(Stop), Stop)));
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        Assert.Single(await beside.Leftovers.ListAsync(Stop));
    }

    private static async Task MakeFirstAsync(Shelf shelf)
    {
        await using var context = shelf.Open();
        await context.GetService<IMigrator>().MigrateAsync("20261125120751_First", Stop);
        await context.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO Leftovers (Id, OwnerId, Version, PublicId, Name, Code, Fibre, LabelMassUnit, LabelLengthUnit, RatioFrom, Superwash, Make, NotForHats, IsDemo, LoggedAt)
            VALUES ('11111111-1111-1111-1111-111111111111', {Owner.Home.Id}, '22222222-2222-2222-2222-222222222222', 'moss', 'Moss', 'Mo', 'unknown', 0, 0, 0, 0, 0, 0, 0, 639000000000000000);
            INSERT INTO Weighings (OwnerId, LeftoverId, GrossMilligrams, TareMilligrams, StepMilligrams, At)
            VALUES ({Owner.Home.Id}, '11111111-1111-1111-1111-111111111111', 20000, 0, 100, 639000000000000000);
            """,
            Stop);
    }

    private static async Task HoldLockAsync(Shelf shelf, DateTimeOffset since)
    {
        await using var context = shelf.Open();
        var written = since.ToUniversalTime().ToString("yyyy-MM-dd HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture);
        await context.Database.ExecuteSqlAsync(
            $"CREATE TABLE IF NOT EXISTS __EFMigrationsLock (Id INTEGER NOT NULL PRIMARY KEY, Timestamp TEXT NOT NULL); INSERT INTO __EFMigrationsLock VALUES (1, {written});",
            Stop);
    }

    private static async Task<string> ScalarAsync(StashContext context, string sql)
    {
        await context.Database.OpenConnectionAsync(Stop);
        return await ScalarAsync((SqliteConnection)context.Database.GetDbConnection(), sql);
    }

    private static async Task<string> ScalarAsync(SqliteConnection connection, string sql)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        return $"{await command.ExecuteScalarAsync(Stop)}";
    }
}
