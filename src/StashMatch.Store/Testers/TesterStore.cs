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
        return rows.ConvertAll(r => new ListedTester(r.PublicId, Describe(r)));
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
    public Task AddAsync(string hatId, IReadOnlyList<TesterDescription> descriptions, CancellationToken cancel = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(hatId);
        ArgumentNullException.ThrowIfNull(descriptions);
        var at = clock.GetUtcNow();
        return contexts.WriteAsync(
            context =>
            {
                context.Testers.AddRange(descriptions.Select((d, i) => ToRow($"tester-{Guid.NewGuid():N}"[..19], hatId, d, at.AddTicks(i))));
                return Task.FromResult(descriptions.Count);
            },
            cancel);
    }

    /// <summary>Forgets a result; false where there is none.</summary>
    public Task<bool> RemoveAsync(string id, CancellationToken cancel = default) =>
        contexts.WriteAsync(async context => await context.Testers.Where(t => t.PublicId == id).ExecuteDeleteAsync(cancel) > 0, cancel);

    internal static TesterRow ToRow(string id, string hatId, TesterDescription description, DateTimeOffset at) =>
        new() { Id = Guid.NewGuid(), PublicId = id, HatId = hatId, Description = JsonSerializer.Serialize(description, Json), SavedAt = at };

    internal static TesterDescription Describe(TesterRow row) => JsonSerializer.Deserialize<TesterDescription>(row.Description, Json)!;
}
