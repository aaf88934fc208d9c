using System.Text.Json;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Everything one person has here: written out, read into an empty store, deleted.</summary>
public sealed class Everything(IDbContextFactory<StashContext> contexts, BackupStore backups)
{
    /// <summary>The largest file taken, bytes.</summary>
    public const int MostBytes = 64 * 1024 * 1024;

    /// <summary>All of it as it stands at one moment, as JSON that loses nothing.</summary>
    public async Task<byte[]> WriteAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await context.Database.OpenConnectionAsync(cancel);

        // A reader's transaction: one moment for all queries, and nobody who writes has to wait.
        await using var moment = ((SqliteConnection)context.Database.GetDbConnection()).BeginTransaction(deferred: true);
        await context.Database.UseTransactionAsync(moment, cancel);
        return JsonSerializer.SerializeToUtf8Bytes(await EverythingWriter.GatherAsync(context, cancel), EverythingJson.Options);
    }

    /// <summary>Reads all of it into an empty store, all of it or nothing.</summary>
    /// <returns>What is wrong, by field, with nothing kept; nothing wrong where it is kept. Under <c>store</c>: the store is not empty.</returns>
    public async Task<FieldErrors> ReadAsync(ReadOnlyMemory<byte> file, CancellationToken cancel = default)
    {
        var errors = new FieldErrors();
        var all = Parse(file, errors);
        return all is null ? errors : await contexts.WriteAsync(
            async context =>
            {
                if (!await IsEmptyAsync(context, cancel))
                {
                    errors.Add("store", "is not empty: first delete everything, or start StashMatch on a new folder");
                    return errors;
                }

                var last = await context.Ledger.IgnoreQueryFilters().MaxAsync(e => (long?)e.Id, cancel) ?? 0;
                var rows = new EverythingReader(errors, new LedgerReader(errors, last)).Read(all).ToList();
                if (!errors.Any)
                {
                    await context.Marks.ExecuteDeleteAsync(cancel);
                    context.AddRange(rows);
                }

                return errors;
            },
            cancel);
    }

    /// <summary>Deletes everything or nothing, so that nothing of it can be read from the file any more. The demo does not come back.</summary>
    /// <param name="backupsToo">Whether every backup is removed too.</param>
    /// <param name="cancel">Gives up; nothing is deleted then.</param>
    /// <returns>The backups that were to be removed and could not be.</returns>
    /// <exception cref="StoreFailedException">Nothing is deleted: the disk did not take it, or the file was in use.</exception>
    public async Task<IReadOnlyList<string>> DeleteAsync(bool backupsToo, CancellationToken cancel = default)
    {
        await backups.ChangeWholeAsync(context => ClearAsync(context, cancel), cancel);
        return backupsToo ? [.. backups.List().Select(b => b.Name).Where(name => !backups.Remove(name))] : [];
    }

    /// <summary>Deletes every row of one's own but the marks.</summary>
    internal Task ClearAsync(CancellationToken cancel) => contexts.WriteAsync(
        async context =>
        {
            await ClearAsync(context, cancel);
            return true;
        },
        cancel);

    private static async Task ClearAsync(StashContext context, CancellationToken cancel)
    {
        await context.Promises.ExecuteDeleteAsync(cancel);
        await context.Plans.ExecuteDeleteAsync(cancel);
        await context.Ledger.ExecuteDeleteAsync(cancel);
        await context.Leftovers.ExecuteDeleteAsync(cancel);
        await context.Hats.ExecuteDeleteAsync(cancel);
        await context.Calibrations.ExecuteDeleteAsync(cancel);
        await context.Kits.ExecuteDeleteAsync(cancel);
        await context.Testers.ExecuteDeleteAsync(cancel);
        await context.Settings.ExecuteDeleteAsync(cancel);
        await context.Phones.ExecuteDeleteAsync(cancel);
        await context.DoneOnce.ExecuteDeleteAsync(cancel);
    }

    private static EverythingJson? Parse(ReadOnlyMemory<byte> file, FieldErrors errors)
    {
        if (file.Length > MostBytes)
        {
            errors.Add("file", "is over 64 MB");
            return null;
        }

        try
        {
            var all = JsonSerializer.Deserialize<EverythingJson>(file.Span, EverythingJson.Options);
            if (all is null)
            {
                errors.Add("file", "must be a JSON object");
            }

            return all;
        }
        catch (JsonException e)
        {
            var field = (e.Path ?? "").TrimStart('$').TrimStart('.');
            errors.Add(field.Length > 0 ? field : "file", "cannot be read: this is not a StashMatch file, or a value is of the wrong kind");
            return null;
        }
    }

    private static async Task<bool> IsEmptyAsync(StashContext context, CancellationToken cancel) =>
        !await context.Leftovers.AnyAsync(cancel) && !await context.Hats.AnyAsync(cancel) && !await context.Plans.AnyAsync(cancel)
        && !await context.Kits.AnyAsync(cancel) && !await context.Testers.AnyAsync(cancel) && !await context.Calibrations.AnyAsync(cancel) && !await context.Settings.AnyAsync(cancel);
}
