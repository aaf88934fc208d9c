using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Remembers leftovers: weigh, weigh again, use, knit up, edit, remove, undo. Each verb is saved before it returns.</summary>
public sealed class LeftoverStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>The longest name.</summary>
    public const int MostName = LeftoverDetails.MostName;

    /// <summary>The longest key of a request that is to be carried out once.</summary>
    public const int MostKey = 200;

    /// <summary>Logs a leftover and returns its id. The same <paramref name="once"/> key, 1 to 200 characters, logs once.</summary>
    /// <exception cref="ArgumentException">A text <see cref="NewLeftover.Check"/> finds fault with, an id already taken, or a key too short or too long.</exception>
    /// <exception cref="KeyUsedException">The key came with another leftover before.</exception>
    public Task<string> WeighAsync(NewLeftover leftover, string? once = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        if (once is { Length: 0 or > MostKey })
        {
            throw new ArgumentException($"A key has 1 to {MostKey} characters.", nameof(once));
        }

        var errors = new FieldErrors();
        leftover.Check(errors);
        errors.ThrowIfAny(nameof(leftover));

        return contexts.WriteAsync(
            async context =>
            {
                if (once is not null && await context.DoneOnce.FirstOrDefaultAsync(d => d.Key == once, cancel) is { } done)
                {
                    return done.Asked is null || done.Asked == leftover.Mark() ? done.Result : throw new KeyUsedException();
                }

                var now = clock.GetUtcNow();
                var row = leftover.ToRow(await Tags.TakenAsync(context, cancel), now);
                context.Leftovers.Add(row);
                if (once is not null)
                {
                    context.DoneOnce.Add(new DoneOnceRow { Key = once, Result = row.PublicId, Asked = leftover.Mark(), At = now });
                }

                return row.PublicId;
            },
            cancel);
    }

    /// <summary>Weighs a leftover again; false where there is none.</summary>
    public Task<bool> ReweighAsync(string id, Weighing weighing, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(weighing);
        return ChangeAsync(id, (row, now) => row.Entries.Add(EntryRow.Of(weighing, row.Id, now)), cancel);
    }

    /// <summary>Books so many grams as knitted from a leftover.</summary>
    /// <param name="id">The leftover.</param>
    /// <param name="used">Over 0.</param>
    /// <param name="what">What it was used for, at most 80 characters; null where nobody said.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<UseOutcome> UseAsync(string id, Grams used, string? what = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfEqual(used, default);
        var errors = new FieldErrors();
        errors.CheckText("for", what, MostName);
        errors.ThrowIfAny(nameof(what));
        return contexts.WriteAsync(
            async context =>
            {
                if (await FetchAsync(context, id, cancel) is not { RemovedAt: null } row)
                {
                    return UseOutcome.NotThere;
                }

                if (used > new Ledger([.. row.Entries]).Left)
                {
                    return UseOutcome.MoreThanIsLeft;
                }

                row.Entries.Add(new EntryRow { LeftoverId = row.Id, Kind = EntryKind.Used, UsedMilligrams = used.Milligrams, For = what, At = clock.GetUtcNow() });
                Renew(context, row);
                return UseOutcome.Booked;
            },
            cancel);
    }

    /// <summary>Says a leftover is finished; false where there is none.</summary>
    public Task<bool> KnitUpAsync(string id, CancellationToken cancel = default) =>
        ChangeAsync(id, (row, now) => row.Entries.Add(new EntryRow { LeftoverId = row.Id, Kind = EntryKind.KnittedUp, At = now }), cancel);

    /// <summary>Takes a leftover off the list; false where there is none. Nothing is forgotten: <see cref="UndoAsync"/> undoes it.</summary>
    public Task<bool> RemoveAsync(string id, CancellationToken cancel = default) => ChangeAsync(
        id,
        (row, now) =>
        {
            row.RemovedAt = now;
            row.Entries.Add(new EntryRow { LeftoverId = row.Id, Kind = EntryKind.Removed, At = now });
        },
        cancel);

    /// <summary>Changes everything but the weighing: <c>d => d with { Bag = "Peg bag" }</c>. Fields another browser changed meanwhile stay as they are.</summary>
    /// <returns>What is wrong by field, with nothing saved; nothing wrong where it is saved. Under <c>id</c>: the leftover is not there.</returns>
    public Task<FieldErrors> EditAsync(string id, Func<LeftoverDetails, LeftoverDetails> change, CancellationToken cancel = default) => EditAsync(id, change, null, cancel);

    /// <summary>The same, unless it is no longer the <paramref name="version"/> that was read; then nothing is saved and <c>version</c> says so.</summary>
    public Task<FieldErrors> EditAsync(string id, Func<LeftoverDetails, LeftoverDetails> change, Guid? version, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(change);
        return contexts.WriteAsync(
            async context =>
            {
                var errors = new FieldErrors();
                if (await FetchAsync(context, id, cancel) is not { RemovedAt: null } row)
                {
                    errors.Add("id", "is not here any more");
                    return errors;
                }

                if (version is not null && version != row.Version)
                {
                    errors.Add("version", "was changed meanwhile: read it again");
                    return errors;
                }

                var before = row.ToDetails();
                var after = change(before);
                after.Check(errors);
                if (after.Code is { } code && code != row.Code && await context.Leftovers.FirstOrDefaultAsync(r => r.Code == code && r.RemovedAt == null, cancel) is { } holder)
                {
                    errors.Add("code", $"is on {holder.Name} already");
                }

                if (!errors.Any)
                {
                    await ApplyAsync(context, row, after, cancel);
                    if (EditedFields.Write(before, row.ToDetails()) is { } changes)
                    {
                        row.Entries.Add(new EntryRow { LeftoverId = row.Id, Kind = EntryKind.Edited, Changes = changes, At = clock.GetUtcNow() });
                    }
                }

                return errors;
            },
            cancel);
    }

    /// <summary>Undoes the last step that is not undone yet, and again the one before it; the first weighing stays. A code somebody else has by now is made anew.</summary>
    /// <returns>What was undone; null where there is nothing to undo, or no such leftover.</returns>
    public Task<EntryKind?> UndoAsync(string id, CancellationToken cancel = default) => contexts.WriteAsync(
        async context =>
        {
            if (await FetchAsync(context, id, cancel) is not { } row || new Ledger([.. row.Entries]).LastStep is not { } step)
            {
                return (EntryKind?)null;
            }

            if (step.Kind == EntryKind.Removed)
            {
                row.Code = (await Tags.TakenAsync(context, cancel)).TakeCode(row.Name, row.Code);
                row.RemovedAt = null;
            }
            else if (step.Kind == EntryKind.Edited)
            {
                await ApplyAsync(context, row, EditedFields.Undo(row.ToDetails(), step.Changes), cancel);
            }

            row.Entries.Add(new EntryRow { LeftoverId = row.Id, Kind = EntryKind.Undone, Undoes = step.Id, At = clock.GetUtcNow() });
            Renew(context, row);
            return step.Kind;
        },
        cancel);

    /// <summary>The same as <see cref="UndoAsync"/>; false where nothing was undone.</summary>
    public async Task<bool> PutBackAsync(string id, CancellationToken cancel = default) => await UndoAsync(id, cancel) is not null;

    /// <summary>Every line of a leftover's ledger, oldest first; empty where there is none. A leftover off the list has one too.</summary>
    public async Task<IReadOnlyList<HistoryEntry>> HistoryAsync(string id, CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var lines = await context.Ledger.Where(e => context.Leftovers.Any(r => r.PublicId == id && r.Id == e.LeftoverId)).OrderBy(e => e.Id).ToListAsync(cancel);
        return lines.Count == 0 ? [] : new Ledger(lines).History();
    }

    /// <summary>All leftovers not removed, newest first.</summary>
    public Task<IReadOnlyList<LoggedLeftover>> ListAsync(CancellationToken cancel = default) => ListAsync(null, null, cancel);

    /// <summary>All leftovers not removed, newest first; what is promised to one plan counts as free.</summary>
    public Task<IReadOnlyList<LoggedLeftover>> ListForPlanAsync(string plan, CancellationToken cancel = default) => ListAsync(null, plan, cancel);

    /// <summary>One leftover; null where there is none, or it was removed.</summary>
    public async Task<LoggedLeftover?> FindAsync(string id, CancellationToken cancel = default) => await ListAsync(id, null, cancel) is [var one] ? one : null;

    /// <summary>Those that may go into hats, less what is promised to plans.</summary>
    public Task<IReadOnlyList<Leftover>> ForHatsAsync(CancellationToken cancel = default) => ForHatsAsync(Promised.LeftOut, null, null, cancel);

    /// <summary>Those that may go into hats.</summary>
    /// <param name="promised">Whether yarn promised to plans is offered again.</param>
    /// <param name="butPlan">A plan whose own promises are offered to it again; null for none.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<IReadOnlyList<Leftover>> ForHatsAsync(Promised promised, string? butPlan = null, CancellationToken cancel = default) => ForHatsAsync(promised, butPlan, null, cancel);

    /// <summary>Those of one bag, or of all, that may go into hats.</summary>
    public async Task<IReadOnlyList<Leftover>> ForHatsAsync(Promised promised, string? butPlan, string? bag, CancellationToken cancel) =>
        [.. (await ListAsync(null, butPlan, cancel)).Where(l => l.ForHats && (bag is null || l.Bag == bag)).Select(l => promised == Promised.LeftOut ? l.ToFreeLeftover() : l.ToLeftover()).OfType<Leftover>()];

    /// <summary>A leftover of one's own with its ledger, to be changed; null where there is none.</summary>
    internal static async Task<LeftoverRow?> FetchAsync(StashContext context, string id, CancellationToken cancel) =>
        await context.Leftovers.AsTracking().Include(r => r.Entries.OrderBy(e => e.Id)).FirstOrDefaultAsync(r => r.PublicId == id, cancel);

    /// <summary>A line alone does not change the row; its version is renewed all the same.</summary>
    internal static void Renew(StashContext context, LeftoverRow row) => context.Entry(row).Property(r => r.Version).IsModified = true;

    private static async Task ApplyAsync(StashContext context, LeftoverRow row, LeftoverDetails after, CancellationToken cancel)
    {
        row.Take(after);
        if (after.Code != row.Code)
        {
            row.Code = (await Tags.TakenAsync(context, cancel)).TakeCode(after.Name, after.Code);
        }

        Renew(context, row);
    }

    private async Task<IReadOnlyList<LoggedLeftover>> ListAsync(string? only, string? butPlan, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var open = context.Plans.Where(p => p.Reserves && p.FinishedAt == null && p.PublicId != (butPlan ?? ""));
        var rows = context.Leftovers.Where(r => r.RemovedAt == null && (only == null || r.PublicId == only));
        var seen = await rows.OrderByDescending(r => r.LoggedAt).ThenByDescending(r => r.PublicId)
            .Select(r => new { Row = r, Promised = context.Promises.Where(p => p.LeftoverId == r.Id && open.Any(o => o.Id == p.PlanId)).Sum(p => p.Millimetres), HasPicture = r.Picture != null })
            .ToListAsync(cancel);
        var lines = (await context.Ledger.Where(e => rows.Any(r => r.Id == e.LeftoverId)).OrderBy(e => e.Id).ToListAsync(cancel)).ToLookup(e => e.LeftoverId);
        return [.. seen.Where(s => lines.Contains(s.Row.Id)).Select(s => LoggedLeftover.Of(s.Row, new Ledger([.. lines[s.Row.Id]]), s.Promised, s.HasPicture))];
    }

    private Task<bool> ChangeAsync(string id, Action<LeftoverRow, DateTimeOffset> change, CancellationToken cancel) => contexts.WriteAsync(
        async context =>
        {
            if (await context.Leftovers.AsTracking().FirstOrDefaultAsync(r => r.PublicId == id && r.RemovedAt == null, cancel) is not { } row)
            {
                return false;
            }

            change(row, clock.GetUtcNow());
            Renew(context, row);
            return true;
        },
        cancel);
}
