using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Puts a backup in the database file's place: into a new file, looked over, brought up to date, then swapped in by one rename while nobody is at the file. Killed at any moment, the file is the old one or the new one, whole.</summary>
public sealed class Restore(IDbContextFactory<StashContext> contexts, StoreGate gate, StorePlace place, Owner owner)
{
    private string Fresh => place.File + ".new";

    internal async Task PutInPlaceAsync(string backup, string before, CancellationToken cancel)
    {
        if (place.ReadingOnly)
        {
            throw new RestoreRefusedException("The disk is read-only, so nothing can be restored.");
        }

        try
        {
            await PrepareAsync(backup, cancel);
            await gate.AloneAsync(() => SwapAsync(before, cancel), cancel);
        }
        catch (TimeoutException e)
        {
            throw new RestoreRefusedException("Somebody was changing leftovers all the time. Nothing was restored; try again.", e);
        }
        finally
        {
            Clear();
        }
    }

    /// <summary>
    /// Changes the whole file, all of it or nothing: in a copy written anew, which then takes the file's place. Nothing of what the change deleted
    /// can be read from it.
    /// </summary>
    /// <exception cref="StoreFailedException">The file is as it was.</exception>
    internal async Task ChangeWholeAsync(Func<StashContext, Task> change, CancellationToken cancel)
    {
        if (place.ReadingOnly)
        {
            throw new StoreFailedException(StoreFailure.ReadOnly, new IOException("The disk may only be read."));
        }

        try
        {
            await gate.AloneAsync(
                async () =>
                {
                    await LetGoAsync(cancel);
                    await StoreFile.CopyAsync(place.File, Fresh, cancel);
                    await using (var fresh = OpenAlone(Fresh))
                    {
                        await change(fresh);
                        await fresh.Database.ExecuteSqlRawAsync("VACUUM", cancel);
                    }

                    await SettleAsync(Fresh, cancel);
                    StoreFile.Flush(Fresh);
                    return await SettleAsync(place.File, cancel)
                        ? TakePlace()
                        : throw new StoreFailedException(StoreFailure.Busy, new IOException("Another program has the database file open."));
                },
                cancel);
        }
        catch (TimeoutException e)
        {
            throw new StoreFailedException(StoreFailure.Busy, e);
        }
        finally
        {
            Clear();
        }
    }

    /// <summary>Clears away what a killed restore left behind.</summary>
    internal void Clear()
    {
        foreach (var end in new[] { "", "-wal", "-shm", "-journal", ".part" })
        {
            File.Delete(Fresh + end);
        }
    }

    private async Task PrepareAsync(string backup, CancellationToken cancel)
    {
        Clear();
        IReadOnlySet<string> known;
        await using (var context = await contexts.CreateDbContextAsync(cancel))
        {
            known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        }

        await RefuseAsync(backup, known, cancel);
        await StoreFile.CopyAsync(backup, Fresh, cancel);
        await RefuseAsync(Fresh, known, cancel);
        await using (var fresh = OpenAlone(Fresh))
        {
            await fresh.Database.MigrateAsync(cancel);
        }

        await SettleAsync(Fresh, cancel);
        StoreFile.Flush(Fresh);
    }

    private async Task<bool> SwapAsync(string before, CancellationToken cancel)
    {
        await LetGoAsync(cancel);
        await KeepPhonesAsync(cancel);
        await StoreFile.CopyAsync(place.File, before, cancel);
        if (!await SettleAsync(place.File, cancel))
        {
            throw new RestoreRefusedException("Another program has the database file open. Close it and restore again; nothing was changed.");
        }

        return TakePlace();
    }

    private bool TakePlace()
    {
        File.Move(Fresh, place.File, overwrite: true);
        return true;
    }

    // Nobody is in: what the pool still holds is idle, and would hold on to the old file.
    private async Task LetGoAsync(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        using var pooled = new SqliteConnection(context.Database.GetConnectionString());
        SqliteConnection.ClearPool(pooled);
    }

    // Paired phones belong to the machine, not to the backup: one shut out since then is not let in again.
    private async Task KeepPhonesAsync(CancellationToken cancel)
    {
        // Not through the gate, which is shut.
        await using var now = OpenAlone(place.File);
        var phones = await now.Phones.AsNoTracking().ToListAsync(cancel);
        await using (var fresh = OpenAlone(Fresh))
        {
            await fresh.Phones.ExecuteDeleteAsync(cancel);
            fresh.AddRange(phones);
            await fresh.SaveChangesAsync(cancel);
        }

        await SettleAsync(Fresh, cancel);
        StoreFile.Flush(Fresh);
    }

    private StashContext OpenAlone(string file) => new(new DbContextOptionsBuilder<StashContext>().UseSqlite(StoreFile.Alone(file)).Options, owner);

    // A file with a log beside it is not whole by itself. Leaving the log mode takes everything in and takes the log away; it needs the file alone.
    private static async Task<bool> SettleAsync(string file, CancellationToken cancel)
    {
        await using var connection = new SqliteConnection(StoreFile.Alone(file));
        await connection.OpenAsync(cancel);
        try
        {
            await StoreFile.RunAsync(connection, "PRAGMA synchronous=FULL", cancel);
            return await StoreFile.RunAsync(connection, "PRAGMA journal_mode=DELETE", cancel) == "delete";
        }
        catch (SqliteException e) when (ShortWrite.Why(e) == StoreFailure.Busy)
        {
            return false;
        }
    }

    private static async Task RefuseAsync(string file, IReadOnlySet<string> known, CancellationToken cancel)
    {
        if (await StoreFile.FaultAsync(file, known, cancel) is { } fault)
        {
            throw new RestoreRefusedException($"The backup was not restored: {fault}. Nothing was changed.");
        }
    }
}
