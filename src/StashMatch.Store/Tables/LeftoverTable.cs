using CsvHelper;
using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Leftovers as a table (CSV): written for a spreadsheet to read, and read from one, with a look before anything is kept.</summary>
public sealed class LeftoverTable(IDbContextFactory<StashContext> contexts, LeftoverStore leftovers, TimeProvider clock)
{
    /// <summary>Every leftover on the list, in the list's order.</summary>
    /// <param name="bom">Whether the mark that tells spreadsheets of UTF-8 goes before it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<byte[]> WriteAsync(bool bom = false, CancellationToken cancel = default) => Write(await leftovers.ListAsync(cancel), bom);

    /// <summary>Reads a table and keeps nothing.</summary>
    /// <param name="file">The file's bytes, 8 MB and 10,000 rows at most.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<TablePreview> PreviewAsync(ReadOnlyMemory<byte> file, CancellationToken cancel = default)
    {
        var preview = TableReader.Read(file.Span);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var known = (await context.Leftovers.Select(r => r.PublicId).ToListAsync(cancel)).ToHashSet(StringComparer.Ordinal);
        return preview with { Rows = [.. preview.Rows.Select(r => r with { IsKnown = r.Leftover.Id is { } id && known.Contains(id) })] };
    }

    /// <summary>Keeps the good rows of a table, all of them or nothing. A row whose id is known by then is left as it is.</summary>
    public Task<TableKept> KeepAsync(TablePreview preview, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(preview);
        return contexts.WriteAsync(
            async context =>
            {
                var tags = await Tags.TakenAsync(context, cancel);
                var rows = preview.Rows.Where(r => r.Leftover.Id is not { } id || !tags.IsTaken(id)).ToList();

                // Newest first is the list's order: the last row is logged first, a tick apart. Ids and codes asked for are given out first.
                var at = clock.GetUtcNow();
                List<LeftoverRow> logged = [];
                foreach (var (row, i) in rows.Select((r, i) => (r, i)).OrderBy(r => r.r.Leftover.Id is null).ThenBy(r => r.r.Leftover.Code is null).ThenBy(r => r.i))
                {
                    logged.Add(row.Leftover.ToRow(tags, at.AddTicks(rows.Count - i)));
                }

                await context.AddAtOnceAsync(logged, cancel);
                await context.AddAtOnceAsync(logged.SelectMany(l => l.Entries), cancel);
                return new TableKept(rows.Count, preview.Rows.Count - rows.Count);
            },
            cancel);
    }

    internal static byte[] Write(IEnumerable<LoggedLeftover> list, bool bom)
    {
        using var bytes = new MemoryStream();
        using (var csv = CsvWriter.Create(bytes, new CsvWriterOptions { NewLine = "\r\n", WriteByteOrderMark = bom }, leaveOpen: true))
        {
            csv.WriteRecord([.. TableColumns.Written]);
            foreach (var leftover in list)
            {
                var said = LeftoverFields.Say(leftover);
                csv.WriteRecord([.. TableColumns.Written.Select(c => TableColumns.HasWords(c) ? FormulaGuard.Out(Cell(leftover, said, c)) : Cell(leftover, said, c))]);
            }
        }

        return bytes.ToArray();
    }

    private static string Cell(LoggedLeftover leftover, Said said, string column) => column switch
    {
        "id" => leftover.Id,
        "grams" => Said.Number(leftover.Weighing.Gross.Value),
        "tareGrams" => Said.Number(leftover.Weighing.Tare.Value),
        "scaleStepGrams" => Said.Number(leftover.Weighing.ScaleStep.Value),
        "knittedUp" => leftover.KnittedUp ? "yes" : "no",
        _ => LeftoverFields.Text(said, column),
    };
}
