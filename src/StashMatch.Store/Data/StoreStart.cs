using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace StashMatch.Store.Data;

/// <summary>Readies the database at start: version floor, newer and foreign files refused untouched, stale lock cleared, backup before migrating.</summary>
public sealed class StoreStart(IDbContextFactory<StashContext> contexts, BackupStore backups, Restore restore, StorePlace place, TimeProvider clock)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    /// <summary>Brings the database up to date.</summary>
    /// <exception cref="StoreRefusedException">The file is newer than this program, damaged or another program's; SQLite is too old; the folder cannot be written.</exception>
    public async Task ReadyAsync(CancellationToken cancel)
    {
        try
        {
            await using var onlyOne = await LockAsync(cancel);
            restore.Clear();
            await BringUpToDateAsync(onlyOne, cancel);
            await TryAsync(cancel);
        }
        catch (Exception e) when (e is SqliteException or UnauthorizedAccessException or IOException)
        {
            // Nothing can be saved then, and every verb says so; what is logged can be looked up all the same.
            if (ShortWrite.Why(e) is not (StoreFailure.ReadOnly or StoreFailure.DiskFull or StoreFailure.InputOutput) || !await CanOnlyBeReadAsync(cancel))
            {
                throw new StoreRefusedException(Words(e), e);
            }
        }
    }

    private string Words(Exception e) => e switch
    {
        SqliteException => $"The file {place.File} could not be readied: {e.Message}",
        StoreFailedException => $"The file {place.File} could not be brought up to date. {e.Message}",
        _ => $"The folder {place.Folder} cannot be written: {e.Message}",
    };

    private async Task BringUpToDateAsync(FileStream onlyOne, CancellationToken cancel)
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
            onlyOne.SetLength(0);
            return;
        }

        if (applied is not null)
        {
            await new MigrationLock(context, clock).WaitAsync(ofOurs: onlyOne.Length > 0, cancel);
            await backups.BackUpAsync(BackupKind.BeforeUpdate, cancel);
        }

        // Killed from here on, the next start finds this sign and knows whose the database's own lock is.
        onlyOne.WriteByte((byte)'m');
        onlyOne.Flush(flushToDisk: true);
        await MigrateAsync(context, cancel);
        onlyOne.SetLength(0);
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

    // The log's files are made at the first reading; a full or locked disk shows here, not at the first page.
    private async Task TryAsync(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await context.Marks.AnyAsync(cancel);
    }

    private async Task<bool> CanOnlyBeReadAsync(CancellationToken cancel)
    {
        try
        {
            await using var context = await contexts.CreateDbContextAsync(cancel);
            if (await StoreFile.AppliedAsync(place.File, cancel, unchanging: true) is not { } applied || !applied.ToHashSet(StringComparer.Ordinal).SetEquals(context.Database.GetMigrations()))
            {
                return false;
            }

            place.ReadingOnly = true;
            await TryAsync(cancel);
            return true;
        }
        catch (Exception e) when (e is SqliteException or IOException)
        {
            return place.ReadingOnly = false;
        }
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
            catch (IOException e) when (attempt < 100 && ShortWrite.Why(e) == StoreFailure.InputOutput)
            {
                await Task.Delay(100, cancel);
            }
        }
    }
}
