using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Hats;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A hat on the list.</summary>
public sealed record ListedHat(string Id, Hat Hat, bool IsSample, Said Description);

/// <summary>Remembers hats: the samples that are always there, and a person's own.</summary>
public sealed class HatStore(IDbContextFactory<StashContext> contexts, KnitterStore knitter, TimeProvider clock)
{
    private static readonly Lazy<IReadOnlyList<ListedHat>> Samples = new(ReadSamples);

    /// <summary>The hat with an id; null where there is none.</summary>
    public async Task<Hat?> FindAsync(string id, CancellationToken cancel = default)
    {
        var giving = await knitter.GivingAsync(cancel);
        if (Samples.Value.FirstOrDefault(s => s.Id == id) is { } sample)
        {
            return giving(id, sample.Hat);
        }

        await using var context = await contexts.CreateDbContextAsync(cancel);
        var row = await context.Hats.FirstOrDefaultAsync(h => h.PublicId == id, cancel);
        return row is null ? null : giving(id, ToListed(row).Hat);
    }

    /// <summary>The samples, then a person's own, newest first.</summary>
    public async Task<IReadOnlyList<ListedHat>> ListAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context.Hats.OrderByDescending(h => h.SavedAt).ToListAsync(cancel);
        var giving = await knitter.GivingAsync(cancel);
        return [.. Samples.Value.Concat(rows.Select(ToListed)).Select(h => h with { Hat = giving(h.Id, h.Hat) })];
    }

    /// <summary>Forgets an own hat and what was taken over from its testers; false where there is none.</summary>
    public Task<bool> RemoveAsync(string id, CancellationToken cancel = default) => contexts.WriteAsync(
        async context =>
        {
            await context.Calibrations.Where(c => c.HatId == id).ExecuteDeleteAsync(cancel);
            return await context.Hats.Where(h => h.PublicId == id).ExecuteDeleteAsync(cancel) > 0;
        },
        cancel);

    /// <summary>Saves a hat and returns its id.</summary>
    /// <exception cref="ArgumentException">A description that cannot be read.</exception>
    public async Task<string> SaveAsync(Said description, CancellationToken cancel = default)
    {
        var hat = Read(description);
        return await contexts.WriteAsync(
            context =>
            {
                var row = ToRow($"hat-{Guid.NewGuid():N}"[..16], hat, description, clock.GetUtcNow());
                context.Hats.Add(row);
                return Task.FromResult(row.PublicId);
            },
            cancel);
    }

    internal static HatRow ToRow(string id, Hat hat, Said description, DateTimeOffset at) =>
        new() { Id = Guid.NewGuid(), PublicId = id, Name = hat.Name, Description = KeptHat.Write(description), SavedAt = at };

    internal static Said Describe(HatRow row) => KeptHat.Read(row.Description);

    private static ListedHat ToListed(HatRow row)
    {
        var description = Describe(row);
        return new ListedHat(row.PublicId, Read(description), false, description);
    }

    private static Hat Read(Said description)
    {
        var errors = new FieldErrors();
        return HatText.Read(new Reading(description, errors, "hat."))
            ?? throw new ArgumentException(string.Join("; ", errors.ByField.Select(e => $"{e.Key} {e.Value[0]}")), nameof(description));
    }

    private static List<ListedHat> ReadSamples()
    {
        using var stream = typeof(HatStore).Assembly.GetManifestResourceStream("sample-hats.json")
            ?? throw new InvalidOperationException("The sample hats are not built in.");
        using var rows = JsonDocument.Parse(stream);
        return [.. rows.RootElement.EnumerateArray().Select(row =>
        {
            var description = KeptHat.Read(row.GetProperty("hat"));
            return new ListedHat(row.GetProperty("id").GetString()!, Read(description), true, description);
        })];
    }
}
