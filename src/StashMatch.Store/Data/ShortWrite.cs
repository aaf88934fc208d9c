using Microsoft.EntityFrameworkCore;

namespace StashMatch.Store.Data;

/// <summary>One short transaction for each verb.</summary>
internal static class ShortWrite
{
    /// <summary>Reads, changes and saves as one step. On SQLite the write lock is taken first, so what was read still holds when it is written.</summary>
    public static async Task<T> WriteAsync<T>(this IDbContextFactory<StashContext> contexts, Func<StashContext, Task<T>> change, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await using var step = await context.Database.BeginTransactionAsync(cancel);
        var result = await change(context);
        await context.SaveChangesAsync(cancel);
        await step.CommitAsync(cancel);
        return result;
    }
}
