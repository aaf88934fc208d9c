using System.Text;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Remembers leftovers: weigh, weigh again, knit up, remove. Each verb is saved before it returns.</summary>
public sealed class LeftoverStore(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>The longest name.</summary>
    public const int MostName = 80;

    /// <summary>The longest note.</summary>
    public const int MostNote = 500;

    private const int SqliteConstraint = 19;

    /// <summary>Logs a leftover and returns its id. The same <paramref name="once"/> key logs once.</summary>
    /// <exception cref="ArgumentException">A name that is empty or too long, or an id already taken.</exception>
    public async Task<string> WeighAsync(NewLeftover leftover, string? once = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        if (string.IsNullOrWhiteSpace(leftover.Name) || leftover.Name.Length > MostName)
        {
            throw new ArgumentException($"A name has 1 to {MostName} characters.", nameof(leftover));
        }

        for (var attempt = 0; ; attempt++)
        {
            try
            {
                return await LogAsync(leftover, once, cancel);
            }
            catch (DbUpdateException e) when (attempt < 5 && e.InnerException is SqliteException { SqliteErrorCode: SqliteConstraint })
            {
                // Somebody else took the id or the key between reading and writing: look again.
            }
        }
    }

    /// <summary>Weighs a leftover again; false where there is none.</summary>
    public async Task<bool> ReweighAsync(string id, Weighing weighing, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(weighing);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        if (await RowAsync(context, id, cancel) is not { } row)
        {
            return false;
        }

        row.KnittedUpAt = null;
        context.Weighings.Add(ToRow(weighing, row.Id));
        context.Update(row);
        await context.SaveChangesAsync(cancel);
        return true;
    }

    /// <summary>Says a leftover is finished; false where there is none.</summary>
    public Task<bool> KnitUpAsync(string id, CancellationToken cancel = default) =>
        ChangeAsync(id, row => row.KnittedUpAt = clock.GetUtcNow(), cancel);

    /// <summary>Takes a leftover off the list; false where there is none. Nothing is forgotten: <see cref="PutBackAsync"/> undoes it.</summary>
    public Task<bool> RemoveAsync(string id, CancellationToken cancel = default) =>
        ChangeAsync(id, row => row.RemovedAt = clock.GetUtcNow(), cancel);

    /// <summary>Undoes one thing: the removal, or else the knitting up; false where there is none.</summary>
    public async Task<bool> PutBackAsync(string id, CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        if (await context.Leftovers.AsTracking().FirstOrDefaultAsync(r => r.PublicId == id, cancel) is not { } row)
        {
            return false;
        }

        if (row.RemovedAt is null)
        {
            row.KnittedUpAt = null;
        }

        row.RemovedAt = null;
        await context.SaveChangesAsync(cancel);
        return true;
    }

    /// <summary>All leftovers not removed, newest first.</summary>
    public async Task<IReadOnlyList<LoggedLeftover>> ListAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context.Leftovers.Where(r => r.RemovedAt == null)
            .Select(r => new
            {
                Row = r,
                Last = r.Weighings.OrderByDescending(w => w.Id).First(),
                r.Weighings.Count,
            })
            .OrderByDescending(r => r.Row.LoggedAt).ThenByDescending(r => r.Row.PublicId)
            .ToListAsync(cancel);
        return rows.ConvertAll(r => LoggedLeftover.Of(r.Row, r.Last, r.Count));
    }

    /// <summary>Those that may go into hats.</summary>
    public async Task<IReadOnlyList<Leftover>> ForHatsAsync(CancellationToken cancel = default) =>
        [.. (await ListAsync(cancel)).Where(l => l.ForHats).Select(l => l.ToLeftover()!)];

    private async Task<string> LogAsync(NewLeftover leftover, string? once, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        if (once is not null && await context.DoneOnce.FirstOrDefaultAsync(d => d.Key == once, cancel) is { } done)
        {
            return done.Result;
        }

        var taken = await context.Leftovers.Select(r => new { r.PublicId, r.Code, r.RemovedAt }).ToListAsync(cancel);
        var ids = taken.Select(t => t.PublicId).ToHashSet(StringComparer.Ordinal);
        if (leftover.Id is { } wanted && ids.Contains(wanted))
        {
            throw new ArgumentException($"The id {wanted} is taken.", nameof(leftover));
        }

        var id = leftover.Id ?? FreeId(leftover.Name, ids);
        var codes = taken.Where(t => t.RemovedAt is null).Select(t => t.Code).ToHashSet(StringComparer.Ordinal);
        var row = new LeftoverRow
        {
            Id = Guid.NewGuid(),
            PublicId = id,
            Name = leftover.Name.Trim(),
            Code = TwoLetters.For(leftover.Name, codes),
            Colour = leftover.Colour?.Hex,
            Fibre = leftover.Fibre.ToString(),
            WeightClass = leftover.Class,
            LabelMass = leftover.Ratio?.Mass,
            LabelMassUnit = leftover.Ratio?.MassUnit ?? MassUnit.Grams,
            LabelLength = leftover.Ratio?.Length,
            LabelLengthUnit = leftover.Ratio?.LengthUnit ?? LengthUnit.Metres,
            RatioFrom = leftover.Ratio?.Source ?? RatioSource.Printed,
            Superwash = leftover.Superwash,
            Make = leftover.Make,
            Lot = leftover.Lot,
            Care = leftover.Care?.ToString(),
            KeptIn = leftover.KeptIn,
            Note = leftover.Note,
            IsDemo = leftover.IsDemo,
            LoggedAt = clock.GetUtcNow(),
        };
        row.Weighings.Add(ToRow(leftover.Weighing, row.Id));
        context.Leftovers.Add(row);
        foreach (var weighing in row.Weighings)
        {
            weighing.OwnerId = context.OwnerId;
        }

        if (once is not null)
        {
            context.DoneOnce.Add(new DoneOnceRow { Key = once, Result = id, At = clock.GetUtcNow() });
        }

        await context.SaveChangesAsync(cancel);
        return id;
    }

    private async Task<bool> ChangeAsync(string id, Action<LeftoverRow> change, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        if (await RowAsync(context, id, cancel) is not { } row)
        {
            return false;
        }

        change(row);
        await context.SaveChangesAsync(cancel);
        return true;
    }

    private static Task<LeftoverRow?> RowAsync(StashContext context, string id, CancellationToken cancel) =>
        context.Leftovers.AsTracking().FirstOrDefaultAsync(r => r.PublicId == id && r.RemovedAt == null, cancel);

    private WeighingRow ToRow(Weighing weighing, Guid leftover) => new()
    {
        LeftoverId = leftover,
        GrossMilligrams = weighing.Gross.Milligrams,
        TareMilligrams = weighing.Tare.Milligrams,
        StepMilligrams = weighing.ScaleStep.Milligrams,
        At = clock.GetUtcNow(),
    };

    // "Hearth rug" is hearth-rug; a second one hearth-rug-2.
    private static string FreeId(string name, HashSet<string> taken)
    {
        var slug = new StringBuilder();
        foreach (var c in name.Trim().ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                slug.Append(c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        var stem = slug.ToString().Trim('-') is { Length: > 0 } s ? s : "leftover";
        var id = stem;
        for (var number = 2; taken.Contains(id); number++)
        {
            id = $"{stem}-{number}";
        }

        return id;
    }
}
