using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Gives leftovers new codes whose old one is an abbreviation of the trade, and remembers to say so once.</summary>
public sealed class NewCodes(IDbContextFactory<StashContext> contexts)
{
    private const string Said = "new codes: ";

    /// <summary>Renews what is to be renewed; nothing is written where nothing is.</summary>
    public async Task RenewAsync(CancellationToken cancel = default)
    {
        await using (var context = await contexts.CreateDbContextAsync(cancel))
        {
            if (!(await context.Leftovers.Where(r => r.RemovedAt == null).Select(r => r.Code).ToListAsync(cancel)).Exists(TwoLetters.IsTradeWord))
            {
                return;
            }
        }

        await contexts.WriteAsync(
            async context =>
            {
                var tags = await Tags.TakenAsync(context, cancel);
                var changed = new List<string>();
                var there = await context.Leftovers.AsTracking().Where(r => r.RemovedAt == null).OrderBy(r => r.Name).ToListAsync(cancel);
                foreach (var row in there.Where(r => TwoLetters.IsTradeWord(r.Code)))
                {
                    var before = row.Code;
                    row.Code = tags.TakeCode(row.Name);
                    changed.Add($"{row.Name}: {row.Code}, not {before}");
                }

                context.Marks.Add(new MarkRow { Name = Said + string.Join("; ", changed) });
                return true;
            },
            cancel);
    }

    /// <summary>What changed, such as "Wet slate: Wl, not Ws"; null where nothing did, or it was said.</summary>
    public async Task<string?> ReadAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context.Marks.Where(m => m.Name.StartsWith(Said)).Select(m => m.Name.Substring(Said.Length)).FirstOrDefaultAsync(cancel);
    }

    /// <summary>It was said.</summary>
    public Task SeenAsync(CancellationToken cancel = default) =>
        contexts.WriteAsync(context => context.Marks.Where(m => m.Name.StartsWith(Said)).ExecuteDeleteAsync(cancel), cancel);
}
