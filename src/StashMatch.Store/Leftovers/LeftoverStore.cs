using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Remembers leftovers: weigh, weigh again, knit up, remove. Each verb is saved before it returns.</summary>
public sealed class LeftoverStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>The longest name.</summary>
    public const int MostName = 80;

    /// <summary>The longest note.</summary>
    public const int MostNote = 500;

    /// <summary>The longest key of a request that is to be carried out once.</summary>
    public const int MostKey = 200;

    /// <summary>Logs a leftover and returns its id. The same <paramref name="once"/> key, 1 to 200 characters, logs once.</summary>
    /// <exception cref="ArgumentException">A text <see cref="NewLeftover.Check"/> finds fault with, an id already taken, or a key too short or too long.</exception>
    public Task<string> WeighAsync(NewLeftover leftover, string? once = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        if (once is { Length: 0 or > MostKey })
        {
            throw new ArgumentException($"A key has 1 to {MostKey} characters.", nameof(once));
        }

        var errors = new FieldErrors();
        leftover.Check(errors);
        if (errors.Any)
        {
            throw new ArgumentException(string.Join("; ", errors.ByField.Select(e => $"{e.Key} {e.Value[0]}")), nameof(leftover));
        }

        return contexts.WriteAsync(
            async context =>
            {
                if (once is not null && await context.DoneOnce.FirstOrDefaultAsync(d => d.Key == once, cancel) is { } done)
                {
                    return done.Result;
                }

                var now = clock.GetUtcNow();
                var row = leftover.ToRow(await Tags.TakenAsync(context, cancel), now);
                context.Leftovers.Add(row);
                if (once is not null)
                {
                    context.DoneOnce.Add(new DoneOnceRow { Key = once, Result = row.PublicId, At = now });
                }

                return row.PublicId;
            },
            cancel);
    }

    /// <summary>Weighs a leftover again; false where there is none.</summary>
    public Task<bool> ReweighAsync(string id, Weighing weighing, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(weighing);
        return ChangeAsync(
            id,
            row =>
            {
                row.KnittedUpAt = null;
                row.Weighings.Add(WeighingRow.Of(weighing, row.Id, clock.GetUtcNow()));
            },
            cancel);
    }

    /// <summary>Says a leftover is finished; false where there is none.</summary>
    public Task<bool> KnitUpAsync(string id, CancellationToken cancel = default) =>
        ChangeAsync(id, row => row.KnittedUpAt = clock.GetUtcNow(), cancel);

    /// <summary>Takes a leftover off the list; false where there is none. Nothing is forgotten: <see cref="PutBackAsync"/> undoes it.</summary>
    public Task<bool> RemoveAsync(string id, CancellationToken cancel = default) =>
        ChangeAsync(id, row => row.RemovedAt = clock.GetUtcNow(), cancel);

    /// <summary>Undoes one step, the removal before the knitting up; false where there is no such leftover. Its code is a new one if somebody has it by now.</summary>
    public Task<bool> PutBackAsync(string id, CancellationToken cancel = default) => contexts.WriteAsync(
        async context =>
        {
            if (await context.Leftovers.AsTracking().FirstOrDefaultAsync(r => r.PublicId == id, cancel) is not { } row)
            {
                return false;
            }

            if (row.RemovedAt is null)
            {
                row.KnittedUpAt = null;
                return true;
            }

            row.RemovedAt = null;
            row.Code = (await Tags.TakenAsync(context, cancel)).TakeCode(row.Name, row.Code);
            return true;
        },
        cancel);

    /// <summary>All leftovers not removed, newest first.</summary>
    public async Task<IReadOnlyList<LoggedLeftover>> ListAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var seen = await WithLastWeighing(context.Leftovers.Where(r => r.RemovedAt == null)).ToListAsync(cancel);
        return seen.ConvertAll(s => LoggedLeftover.Of(s.Row, s.Last, s.Weighings));
    }

    /// <summary>One leftover; null where there is none, or it was removed.</summary>
    public async Task<LoggedLeftover?> FindAsync(string id, CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var seen = await WithLastWeighing(context.Leftovers.Where(r => r.PublicId == id && r.RemovedAt == null)).FirstOrDefaultAsync(cancel);
        return seen is null ? null : LoggedLeftover.Of(seen.Row, seen.Last, seen.Weighings);
    }

    /// <summary>Those that may go into hats.</summary>
    public async Task<IReadOnlyList<Leftover>> ForHatsAsync(CancellationToken cancel = default) =>
        [.. (await ListAsync(cancel)).Where(l => l.ForHats).Select(l => l.ToLeftover()!)];

    private static IQueryable<Seen> WithLastWeighing(IQueryable<LeftoverRow> rows) => rows
        .OrderByDescending(r => r.LoggedAt).ThenByDescending(r => r.PublicId)
        .Select(r => new Seen(r, r.Weighings.OrderByDescending(w => w.Id).First(), r.Weighings.Count));

    private Task<bool> ChangeAsync(string id, Action<LeftoverRow> change, CancellationToken cancel) => contexts.WriteAsync(
        async context =>
        {
            if (await context.Leftovers.AsTracking().FirstOrDefaultAsync(r => r.PublicId == id && r.RemovedAt == null, cancel) is not { } row)
            {
                return false;
            }

            change(row);

            // A weighing alone does not change the row; its version is renewed all the same.
            context.Entry(row).Property(r => r.Version).IsModified = true;
            return true;
        },
        cancel);

    private sealed record Seen(LeftoverRow Row, WeighingRow Last, int Weighings);
}
