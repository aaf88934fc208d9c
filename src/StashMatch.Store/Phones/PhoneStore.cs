using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A browser that was let in from the home network.</summary>
/// <param name="Id">What its signed cookie names.</param>
/// <param name="Name">What the person calls it.</param>
/// <param name="PairedAt">When it was let in.</param>
public sealed record PairedPhone(Guid Id, string Name, DateTimeOffset PairedAt);

/// <summary>Remembers which browsers of the home network may come in.</summary>
public sealed class PhoneStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>Lets a browser in and returns the id for its cookie.</summary>
    /// <param name="name">1 to 80 characters; more is cut off.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Guid> PairAsync(string name, CancellationToken cancel = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return contexts.WriteAsync(
            context =>
            {
                var row = new PhoneRow { Id = Guid.NewGuid(), Name = name.Length > 80 ? name[..80] : name, PairedAt = clock.GetUtcNow() };
                context.Phones.Add(row);
                return Task.FromResult(row.Id);
            },
            cancel);
    }

    /// <summary>Whether a browser may come in.</summary>
    public async Task<bool> MayComeInAsync(Guid id, CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context.Phones.AnyAsync(p => p.Id == id && p.RevokedAt == null, cancel);
    }

    /// <summary>Those that may come in, the latest first.</summary>
    public async Task<IReadOnlyList<PairedPhone>> ListAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context.Phones.Where(p => p.RevokedAt == null).OrderByDescending(p => p.PairedAt).ToListAsync(cancel);
        return rows.ConvertAll(r => new PairedPhone(r.Id, r.Name, r.PairedAt));
    }

    /// <summary>Shuts a browser out again; false where it was not let in.</summary>
    public Task<bool> RevokeAsync(Guid id, CancellationToken cancel = default) => contexts.WriteAsync(
        async context =>
        {
            if (await context.Phones.AsTracking().FirstOrDefaultAsync(p => p.Id == id && p.RevokedAt == null, cancel) is not { } row)
            {
                return false;
            }

            row.RevokedAt = clock.GetUtcNow();
            return true;
        },
        cancel);
}
