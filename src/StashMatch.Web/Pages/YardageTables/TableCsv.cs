using System.Globalization;
using CsvHelper;
using StashMatch.Knitting.Designing;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>The table as CSV: whole metres and yards up, grams to the tenth up, depths to the hundredth and the eighth.</summary>
public static class TableCsv
{
    /// <summary>Text that a spreadsheet would run as a formula is kept as text.</summary>
    private static readonly CsvWriterOptions Options = new() { Injection = CsvInjection.Escape };

    public static string Write(TableView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, Options))
        {
            csv.WriteHeader([
                "size", "head_cm", "stripes", .. view.Measured ? new[] { "rows_in_a_stripe", "depth_cm", "depth_in" } : [],
                .. view.Columns.SelectMany(c => new[] { $"{c.Key}_m", $"{c.Key}_yd", $"{c.Key}_g" }),
                "allowance_percent", "label", "figures", "cannot_be_knitted"]);
            foreach (var row in view.Rows)
            {
                Write(view, row, csv);
            }
        }

        return text.ToString();
    }

    private static void Write(TableView view, YardageRow row, CsvWriter csv)
    {
        csv.WriteField(row.Size);
        csv.WriteField(view.HeadOf(row.Size)?.Value, "0.##");
        csv.WriteField(row.Stripes);
        if (view.Measured)
        {
            csv.WriteField(row.Cannot is null ? row.StripeRows : (int?)null);
            csv.WriteField(row.StripeDepth?.Value, "0.##");
            csv.WriteField(row.StripeDepth is { } depth ? Math.Round(depth.Inches * 8, MidpointRounding.AwayFromZero) / 8 : (decimal?)null, "0.###");
        }

        foreach (var column in view.Columns)
        {
            var figure = column.Of(row);
            csv.WriteField(figure?.WholeMetres);
            csv.WriteField(figure?.WholeYards);
            csv.WriteField(figure?.GramsAt(view.Label), "0.0");
        }

        csv.WriteField(view.Allowance, "0.##");
        csv.WriteField(view.Label.ToString());
        csv.WriteField(TableView.SourceOf(row));
        csv.WriteField(row.Cannot?.Reason);
        csv.EndRecord();
    }
}
