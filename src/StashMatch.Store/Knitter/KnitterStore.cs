using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Hats;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A remembered calibration: the knitter's own, or what testers said of one hat.</summary>
public sealed record KnownCalibration(long Id, string From, Calibration Calibration, bool SwitchedOff, DateTimeOffset At, string? HatId = null)
{
    /// <summary>The usage of its one hat; the spread is that of a knitter nobody has weighed.</summary>
    public Usage OfHat => new(Calibration.Factor, Calibration.MeasureSpread, Calibrated: true);
}

/// <summary>Remembers how this knitter uses yarn, weighed swatches and finished hats, and what testers said of a hat.</summary>
public sealed class KnitterStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>Remembers one calibration and where it comes from, 1 to 200 characters.</summary>
    public Task AddAsync(string from, Calibration calibration, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return KeepAsync(from, calibration.Factor, calibration.MeasureSpread, null, cancel);
    }

    /// <summary>Takes over what testers of a hat said of its usage, in place of what was taken over before.</summary>
    public Task TakeOverAsync(string hatId, string from, Usage usage, CancellationToken cancel = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(hatId);
        ArgumentNullException.ThrowIfNull(usage);
        return KeepAsync(from, usage.Factor, usage.Spread, hatId, cancel);
    }

    private Task<bool> KeepAsync(string from, double factor, double spread, string? hatId, CancellationToken cancel)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(from);
        return contexts.WriteAsync(
            async context =>
            {
                if (hatId is not null)
                {
                    context.RemoveRange(await context.Calibrations.AsTracking().Where(c => c.HatId == hatId).ToListAsync(cancel));
                }

                context.Calibrations.Add(new CalibrationRow { From = from.Length > 200 ? from[..200] : from, HatId = hatId, Factor = factor, MeasureSpread = spread, At = clock.GetUtcNow() });
                return true;
            },
            cancel);
    }

    /// <summary>All calibrations, newest first.</summary>
    public async Task<IReadOnlyList<KnownCalibration>> ListAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context.Calibrations.OrderByDescending(c => c.Id).ToListAsync(cancel);
        return rows.ConvertAll(r => new KnownCalibration(r.Id, r.From, new Calibration(r.Factor, r.MeasureSpread), r.SwitchedOff, r.At, r.HatId));
    }

    /// <summary>Switches one on or off; false where there is none.</summary>
    public Task<bool> SwitchAsync(long id, bool off, CancellationToken cancel = default) => contexts.WriteAsync(
        async context =>
        {
            if (await context.Calibrations.AsTracking().FirstOrDefaultAsync(c => c.Id == id, cancel) is not { } row)
            {
                return false;
            }

            row.SwitchedOff = off;
            return true;
        },
        cancel);

    /// <summary>Forgets one; false where there is none.</summary>
    public Task<bool> RemoveAsync(long id, CancellationToken cancel = default) =>
        contexts.WriteAsync(async context => await context.Calibrations.Where(c => c.Id == id).ExecuteDeleteAsync(cancel) > 0, cancel);

    /// <summary>What testers of a hat said that was taken over, on or off; null where nothing was.</summary>
    public async Task<KnownCalibration?> OfHatAsync(string hatId, CancellationToken cancel = default) =>
        (await ListAsync(cancel)).FirstOrDefault(c => c.HatId == hatId);

    /// <summary>The knitter's usage by the calibrations that are on; the uncalibrated one where there are none.</summary>
    public async Task<Usage> UsageAsync(CancellationToken cancel = default) => Own(await ListAsync(cancel));

    /// <summary>Gives hats their usage: what testers of a hat said where that is on, else the knitter's own.</summary>
    public async Task<Func<string, Hat, Hat>> GivingAsync(CancellationToken cancel = default)
    {
        var known = await ListAsync(cancel);
        var own = Own(known);
        var each = known.Where(c => c is { HatId: not null, SwitchedOff: false }).ToDictionary(c => c.HatId!, c => c.OfHat, StringComparer.Ordinal);
        return (id, hat) => each.TryGetValue(id, out var testers) ? Testers(testers, hat) : With(own, hat);
    }

    /// <summary>A hat described by measurements, without a usage of its own, takes the knitter's; a printed one never does.</summary>
    public static Hat With(Usage usage, Hat hat) =>
        hat is HatDesign design && design.Usage == Usage.Uncalibrated ? design with { Usage = usage } : hat;

    // A printed hat too: its testers knitted from its very figures.
    private static Hat Testers(Usage usage, Hat hat) => hat is PrintedHat printed ? printed with { Weighed = usage } : With(usage, hat);

    private static Usage Own(IReadOnlyList<KnownCalibration> known) =>
        Calibration.Combine(known.Where(c => c is { HatId: null, SwitchedOff: false }).Select(c => c.Calibration));
}
