using System.Globalization;
using Microsoft.EntityFrameworkCore;

namespace StashMatch.Store.Data;

/// <summary>The row that says somebody is migrating. It survives a killed process, and would then be waited for without end.</summary>
internal sealed class MigrationLock(StashContext context, TimeProvider clock)
{
    private static readonly TimeSpan Stale = TimeSpan.FromMinutes(2);

    /// <summary>Waits until nobody holds it; a row older than two minutes belongs to nobody and is cleared.</summary>
    /// <param name="ofOurs">Whether this program was killed while migrating: then the row is its own, and is cleared at once.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task WaitAsync(bool ofOurs, CancellationToken cancel)
    {
        while (await HeldSinceAsync(cancel) is { } since)
        {
            if (ofOurs || (clock.GetUtcNow() - since).Duration() > Stale)
            {
                await context.Database.ExecuteSqlRawAsync("DELETE FROM __EFMigrationsLock", cancel);
                return;
            }

            await Task.Delay(TimeSpan.FromMilliseconds(500), clock, cancel);
        }
    }

    private async Task<DateTimeOffset?> HeldSinceAsync(CancellationToken cancel)
    {
        if (await ScalarAsync("SELECT name FROM sqlite_master WHERE name = '__EFMigrationsLock'", cancel) is null
            || await ScalarAsync("SELECT Timestamp FROM __EFMigrationsLock", cancel) is not { } written)
        {
            return null;
        }

        return DateTimeOffset.TryParse($"{written}", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var since) ? since : DateTimeOffset.MinValue;
    }

    private async Task<object?> ScalarAsync(string sql, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        var value = await command.ExecuteScalarAsync(cancel);
        await context.Database.CloseConnectionAsync();
        return value;
    }
}
