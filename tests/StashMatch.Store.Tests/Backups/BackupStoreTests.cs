using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Backups;

public sealed class BackupStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_restore_drill_brings_back_what_was_there_and_keeps_what_is_there()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        var backup = await shelf.Backups.BackUpAsync(Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Oat"), cancel: Stop);
        await shelf.Leftovers.RemoveAsync("moss", Stop);

        await shelf.Backups.RestoreAsync(backup.Name, Stop);
        Assert.Equal("Moss", Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Name);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Plum"), cancel: Stop);
        Assert.Equal(2, (await shelf.Leftovers.ListAsync(Stop)).Count);
        Assert.Equal("wal", await ScalarAsync(shelf, "PRAGMA journal_mode"));
        Assert.Equal("ok", await ScalarAsync(shelf, "PRAGMA integrity_check"));

        var before = Assert.Single(shelf.Backups.List(), b => b.Kind == BackupKind.BeforeRestore);
        await shelf.Backups.RestoreAsync(before.Name, Stop);
        Assert.Equal("Oat", Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Name);
        Assert.DoesNotContain(Directory.GetFiles(shelf.Folder), f => f.Contains(".new", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_phone_shut_out_since_the_backup_is_not_let_in_again_by_it()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var (lost, kept) = (await shelf.Phones.PairAsync("lost phone", Stop), await shelf.Phones.PairAsync("kitchen phone", Stop));
        var backup = await shelf.Backups.BackUpAsync(Stop);
        await shelf.Phones.RevokeAsync(lost, Stop);
        await shelf.Backups.RestoreAsync(backup.Name, Stop).WaitAsync(TimeSpan.FromSeconds(60), Stop);
        Assert.Equal((false, true), (await shelf.Phones.MayComeInAsync(lost, Stop), await shelf.Phones.MayComeInAsync(kept, Stop)));
    }

    [Fact]
    public async Task Many_who_save_while_a_backup_is_restored_either_wait_or_are_in_the_backup_before()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var backup = await shelf.Backups.BackUpAsync(Stop);
        var saving = Task.WhenAll(Enumerable.Range(0, 4).Select(w => Task.Run(
            async () =>
            {
                for (var i = 0; i < 25; i++)
                {
                    await shelf.Leftovers.WeighAsync(Shelf.Moss($"Ball {w} {i}") with { Id = $"{w}-{i}" }, cancel: Stop);
                    await shelf.Leftovers.ListAsync(Stop);
                }
            },
            Stop)));
        await Task.Delay(100, Stop);
        await shelf.Backups.RestoreAsync(backup.Name, Stop);
        await saving;
        var now = (await shelf.Leftovers.ListAsync(Stop)).Select(l => l.Id).ToHashSet(StringComparer.Ordinal);
        await shelf.Backups.RestoreAsync(shelf.Backups.List().Last(b => b.Kind == BackupKind.BeforeRestore).Name, Stop);
        var then = (await shelf.Leftovers.ListAsync(Stop)).Select(l => l.Id).ToList();
        Assert.Equal(100, now.Count + then.Count);
        Assert.DoesNotContain(then, now.Contains);
    }

    [Fact]
    public async Task A_backup_of_an_older_schema_is_brought_up_to_date_on_the_way_in()
    {
        await using var shelf = await Shelf.ReadyAsync();
        Directory.CreateDirectory(shelf.Place.Backups);
        File.Copy(Released.File, Path.Combine(shelf.Place.Backups, "asked-20261125-131914-000.db"));
        await shelf.Backups.RestoreAsync("asked-20261125-131914-000.db", Stop);
        await Released.CheckAsync(shelf);
    }

    [Theory]
    [InlineData("newer", "newer version")]
    [InlineData("damaged", "damaged")]
    [InlineData("text", "damaged or is no backup")]
    [InlineData("foreign", "damaged or is no backup")]
    [InlineData("empty", "damaged or is no backup")]
    public async Task A_backup_that_is_not_sound_is_refused_and_the_file_is_as_it_was(string how, string says)
    {
        await using var shelf = await Shelf.ReadyAsync();
        for (var i = 0; i < 60; i++)
        {
            await shelf.Leftovers.WeighAsync(Shelf.Moss($"Ball {i}") with { Note = new string('n', 400) }, cancel: Stop);
        }

        var name = (await shelf.Backups.BackUpAsync(Stop)).Name;
        var file = Path.Combine(shelf.Place.Backups, name);
        switch (how)
        {
            case "newer":
                await SqlAsync(file, "INSERT INTO __EFMigrationsHistory VALUES ('29991231_Later', '99')");
                break;
            case "damaged":
                var bytes = await File.ReadAllBytesAsync(file, Stop);
                bytes.AsSpan(bytes.Length / 2, 8_000).Fill(0xA5);
                await File.WriteAllBytesAsync(file, bytes, Stop);
                break;
            case "foreign":
                File.Delete(file);
                await SqlAsync(file, "CREATE TABLE Recipes (Id INTEGER)");
                break;
            default:
                await File.WriteAllTextAsync(file, how == "text" ? "a shopping list" : "", Stop);
                break;
        }

        var refused = await Assert.ThrowsAsync<RestoreRefusedException>(() => shelf.Backups.RestoreAsync(name, Stop));
        Assert.Contains(how == "empty" ? "empty" : says, refused.Message, StringComparison.Ordinal);
        Assert.Equal(60, (await shelf.Leftovers.ListAsync(Stop)).Count);
        Assert.DoesNotContain(shelf.Backups.List(), b => b.Kind == BackupKind.BeforeRestore);
    }

    [Theory]
    [InlineData("../stashmatch.db")]
    [InlineData("asked-20261125-131914-000.db")]
    [InlineData("")]
    public async Task A_name_that_is_no_backups_is_refused(string name)
    {
        await using var shelf = await Shelf.ReadyAsync();
        await Assert.ThrowsAsync<RestoreRefusedException>(() => shelf.Backups.RestoreAsync(name, Stop));
        Assert.False(shelf.Backups.Remove(name));
        Assert.True(File.Exists(shelf.File));
    }

    [Fact]
    public async Task A_file_another_program_holds_is_not_swapped_under_it()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var backup = await shelf.Backups.BackUpAsync(Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using (var other = new SqliteConnection($"Data Source={shelf.File};Pooling=False"))
        {
            await other.OpenAsync(Stop);
            await using var command = other.CreateCommand();
            command.CommandText = "BEGIN; SELECT count(*) FROM Leftovers";
            await command.ExecuteScalarAsync(Stop);
            var refused = await Assert.ThrowsAsync<RestoreRefusedException>(() => shelf.Backups.RestoreAsync(backup.Name, Stop));
            Assert.Contains("Another program", refused.Message, StringComparison.Ordinal);
        }

        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        await shelf.Backups.RestoreAsync(backup.Name, Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task What_a_killed_restore_left_behind_is_cleared_away_at_the_next_start()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await File.WriteAllTextAsync(shelf.File + ".new", "half", Stop);
        await File.WriteAllTextAsync(shelf.File + ".new-wal", "half", Stop);
        await shelf.Start.ReadyAsync(Stop);
        Assert.DoesNotContain(Directory.GetFiles(shelf.Folder), f => f.Contains(".new", StringComparison.Ordinal));
    }

    [Fact]
    public async Task One_backup_a_day_is_made_by_itself_and_the_old_ones_go()
    {
        var clock = new SetClock(new DateTimeOffset(2026, 1, 1, 8, 0, 0, TimeSpan.Zero));
        await using var shelf = await Shelf.ReadyAsync(clock: clock);
        Assert.NotNull(await shelf.Backups.DailyAsync(Stop));
        clock.Now = clock.Now.AddHours(5);
        Assert.Null(await shelf.Backups.DailyAsync(Stop));
        var asked = await shelf.Backups.BackUpAsync(Stop);
        for (var day = 1; day < 40; day++)
        {
            clock.Now = clock.Now.AddDays(1);
            Assert.NotNull(await shelf.Backups.DailyAsync(Stop));
        }

        var list = shelf.Backups.List();
        Assert.Equal(10, list.Count(b => b.Kind == BackupKind.Daily));
        Assert.Contains(asked, list);
        Assert.Equal(clock.Now, list[0].At);
        Assert.All(list, b => Assert.True(b.Bytes > 0));
        Assert.True(shelf.Backups.Remove(asked.Name));
        Assert.DoesNotContain(asked, shelf.Backups.List());
    }

    [Fact]
    public async Task A_backup_that_cannot_be_deleted_is_skipped_and_told()
    {
        var clock = new SetClock(new DateTimeOffset(2026, 1, 1, 8, 0, 0, TimeSpan.Zero));
        await using var shelf = await Shelf.ReadyAsync(clock: clock);
        var asked = await shelf.Backups.BackUpAsync(Stop);

        // A December of daily backups, of which the later ones are kept: two that are too old, of which one can be deleted.
        var (held, free) = ("daily-20251203-080000-000.db", "daily-20251204-080000-000.db");
        for (var day = 1; day <= 31; day++)
        {
            File.Copy(Path.Combine(shelf.Place.Backups, asked.Name), Path.Combine(shelf.Place.Backups, $"daily-202512{day:00}-080000-000.db"));
        }

        using (new Undeletable(Path.Combine(shelf.Place.Backups, held)))
        {
            Assert.NotNull(await shelf.Backups.DailyAsync(Stop));
            Assert.Equal([held], shelf.Backups.CannotBeDeleted);
            Assert.DoesNotContain(shelf.Backups.List(), b => b.Name == free);
            Assert.Equal([held], await shelf.Everything.DeleteAsync(backupsToo: true, Stop));
            Assert.Equal(held, Assert.Single(shelf.Backups.List()).Name);
        }

        Assert.True(shelf.Backups.Remove(held));
        Assert.Empty(shelf.Backups.CannotBeDeleted);
    }

    private static async Task<string> ScalarAsync(Shelf shelf, string sql)
    {
        await using var context = shelf.Open();
        await context.Database.OpenConnectionAsync(Stop);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        return $"{await command.ExecuteScalarAsync(Stop)}";
    }

    private static async Task SqlAsync(string file, string sql)
    {
        await using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        await connection.OpenAsync(Stop);
        await StoreFile.RunAsync(connection, sql, Stop);
    }
}
