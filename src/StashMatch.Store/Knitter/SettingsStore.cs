using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Quantities;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Remembers what a person prefers.</summary>
public sealed class SettingsStore(IDbContextFactory<StashContext> contexts)
{
    /// <summary>What they prefer; the usual where they said nothing.</summary>
    public async Task<Settings> ReadAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return Of(await context.Settings.FirstOrDefaultAsync(cancel));
    }

    /// <summary>What every page asks first, at one go: what they prefer, and whether any demo leftover is there.</summary>
    public async Task<(Settings Settings, bool DemoHere)> ReadWithDemoAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var read = await context.Settings.DefaultIfEmpty()
            .Select(s => new { Row = s, DemoHere = context.Leftovers.Any(r => r.IsDemo && r.RemovedAt == null) })
            .FirstAsync(cancel);
        return (Of(read.Row), read.DemoHere);
    }

    /// <summary>Saves what they prefer.</summary>
    /// <exception cref="ArgumentException">A field <see cref="Settings.Check"/> finds fault with.</exception>
    public Task SaveAsync(Settings settings, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var errors = new FieldErrors();
        settings.Check(errors);
        errors.ThrowIfAny(nameof(settings));
        return contexts.WriteAsync(
            async context =>
            {
                var row = await context.Settings.AsTracking().FirstOrDefaultAsync(cancel) ?? context.Settings.Add(new SettingsRow()).Entity;
                (row.FirstUnit, row.ScaleStepMilligrams, row.AllowancePercent) = (settings.FirstUnit, settings.ScaleStep.Milligrams, settings.AllowancePercent);
                return true;
            },
            cancel);
    }

    private static Settings Of(SettingsRow? row) => row is null
        ? new Settings()
        : new Settings { FirstUnit = row.FirstUnit, ScaleStep = Grams.FromMilligrams(row.ScaleStepMilligrams), AllowancePercent = row.AllowancePercent };
}
