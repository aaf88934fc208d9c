using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace StashMatch.Store.Data;

/// <summary>One short transaction for each verb.</summary>
internal static class ShortWrite
{
    /// <summary>Reads, changes and saves as one step. On SQLite the write lock is taken first, so what was read still holds when it is written.</summary>
    /// <exception cref="StoreFailedException">It could not be saved; nothing of it stands in the file.</exception>
    public static async Task<T> WriteAsync<T>(this IDbContextFactory<StashContext> contexts, Func<StashContext, Task<T>> change, CancellationToken cancel)
    {
        try
        {
            await using var context = await contexts.CreateDbContextAsync(cancel);
            await using var step = await context.Database.BeginTransactionAsync(cancel);
            var result = await change(context);
            await context.SaveChangesAsync(cancel);
            await step.CommitAsync(cancel);
            return result;
        }
        catch (SqliteException e)
        {
            throw new StoreFailedException(Why(e), e);
        }
        catch (DbUpdateException e) when (e.InnerException is SqliteException inner)
        {
            throw new StoreFailedException(Why(inner), e);
        }
    }

    /// <summary>What a result code of SQLite means to a person.</summary>
    public static StoreFailure Why(SqliteException fault) => fault.SqliteErrorCode switch
    {
        13 => StoreFailure.DiskFull,
        8 => StoreFailure.ReadOnly,
        10 or 14 => StoreFailure.InputOutput,
        5 or 6 => StoreFailure.Busy,
        11 or 26 => StoreFailure.Damaged,
        _ => StoreFailure.Other,
    };

    /// <summary>What the system's file error means to a person: error 28 is a full disk, 30 a disk that may only be read (POSIX), 0x70 and 0x13 the same on Windows.</summary>
    public static StoreFailure Why(Exception fault) => fault switch
    {
        SqliteException sqlite => Why(sqlite),
        StoreFailedException failed => failed.Why,
        UnauthorizedAccessException => StoreFailure.ReadOnly,
        IOException { HResult: var code } => (code & 0xFFFF) switch
        {
            28 or 0x70 => StoreFailure.DiskFull,
            30 or 0x13 => StoreFailure.ReadOnly,
            _ => StoreFailure.InputOutput,
        },
        _ => StoreFailure.Other,
    };
}
