using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A tester's result on the list.</summary>
public sealed record ListedTester(string Id, TesterDescription Description);

/// <summary>Remembers what testers of a hat sent back.</summary>
public sealed class TesterStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    /// <summary>The results for a hat, in the order they came.</summary>
    public async Task<IReadOnlyList<ListedTester>> ListAsync(string hatId, CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context.Testers.Where(t => t.HatId == hatId).OrderBy(t => t.SavedAt).ToListAsync(cancel);
        return rows.ConvertAll(r => new ListedTester(r.PublicId, JsonSerializer.Deserialize<TesterDescription>(r.Description, Json)!));
    }

    /// <summary>What the testers of a hat say together; null where none sent anything back.</summary>
    public async Task<TesterJudgement?> JudgeAsync(string? hatId, Hat? hat, CancellationToken cancel = default)
    {
        if (hatId is null || hat is null || await ListAsync(hatId, cancel) is not { Count: > 0 } listed)
        {
            return null;
        }

        return Testers.Judge(hat, [.. listed.Select(t => TesterReader.Read(t.Description, hat, new FieldErrors())).OfType<TesterResult>()]);
    }

    /// <summary>Keeps results for a hat, all or none.</summary>
    public async Task AddAsync(string hatId, IReadOnlyList<TesterDescription> descriptions, CancellationToken cancel = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(hatId);
        ArgumentNullException.ThrowIfNull(descriptions);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var at = clock.GetUtcNow();
        context.Testers.AddRange(descriptions.Select((d, i) => (d, Id: Guid.NewGuid(), i)).Select(d => new TesterRow
        {
            Id = d.Id,
            PublicId = $"tester-{d.Id:N}"[..19],
            HatId = hatId,
            Description = JsonSerializer.Serialize(d.d, Json),
            SavedAt = at.AddTicks(d.i),
        }));
        await context.SaveChangesAsync(cancel);
    }

    /// <summary>Forgets a result; false where there is none.</summary>
    public async Task<bool> RemoveAsync(string id, CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context.Testers.Where(t => t.PublicId == id).ExecuteDeleteAsync(cancel) > 0;
    }
}
