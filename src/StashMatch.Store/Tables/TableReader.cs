using System.Globalization;
using CsvHelper;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>Reads a table of leftovers: each row either as it says, or not at all with the reason.</summary>
internal static class TableReader
{
    /// <summary>The most rows taken from one file.</summary>
    public const int MostRows = 10_000;

    /// <summary>The largest file taken, bytes.</summary>
    public const int MostBytes = 8 * 1024 * 1024;

    private static readonly Field KnittedUp = Field.YesNo("knittedUp");
    private static readonly char[] Separators = [',', ';', '\t'];

    public static TablePreview Read(ReadOnlySpan<byte> file)
    {
        if (file.Length > MostBytes)
        {
            return new TablePreview { Refused = "The file is over 8 MB." };
        }

        if (!TableText.TryRead(file, out var text, out var encoding, out var wrong))
        {
            return new TablePreview { Refused = wrong };
        }

        // Some programs say in a first line of its own which sign they put between cells.
        var hint = text.Length > 5 && text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && text[5] is '\r' or '\n';
        var separator = hint ? text[4] : Separators.MaxBy(s => Known(text, s));
        var rows = hint ? text.AsSpan(6).TrimStart('\n').ToString() : text;
        if (hint && !Separators.Contains(separator))
        {
            return new TablePreview { Refused = "Put a comma, a semicolon or a tab between cells.", Encoding = encoding };
        }

        return ReadRows(rows, separator, hint ? 1 : 0) with { Encoding = encoding, Separator = separator };
    }

    private static int Known(string text, char separator)
    {
        using var csv = Open(text, separator, _ => { });
        return csv.Read() ? Enumerable.Range(0, csv.FieldCount).Count(i => TableColumns.Find(csv.GetString(i)) is not null) : 0;
    }

    private static CsvReader Open(string text, char separator, Action<CsvMalformedRecord> malformed) => CsvReader.FromText(text, new CsvReaderOptions
    {
        Separator = separator,
        HasHeader = false,
        SkipEmptyLines = false,
        DetectSeparatorHint = false,
        OnMalformedRecord = malformed,
    });

    private static TablePreview ReadRows(string text, char separator, int above)
    {
        CsvMalformedReason? fault = null;
        using var csv = Open(text, separator, m => fault = m.Reason);
        if (!csv.Read() || fault is not null)
        {
            return new TablePreview { Refused = fault is null ? "The file is empty." : "The first row cannot be read: a quotation mark is missing." };
        }

        var columns = Cells(csv).Select(c => (Heading: c, Column: TableColumns.Find(c))).ToList();
        var known = columns.Select(c => c.Column).OfType<string>().ToList();
        if (!known.Contains("name", StringComparer.Ordinal) || !known.Contains("grams", StringComparer.Ordinal))
        {
            return new TablePreview { Refused = "The first row must name the columns, at least name and grams, with commas between them." };
        }

        if (known.GroupBy(c => c, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            return new TablePreview { Refused = $"The column {twice.Key} is there twice." };
        }

        var (rows, bad, ids) = (new List<TableRow>(), new List<BadRow>(), new Dictionary<string, int>(StringComparer.Ordinal));
        for (var number = above + 2; csv.Read(); number++)
        {
            if (number > MostRows + above + 1)
            {
                return new TablePreview { Refused = $"The file has over {MostRows.ToString(CultureInfo.InvariantCulture)} rows. Split it in two." };
            }

            var cells = Cells(csv);
            if (fault is null && cells.TrueForAll(c => c.Length == 0))
            {
                continue;
            }

            var errors = new FieldErrors();
            var leftover = fault is not null || cells.Count != columns.Count ? null : ReadRow(columns.ConvertAll(c => c.Column), cells, errors);
            var reasons = fault is { } f ? [Words(f)]
                : cells.Count != columns.Count ? [$"has {cells.Count} cells, but the heading has {columns.Count}: put quotation marks around a cell that has a comma in it"]
                : errors.ByField.SelectMany(e => e.Value.Select(m => $"{Column(e.Key)} {m}")).ToList();
            if (leftover?.Id is { } id && !ids.TryAdd(id, number))
            {
                reasons.Add($"id {id} is in row {ids[id]} already");
            }

            fault = null;
            if (leftover is null || reasons.Count > 0)
            {
                bad.Add(new BadRow(number, reasons));
            }
            else
            {
                rows.Add(new TableRow(number, leftover));
            }
        }

        return new TablePreview { Rows = rows, Bad = bad, NotRead = [.. columns.Where(c => c.Column is null && c.Heading.Length > 0).Select(c => c.Heading)] };
    }

    // "label.grams" is the column labelGrams.
    private static string Column(string field) => field.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot
        ? $"{field[..dot]}{char.ToUpperInvariant(field[dot + 1])}{field[(dot + 2)..]}"
        : field;

    private static List<string> Cells(CsvReader csv) => [.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)];

    private static NewLeftover? ReadRow(List<string?> columns, List<string> cells, FieldErrors errors)
    {
        string? Text(string column) => columns.IndexOf(column) is >= 0 and var i
            ? TableColumns.HasWords(column) ? FormulaGuard.In(cells[i]) : cells[i]
            : null;
        var said = LeftoverFields.OfColumns(Text);
        if (Text(TableColumns.Label) is { } label && !string.IsNullOrWhiteSpace(label))
        {
            if (said[LeftoverFields.Label].IsNothing)
            {
                said = said.With(LeftoverFields.Label, label);
            }
            else
            {
                errors.Add(TableColumns.Label, "is given twice: once in one cell, once in several");
            }
        }

        foreach (var field in LeftoverText.Weighed.Append(KnittedUp))
        {
            said = said.With(field, Text(field.Name));
        }

        var reading = new Reading(said, errors);
        var (details, weighing, knittedUp) = (LeftoverFields.Read(reading), LeftoverText.ReadWeighing(reading), reading.YesNo(KnittedUp) ?? false);
        if (details is null || weighing is null || errors.Any)
        {
            return null;
        }

        var leftover = new NewLeftover(details, weighing) { Id = Text("id") is { Length: > 0 } id ? id : null, KnittedUp = knittedUp };
        leftover.Check(errors);
        return leftover;
    }

    private static string Words(CsvMalformedReason fault) => fault switch
    {
        CsvMalformedReason.UnterminatedQuote => "has a quotation mark that never ends; nothing after it could be read",
        CsvMalformedReason.TextAfterClosingQuote => "has text after a closing quotation mark",
        _ => "has a quotation mark in the middle of a cell",
    };
}
