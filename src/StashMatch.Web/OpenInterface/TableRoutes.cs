using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A row that can be kept.</summary>
public sealed record RowBody(int Row, string? Id, string Name, decimal Grams, bool Known);

/// <summary>A row that cannot be read.</summary>
public sealed record BadRowBody(int Row, IReadOnlyList<string> Reasons);

/// <summary>What was, or with a preview would be, kept of a table.</summary>
public sealed record ImportedBody
{
    /// <summary>How many leftovers were logged; 0 with a preview.</summary>
    public required int Logged { get; init; }

    /// <summary>How many rows are of leftovers known already.</summary>
    public required int LeftAsTheyAre { get; init; }

    public required IReadOnlyList<BadRowBody> Bad { get; init; }

    /// <summary>Columns nothing is read from.</summary>
    public required IReadOnlyList<string> NotRead { get; init; }

    /// <summary>The rows that can be kept, with a preview.</summary>
    public IReadOnlyList<RowBody>? Rows { get; init; }
}

/// <summary>/api/v1/leftovers/import and export.</summary>
public static class TableRoutes
{
    public static async Task<IResult> ExportAsync(LeftoverTable table, CancellationToken cancel, string? bom = null) =>
        Results.File(await table.WriteAsync(bom == "true", cancel), "text/csv; charset=utf-8", "leftovers.csv");

    public static async Task<IResult> ImportAsync(HttpRequest request, LeftoverTable table, CancellationToken cancel)
    {
        if (await Body.ReadBytesAsync(request, Body.MostBytes, cancel) is not { } bytes)
        {
            return Body.TooLarge();
        }

        var preview = await table.PreviewAsync(bytes, cancel);
        var errors = new FieldErrors();
        if (preview.Refused is { } refused)
        {
            errors.Add("file", refused);
            return errors.Problem();
        }

        if (request.Query["preview"] == "true")
        {
            return Show(preview, new TableKept(0, preview.Rows.Count(r => r.IsKnown)), rows: true);
        }

        if (preview.Bad.Count > 0 && request.Query["goodRows"] != "keep")
        {
            foreach (var bad in preview.Bad.Take(100))
            {
                foreach (var reason in bad.Reasons)
                {
                    errors.Add($"row {bad.Number}", reason);
                }
            }

            return errors.Problem();
        }

        return Show(preview, await table.KeepAsync(preview, cancel), rows: false);
    }

    private static IResult Show(TablePreview preview, TableKept kept, bool rows) => Results.Json(
        new ImportedBody
        {
            Logged = kept.Logged,
            LeftAsTheyAre = kept.LeftAsTheyAre,
            Bad = [.. preview.Bad.Select(b => new BadRowBody(b.Number, b.Reasons))],
            NotRead = preview.NotRead,
            Rows = rows ? [.. preview.Rows.Select(r => new RowBody(r.Number, r.Leftover.Id, r.Leftover.Name, r.Leftover.Weighing.Gross.Value, r.IsKnown))] : null,
        },
        Body.Json);
}
