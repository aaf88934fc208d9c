using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace StashMatch.Store.Data;

/// <summary>Readies the database at start: version floor, newer and foreign files refused untouched, stale lock cleared, backup before migrating.</summary>
public sealed class StoreStart(IDbContextFactory<StashContext> contexts, StorePlace place, TimeProvider clock)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    /// <summary>Brings the database up to date.</summary>
    /// <exception cref="StoreRefusedException">The file is newer than this program, damaged or another program's; SQLite is too old; the folder cannot be written.</exception>
    public async Task ReadyAsync(CancellationToken cancel)
    {
        try
        {
            await using var onlyOne = await LockAsync(cancel);
            await BringUpToDateAsync(cancel);
        }
        catch (SqliteException e)
        {
            throw new StoreRefusedException($"The file {place.File} could not be readied: {e.Message}", e);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            throw new StoreRefusedException($"The folder {place.Folder} cannot be written: {e.Message}", e);
        }
    }

    private async Task BringUpToDateAsync(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        SqliteFloor.Check(context.Database.GetDbConnection().ServerVersion);
        var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var applied = await StoreFile.AppliedAsync(place.File, cancel);
        if (applied?.FirstOrDefault(a => !known.Contains(a)) is { } newer)
        {
            throw new StoreRefusedException(
                $"The file {place.File} was written by a newer version of this program ({newer}). It was left untouched; start the newer version.");
        }

        if (known.Count == applied?.Count)
        {
            return;
        }

        if (applied is not null)
        {
            await new MigrationLock(context, clock).WaitAsync(cancel);
            await BackUpAsync(context, cancel);
        }

        await MigrateAsync(context, cancel);
    }

    private async Task MigrateAsync(StashContext context, CancellationToken cancel)
    {
        using var limit = new CancellationTokenSource(Longest, clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cancel);
        context.Database.SetCommandTimeout(Longest);
        try
        {
            await context.Database.MigrateAsync(either.Token);
        }
        catch (OperationCanceledException e) when (limit.IsCancellationRequested)
        {
            throw new StoreRefusedException($"Bringing {place.File} up to date took over {Longest.TotalMinutes} minutes. The file as it was is in the backups folder.", e);
        }
    }

    private async Task BackUpAsync(StashContext context, CancellationToken cancel)
    {
        var folder = Directory.CreateDirectory(Path.Combine(place.Folder, "backups")).FullName;
        var file = Path.Combine(folder, $"before-update-{clock.GetUtcNow():yyyyMMdd-HHmmss-fff}.db");
        await context.Database.ExecuteSqlAsync($"VACUUM INTO {file}", cancel);
    }

    private async Task<FileStream> LockAsync(CancellationToken cancel)
    {
        Directory.CreateDirectory(place.Folder);
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
