using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A kit on the list.</summary>
public sealed record ListedKit(string Id, Said Description)
{
    /// <summary>What it is called.</summary>
    public string Name => Description[KitText.Name].Words ?? "";
}

/// <summary>Remembers designers' kits.</summary>
public sealed class KitStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>All kits, newest first.</summary>
    public async Task<IReadOnlyList<ListedKit>> ListAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context.Kits.OrderByDescending(k => k.SavedAt).ToListAsync(cancel);
        return rows.ConvertAll(r => new ListedKit(r.PublicId, Describe(r)));
    }

    /// <summary>Saves a kit and returns its id.</summary>
    /// <exception cref="ArgumentException">A description that cannot be read.</exception>
    public async Task<string> SaveAsync(Said description, CancellationToken cancel = default)
    {
        var errors = new FieldErrors();
        var kit = KitText.Read(new Reading(description, errors))
            ?? throw new ArgumentException(string.Join("; ", errors.ByField.Select(e => $"{e.Key} {e.Value[0]}")), nameof(description));
        return await contexts.WriteAsync(
            context =>
            {
                var row = ToRow($"kit-{Guid.NewGuid():N}"[..16], kit.Name, description, clock.GetUtcNow());
                context.Kits.Add(row);
                return Task.FromResult(row.PublicId);
            },
            cancel);
    }

    /// <summary>Forgets a kit; false where there is none.</summary>
    public Task<bool> RemoveAsync(string id, CancellationToken cancel = default) =>
        contexts.WriteAsync(async context => await context.Kits.Where(k => k.PublicId == id).ExecuteDeleteAsync(cancel) > 0, cancel);

    internal static KitRow ToRow(string id, string name, Said description, DateTimeOffset at) =>
        new() { Id = Guid.NewGuid(), PublicId = id, Name = name, Description = KeptKit.Write(description), SavedAt = at };

    internal static Said Describe(KitRow row) => KeptKit.Read(row.Description);
}
