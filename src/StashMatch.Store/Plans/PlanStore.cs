using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Quantities;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Remembers plans by name and promises them their yarn. A leftover promised to one plan is not promised to another.</summary>
public sealed class PlanStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>Saves a new plan and promises its yarn, or says what stands in the way. A name another plan has is numbered: "Winter hat (2)".</summary>
    public Task<PlanOutcome> SaveAsync(NewPlan plan, CancellationToken cancel = default) =>
        PutAsync(plan, null, null, cancel);

    /// <summary>Saves a plan over an earlier one, which must not have changed since it was read.</summary>
    /// <param name="id">The earlier plan.</param>
    /// <param name="version">The earlier plan's version as it was read.</param>
    /// <param name="plan">What it is to be.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<PlanOutcome> ReplaceAsync(string id, Guid version, NewPlan plan, CancellationToken cancel = default) =>
        PutAsync(plan, id, version, cancel);

    /// <summary>Gives a plan another name, numbered where another plan has it.</summary>
    public Task<PlanOutcome> RenameAsync(string id, string name, CancellationToken cancel = default) => ChangeAsync(
        id,
        async (context, row) =>
        {
            var errors = new FieldErrors();
            errors.CheckText("name", name?.Trim(), LeftoverStore.MostName);
            if (string.IsNullOrWhiteSpace(name))
            {
                errors.Add("name", "is missing");
            }
            else
            {
                row.Name = await FreeNameAsync(context, name.Trim(), row.Id, cancel);
            }

            return new PlanOutcome { Errors = errors };
        },
        cancel);

    /// <summary>Copies a plan under the first free name, "Winter hat (2)". A copy promises itself nothing: the original has the yarn.</summary>
    public Task<PlanOutcome> CopyAsync(string id, CancellationToken cancel = default) => contexts.WriteAsync(
        async context =>
        {
            if (await FetchAsync(context, id, cancel) is not { } row)
            {
                return new PlanOutcome { NotThere = true };
            }

            var copy = NewRow(await FreeNameAsync(context, row.Name, null, cancel));
            (copy.Hat, copy.Size, copy.Stripes, copy.Arrangement, copy.Question) = (row.Hat, row.Size, row.Stripes, row.Arrangement, row.Question);
            foreach (var p in row.Promises)
            {
                copy.Promises.Add(new PromiseRow { PlanId = copy.Id, LeftoverId = p.LeftoverId, LeftoverName = p.LeftoverName, Part = p.Part, Millimetres = p.Millimetres });
            }

            context.Plans.Add(copy);
            return new PlanOutcome { Id = copy.PublicId };
        },
        cancel);

    /// <summary>Promises a plan its yarn, or gives it free again.</summary>
    public Task<PlanOutcome> ReserveAsync(string id, bool reserve, CancellationToken cancel = default) => ChangeAsync(
        id,
        async (context, row) =>
        {
            row.Reserves = reserve;
            return new PlanOutcome { Clashes = reserve && row.FinishedAt is null ? await Promises.ClashesAsync(context, row, [], cancel) : [] };
        },
        cancel);

    /// <summary>Keeps how far a plan's knitting sheet is, as JSON of the page's own.</summary>
    public Task<PlanOutcome> KeepSheetAsync(string id, string? sheet, CancellationToken cancel = default) => ChangeAsync(
        id,
        (_, row) =>
        {
            var errors = new FieldErrors();
            errors.CheckText("sheet", sheet, NewPlan.MostJson);
            row.Sheet = sheet;
            return Task.FromResult(new PlanOutcome { Errors = errors });
        },
        cancel);

    /// <summary>Finishes a plan: what was knitted is booked from its leftovers and its promises end, all of it or nothing.</summary>
    /// <param name="id">The plan.</param>
    /// <param name="used">Grams by leftover; may be empty.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<PlanOutcome> FinishAsync(string id, IReadOnlyDictionary<string, Grams> used, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(used);
        return ChangeAsync(
            id,
            async (context, row) =>
            {
                var errors = new FieldErrors();
                foreach (var (leftover, grams) in used.Where(u => u.Value > default(Grams)).OrderBy(u => u.Key, StringComparer.Ordinal))
                {
                    if (await LeftoverStore.FetchAsync(context, leftover, cancel) is not { RemovedAt: null } from)
                    {
                        errors.Add($"used.{leftover}", "is not here any more");
                    }
                    else if (new Ledger([.. from.Entries]).Left is var left && grams > left)
                    {
                        errors.Add($"used.{leftover}", $"is more than the {left} that is left of {from.Name}: weigh it again first");
                    }
                    else
                    {
                        from.Entries.Add(new EntryRow { LeftoverId = from.Id, Kind = EntryKind.Used, UsedMilligrams = grams.Milligrams, For = row.Name, At = clock.GetUtcNow() });
                        LeftoverStore.Renew(context, from);
                    }
                }

                row.FinishedAt = clock.GetUtcNow();
                return new PlanOutcome { Errors = errors };
            },
            cancel);
    }

    /// <summary>Deletes a plan and its promises; false where there is none.</summary>
    public Task<bool> RemoveAsync(string id, CancellationToken cancel = default) => contexts.WriteAsync(
        async context => await context.Plans.Where(p => p.PublicId == id).ExecuteDeleteAsync(cancel) > 0, cancel);

    /// <summary>All plans, the latest first.</summary>
    public Task<IReadOnlyList<SavedPlan>> ListAsync(CancellationToken cancel = default) => ListAsync(null, cancel);

    /// <summary>One plan; null where there is none.</summary>
    public async Task<SavedPlan?> FindAsync(string id, CancellationToken cancel = default) => await ListAsync(id, cancel) is [var one] ? one : null;

    private static async Task<PlanRow?> FetchAsync(StashContext context, string id, CancellationToken cancel) =>
        await context.Plans.AsTracking().Include(p => p.Promises.OrderBy(r => r.Id)).FirstOrDefaultAsync(p => p.PublicId == id, cancel);

    // The name wished for, or the first free one numbered from 2.
    private static async Task<string> FreeNameAsync(StashContext context, string wanted, Guid? of, CancellationToken cancel)
    {
        var taken = (await context.Plans.Where(p => p.Id != of).Select(p => p.Name).ToListAsync(cancel)).ToHashSet(StringComparer.Ordinal);
        return taken.Contains(wanted) ? Enumerable.Range(2, taken.Count + 1).Select(n => Numbered(wanted, n)).First(n => !taken.Contains(n)) : wanted;
    }

    private static string Numbered(string name, int number)
    {
        var end = $" ({number})";
        return name.Length + end.Length > LeftoverStore.MostName ? name[..(LeftoverStore.MostName - end.Length)].TrimEnd() + end : name + end;
    }

    private PlanRow NewRow(string name)
    {
        var id = Guid.NewGuid();
        return new PlanRow { Id = id, PublicId = $"plan-{id:N}"[..17], Name = name, Hat = "", Size = "", Arrangement = "", SavedAt = clock.GetUtcNow() };
    }

    private async Task<PlanOutcome> PutAsync(NewPlan plan, string? over, Guid? version, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var errors = new FieldErrors();
        plan.Check(errors);
        return errors.Any
            ? new PlanOutcome { Errors = errors }
            : await contexts.WriteAsync(
                async context =>
                {
                    var row = over is null ? NewRow(plan.Name.Trim()) : await FetchAsync(context, over, cancel);
                    if (row is null || (version is not null && row.Version != version))
                    {
                        return new PlanOutcome { NotThere = row is null, ChangedMeanwhile = row is not null };
                    }

                    row.Name = await FreeNameAsync(context, plan.Name.Trim(), row.Id, cancel);
                    (row.Hat, row.Size, row.Stripes, row.Arrangement) = (plan.Hat, plan.Size, plan.Stripes, plan.Arrangement);
                    (row.Question, row.Reserves, row.SavedAt) = (plan.Question, plan.Reserves, clock.GetUtcNow());
                    row.Promises.Clear();
                    var strangers = await Promises.AddAsync(context, row, plan.Parts, cancel);
                    var clashes = plan.Reserves ? await Promises.ClashesAsync(context, row, strangers, cancel) : strangers;
                    if (clashes.Count > 0)
                    {
                        context.ChangeTracker.Clear();
                        return new PlanOutcome { Clashes = clashes };
                    }

                    if (over is null)
                    {
                        context.Plans.Add(row);
                    }

                    return new PlanOutcome { Id = row.PublicId };
                },
                cancel);
    }

    private Task<PlanOutcome> ChangeAsync(string id, Func<StashContext, PlanRow, Task<PlanOutcome>> change, CancellationToken cancel) => contexts.WriteAsync(
        async context =>
        {
            if (await FetchAsync(context, id, cancel) is not { } row)
            {
                return new PlanOutcome { NotThere = true };
            }

            var outcome = await change(context, row);
            if (outcome.Errors.Any || outcome.Clashes.Count > 0)
            {
                context.ChangeTracker.Clear();
                return outcome;
            }

            context.Entry(row).Property(r => r.Version).IsModified = true;
            return outcome with { Id = row.PublicId };
        },
        cancel);

    private async Task<IReadOnlyList<SavedPlan>> ListAsync(string? only, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var plans = await context.Plans.Where(p => only == null || p.PublicId == only).Include(p => p.Promises.OrderBy(r => r.Id)).OrderByDescending(p => p.SavedAt).ThenBy(p => p.PublicId).ToListAsync(cancel);
        var known = await context.Leftovers.Where(r => context.Promises.Any(p => p.LeftoverId == r.Id)).ToDictionaryAsync(r => r.Id, cancel);
        return plans.ConvertAll(p => Promises.ToPlan(p, known));
    }
}
