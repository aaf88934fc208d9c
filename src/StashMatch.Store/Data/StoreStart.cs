using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace StashMatch.Store.Data;

/// <summary>The store will not start, and says why in plain words.</summary>
public sealed class StoreRefusedException(string message) : Exception(message);

/// <summary>Readies the database at start: version floor, newer files refused, stale lock cleared, backup before migrating.</summary>
public sealed class StoreStart(IDbContextFactory<StashContext> contexts, StorePlace place, TimeProvider clock)
{
    private static readonly Version Floor = new(3, 51, 3);
    private static readonly TimeSpan Stale = TimeSpan.FromMinutes(2);

    /// <summary>Brings the database up to date.</summary>
    /// <exception cref="StoreRefusedException">The file is newer than this program, or SQLite too old.</exception>
    public async Task ReadyAsync(CancellationToken cancel)
    {
        Directory.CreateDirectory(place.Folder);
        await using var onlyOne = await LockAsync(cancel);
        var existed = File.Exists(place.File) && new FileInfo(place.File).Length > 0;
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await CheckVersionAsync(context, cancel);
        var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var applied = existed ? (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList() : [];
        if (applied.Find(a => !known.Contains(a)) is { } newer)
        {
            throw new StoreRefusedException(
                $"The file {place.File} was written by a newer version of this program ({newer}). It was left untouched; start the newer version.");
        }

        if (known.Count == applied.Count)
        {
            return;
        }

        if (existed)
        {
            await ClearStaleLockAsync(context, cancel);
            await BackUpAsync(context, cancel);
        }

        context.Database.SetCommandTimeout(TimeSpan.FromMinutes(2));
        await context.Database.MigrateAsync(cancel);
    }

    private static async Task CheckVersionAsync(StashContext context, CancellationToken cancel)
    {
        var version = await ScalarAsync(context, "SELECT sqlite_version()", cancel) as string ?? "";
        if (Version.Parse(version) < Floor)
        {
            throw new StoreRefusedException($"SQLite {version} can lose a save when two writers meet; {Floor} or newer is needed.");
        }
    }

    // The migration lock survives a killed process; a row older than two minutes belongs to nobody.
    private async Task ClearStaleLockAsync(StashContext context, CancellationToken cancel)
    {
        if (await ScalarAsync(context, "SELECT count(*) FROM sqlite_master WHERE name = '__EFMigrationsLock'", cancel) is not > 0L)
        {
            return;
        }

        var before = (clock.GetUtcNow() - Stale).ToString("yyyy-MM-dd HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture);
        await context.Database.ExecuteSqlAsync($"DELETE FROM __EFMigrationsLock WHERE Timestamp < {before}", cancel);
    }

    private async Task BackUpAsync(StashContext context, CancellationToken cancel)
    {
        var folder = Directory.CreateDirectory(Path.Combine(place.Folder, "backups")).FullName;
        var file = Path.Combine(folder, $"before-update-{clock.GetUtcNow():yyyyMMdd-HHmmss-fff}.db");
        await context.Database.ExecuteSqlAsync($"VACUUM INTO {file}", cancel);
    }

    private static async Task<object?> ScalarAsync(StashContext context, string sql, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        return await command.ExecuteScalarAsync(cancel);
    }

    private async Task<FileStream> LockAsync(CancellationToken cancel)
    {
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                return new FileStream(Path.Combine(place.Folder, "start.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (attempt < 100)
            {
                await Task.Delay(100, cancel);
            }
        }
    }
}
