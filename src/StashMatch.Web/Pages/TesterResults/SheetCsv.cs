using System.Globalization;
using CsvHelper;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;

namespace StashMatch.Web.Pages.TesterResults;

/// <summary>What a file of tester sheets holds.</summary>
/// <param name="Sheets">The sheets that could be read.</param>
/// <param name="Problems">What could not be, each with the row of the file it stands in.</param>
public sealed record ReadSheets(IReadOnlyList<TesterDescription> Sheets, IReadOnlyList<string> Problems);

/// <summary>A tester's sheet as CSV, one row a part; what is said of the tester may stand in the first row alone.</summary>
public static class SheetCsv
{
    /// <summary>The largest file read, characters.</summary>
    public const int MostCharacters = 1_000_000;

    private const int MostProblems = 20;

    private static readonly string[] Columns =
    [
        "hat", "size", "stripes", "tester", "label", "scale_step_g", "written_stitches_10cm", "written_rows_10cm", "stitches_10cm", "rows_10cm",
        "extra_rounds", "other_yarn", "changes", "part", "before_g", "after_g",
    ];

    // What may be left out in later rows of the same sheet.
    private static readonly string[] OfTheTester = [.. Columns[..13]];

    private static readonly CsvWriterOptions Options = new() { Injection = CsvInjection.Escape };

    /// <summary>An empty sheet to send out.</summary>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, Options))
        {
            csv.WriteHeader(Columns);
            foreach (var piece in sheet.Pieces)
            {
                csv.WriteField(sheet.Hat.Name);
                csv.WriteField(sheet.Size);
                csv.WriteField(sheet.Stripes);
                csv.WriteField("");
                csv.WriteField("");
                csv.WriteField("");
                csv.WriteField(sheet.Written.StitchesPer10Cm, "0.##");
                csv.WriteField(sheet.Written.RowsPer10Cm, "0.##");
                for (var i = 0; i < 5; i++)
                {
                    csv.WriteField("");
                }

                csv.WriteField(piece.Name);
                csv.WriteField("");
                csv.WriteField("");
                csv.EndRecord();
            }
        }

        return text.ToString();
    }

    /// <summary>Reads sheets back: rows of one tester, size and count after another make one sheet; a part without weights was not weighed.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="hat">The name of the hat they are to be of: rows that name another are refused; null for any.</param>
    public static ReadSheets Read(string? text, string? hat = null)
    {
        var (sheets, problems) = (new List<TesterDescription>(), new List<string>());
        if (string.IsNullOrWhiteSpace(text) || text.Length > MostCharacters)
        {
            return new([], ["The file is empty, or too long for tester sheets."]);
        }

        var first = text.Split('\n', 2)[0];
        var separator = first.Contains('\t', StringComparison.Ordinal) ? '\t' : first.Contains(';', StringComparison.Ordinal) ? ';' : ',';
        try
        {
            using var csv = CsvReader.FromText(text.TrimStart('\uFEFF'), new CsvReaderOptions { Separator = separator });
            var before = new Dictionary<string, string>(StringComparer.Ordinal);
            var row = 1;
            while (csv.Read())
            {
                row++;
                var headers = csv.Headers.ToArray();
                if (Array.Find(["tester", "part", "before_g", "after_g"], c => !headers.Contains(c, StringComparer.Ordinal)) is { } missing)
                {
                    return new([], [$"The first row does not name the column {missing}. Use the sheet from this page."]);
                }

                var fields = headers.Where(h => Columns.Contains(h, StringComparer.Ordinal)).Distinct(StringComparer.Ordinal).ToDictionary(h => h, h => Cell(csv.GetString(h)), StringComparer.Ordinal);
                var another = fields["tester"].Length > 0 && before.TryGetValue("tester", out var last) && last != fields["tester"];
                foreach (var column in OfTheTester.Where(c => !another && fields.GetValueOrDefault(c, "").Length == 0 && before.ContainsKey(c)))
                {
                    fields[column] = before[column];
                }

                before = fields;
                if (hat is not null && fields.GetValueOrDefault("hat", "") is { Length: > 0 } of && !of.Equals(hat.Trim(), StringComparison.OrdinalIgnoreCase))
                {
                    problems.Add($"Row {row}: this sheet is of {Short(of)}, not of {Short(hat)}. Choose that hat above to read it.");
                    continue;
                }

                Add(fields, row, sheets, problems);
            }
        }
        catch (CsvFormatException e)
        {
            problems.Add($"Row {e.LineNumber}: cannot be read; nothing after it was read.");
        }

        if (sheets.Count == 0 && problems.Count == 0)
        {
            problems.Add("No part in the file has been weighed.");
        }

        return new(sheets, [.. problems.Take(MostProblems)]);
    }

    private static void Add(Dictionary<string, string> fields, int row, List<TesterDescription> sheets, List<string> problems)
    {
        string Text(string column) => fields.GetValueOrDefault(column, "");
        var sound = true;
        decimal? Number(string column)
        {
            var typed = Text(column);
            if (typed.Length == 0)
            {
                return null;
            }

            if (TypedNumber.TryRead(typed, out var value, out var message))
            {
                return value;
            }

            problems.Add($"Row {row}: {column} {message}.");
            sound = false;
            return null;
        }

        if (Text("before_g").Length == 0 && Text("after_g").Length == 0)
        {
            return;
        }

        var extra = Text("extra_rounds");
        var rounds = 0;
        if (extra.Length > 0 && !int.TryParse(extra.TrimStart('+'), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out rounds))
        {
            problems.Add($"Row {row}: extra_rounds must be a whole number, such as 2 or -1.");
            sound = false;
        }

        var part = new TesterPartDescription(Text("part"), Number("before_g"), Number("after_g"));
        var stripes = Number("stripes");
        var sheet = new TesterDescription
        {
            Tester = Text("tester"),
            Size = Text("size"),
            Stripes = stripes is null ? null : (int)Math.Clamp(stripes.Value, 0, 1_000),
            Label = Text("label"),
            ScaleStepGrams = Number("scale_step_g"),
            WrittenStitches = Number("written_stitches_10cm"),
            WrittenRows = Number("written_rows_10cm"),
            Stitches = Number("stitches_10cm"),
            Rows = Number("rows_10cm"),
            ExtraRounds = rounds,
            OtherYarn = Text("other_yarn").ToUpperInvariant() is "YES" or "Y" or "TRUE" or "1" or "X",
            Changes = Text("changes") is { Length: > 0 } changes ? changes : null,
            Parts = [part],
        };
        if (!sound)
        {
            return;
        }

        var at = sheets.FindLastIndex(s => s.Tester == sheet.Tester && s.Size == sheet.Size && s.Stripes == sheet.Stripes);
        if (at >= 0)
        {
            sheets[at] = sheets[at] with { Parts = [.. sheets[at].Parts!, part] };
        }
        else
        {
            sheets.Add(sheet);
        }
    }

    private static string Short(string name) => name.Length <= 40 ? $"“{name}”" : $"“{name[..40]}…”";

    // The mark put before what a spreadsheet would run as a formula is taken off again.
    private static string Cell(string typed) =>
        typed.Length > 1 && typed[0] == '\'' && typed[1] is ('=' or '+' or '-' or '@') ? typed[1..].Trim() : typed.Trim();
}
