using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Quantities;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Who has how much of a leftover promised.</summary>
internal static class Promises
{
    /// <summary>Writes down what a plan takes; names the leftovers that are not there.</summary>
    public static async Task<List<PromiseClash>> AddAsync(StashContext context, PlanRow plan, IReadOnlyList<PlannedPart> parts, CancellationToken cancel)
    {
        var ids = parts.Select(p => p.Leftover).Distinct(StringComparer.Ordinal).ToList();
        var rows = await context.Leftovers.Where(r => r.RemovedAt == null && ids.Contains(r.PublicId)).ToDictionaryAsync(r => r.PublicId, StringComparer.Ordinal, cancel);
        foreach (var part in parts.Where(p => rows.ContainsKey(p.Leftover)))
        {
            var row = rows[part.Leftover];
            plan.Promises.Add(new PromiseRow { PlanId = plan.Id, LeftoverId = row.Id, LeftoverName = row.Name, Part = part.Part, Millimetres = part.Millimetres });
        }

        return [.. parts.Where(p => !rows.ContainsKey(p.Leftover)).GroupBy(p => p.Leftover, StringComparer.Ordinal)
            .Select(g => new PromiseClash(g.Key, g.Key, Metres.FromMillimetres(g.Sum(p => p.Millimetres)), default, []))];
    }

    /// <summary>The leftovers of which a plan wants more than is left and not promised to other plans, added to those already known.</summary>
    public static async Task<List<PromiseClash>> ClashesAsync(StashContext context, PlanRow plan, List<PromiseClash> known, CancellationToken cancel)
    {
        var wanted = plan.Promises.Where(p => p.LeftoverId is not null).GroupBy(p => p.LeftoverId!.Value).ToDictionary(g => g.Key, g => g.Sum(p => p.Millimetres));
        var ids = wanted.Keys.ToList();
        var rows = await context.Leftovers.Where(r => ids.Contains(r.Id)).OrderBy(r => r.PublicId).ToListAsync(cancel);
        var lines = (await context.Ledger.Where(e => ids.Contains(e.LeftoverId)).OrderBy(e => e.Id).ToListAsync(cancel)).ToLookup(e => e.LeftoverId);
        var others = (await context.Promises
                .Join(context.Plans, p => p.PlanId, x => x.Id, (Promise, Plan) => new { Promise, Plan })
                .Where(x => x.Plan.Reserves && x.Plan.FinishedAt == null && x.Plan.Id != plan.Id && x.Promise.LeftoverId != null && ids.Contains(x.Promise.LeftoverId.Value))
                .Select(x => new { Leftover = x.Promise.LeftoverId!.Value, x.Plan.PublicId, x.Plan.Name, x.Promise.Millimetres })
                .ToListAsync(cancel))
            .ToLookup(x => x.Leftover);
        foreach (var row in rows)
        {
            var left = LoggedLeftover.Of(row, new Ledger([.. lines[row.Id]]), 0);
            var held = row.RemovedAt is null && !left.KnittedUp ? left.ToLeftover()?.Held.Millimetres ?? 0 : 0;
            var free = Math.Max(0, held - others[row.Id].Sum(o => o.Millimetres));
            if (wanted[row.Id] > free)
            {
                known.Add(new PromiseClash(
                    row.PublicId,
                    row.Name,
                    Metres.FromMillimetres(wanted[row.Id]),
                    Metres.FromMillimetres(free),
                    [.. others[row.Id].GroupBy(o => (o.PublicId, o.Name)).OrderBy(g => g.Key.Name, StringComparer.Ordinal)
                        .Select(g => new OtherPlan(g.Key.PublicId, g.Key.Name, Metres.FromMillimetres(g.Sum(o => o.Millimetres))))]));
            }
        }

        return known;
    }

    public static SavedPlan ToPlan(PlanRow row, Dictionary<Guid, LeftoverRow> known) => new()
    {
        Id = row.PublicId,
        Version = row.Version,
        Name = row.Name,
        Hat = row.Hat,
        Size = row.Size,
        Stripes = row.Stripes,
        Arrangement = row.Arrangement,
        Parts = [.. row.Promises.Select(p => ToPart(p, p.LeftoverId is { } id ? known.GetValueOrDefault(id) : null))],
        Question = row.Question,
        Sheet = row.Sheet,
        Reserves = row.Reserves && row.FinishedAt is null,
        SavedAt = row.SavedAt,
        FinishedAt = row.FinishedAt,
    };

    private static SavedPart ToPart(PromiseRow promise, LeftoverRow? leftover)
    {
        var length = Metres.FromMillimetres(promise.Millimetres);
        var ratio = leftover is null ? null : leftover.Ratio;
        return new SavedPart(leftover?.PublicId, promise.LeftoverName, promise.Part, length, ratio is null ? null : Grams.FromMilligrams((long)Math.Ceiling(1000 * ratio.GramsOf(length))));
    }
}
