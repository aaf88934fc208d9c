using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Hats;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A remembered calibration.</summary>
public sealed record KnownCalibration(long Id, string From, Calibration Calibration, bool SwitchedOff, DateTimeOffset At);

/// <summary>Remembers how this knitter uses yarn: weighed swatches and finished hats.</summary>
public sealed class KnitterStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>Remembers one calibration and where it comes from, 1 to 200 characters.</summary>
    public Task AddAsync(string from, Calibration calibration, CancellationToken cancel = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(from);
        ArgumentNullException.ThrowIfNull(calibration);
        return contexts.WriteAsync(
            context =>
            {
                context.Calibrations.Add(new CalibrationRow
                {
                    From = from.Length > 200 ? from[..200] : from,
                    Factor = calibration.Factor,
                    MeasureSpread = calibration.MeasureSpread,
                    At = clock.GetUtcNow(),
                });
                return Task.FromResult(true);
            },
            cancel);
    }

    /// <summary>All calibrations, newest first.</summary>
    public async Task<IReadOnlyList<KnownCalibration>> ListAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context.Calibrations.OrderByDescending(c => c.Id).ToListAsync(cancel);
        return rows.ConvertAll(r => new KnownCalibration(r.Id, r.From, new Calibration(r.Factor, r.MeasureSpread), r.SwitchedOff, r.At));
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

    /// <summary>The knitter's usage by the calibrations that are on; the uncalibrated one where there are none.</summary>
    public async Task<Usage> UsageAsync(CancellationToken cancel = default) =>
        Calibration.Combine((await ListAsync(cancel)).Where(c => !c.SwitchedOff).Select(c => c.Calibration));

    /// <summary>A hat described by measurements, without a usage of its own, takes the knitter's; a printed one never does.</summary>
    public static Hat With(Usage usage, Hat hat) =>
        hat is HatDesign design && design.Usage == Usage.Uncalibrated ? design with { Usage = usage } : hat;
}
