using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>The table in the plain lines of a pattern: the first size, the others in brackets.</summary>
public static class TableLines
{
    private const string None = "–";

    public static IReadOnlyList<string> Of(TableView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var lines = new List<string>
        {
            view.Hat.Name,
            TableWords.SizesLine(InBrackets(view.Sizes)),
        };
        if (view.Sizes.All(s => view.HeadOf(s) is not null))
        {
            var (first, second) = Shown.InOrder(
                TableWords.HeadLine(InBrackets(view.Sizes.Select(s => Shown.Centimetres(view.HeadOf(s)!.Value))), "cm"),
                TableWords.HeadLine(InBrackets(view.Sizes.Select(s => Shown.Inches(view.HeadOf(s)!.Value))), "in"));
            lines.AddRange([first, second]);
        }

        lines.Add($"{TableWords.Includes(view.AllowanceText)} {TableWords.RoundedUp} {TableWords.GramsFor(view.Label, typed: true)}");
        if (view.FactorFrom is { } factorFrom)
        {
            lines.Add(factorFrom);
        }

        foreach (var count in view.Rows.GroupBy(r => r.Stripes))
        {
            lines.Add("");
            lines.Add(Terms.Stripes(count.Key));
            lines.AddRange(Of(view, [.. count]));
        }

        return lines;
    }

    private static IEnumerable<string> Of(TableView view, IReadOnlyList<YardageRow> rows)
    {
        string Each(Func<YardageRow, string?> cell) => InBrackets(view.Sizes.Select(s => rows.FirstOrDefault(r => r.Size == s) is { } row ? cell(row) ?? None : None));
        if (view.Measured)
        {
            yield return TableWords.Line(TableWords.RowsInStripe, Each(r => r.Cannot is null ? r.StripeRows.ToString(CultureInfo.InvariantCulture) : null), "");
            var (first, second) = Shown.InOrder(
                TableWords.Line(TableWords.DepthOfStripe, Each(r => r.StripeDepth is { } d ? Shown.Centimetres(d) : null), "cm"),
                TableWords.Line(TableWords.DepthOfStripe, Each(r => r.StripeDepth is { } d ? Shown.Inches(d) : null), "in"));
            yield return first;
            yield return second;
        }

        foreach (var column in view.Columns.Where(c => rows.Any(r => c.Of(r) is not null)))
        {
            var (first, second) = Shown.InOrder(
                TableWords.Line(column.Head, Each(r => column.Of(r)?.WholeMetres.ToString(CultureInfo.InvariantCulture)), "m"),
                TableWords.Line(column.Head, Each(r => column.Of(r)?.WholeYards.ToString(CultureInfo.InvariantCulture)), "yd"));
            yield return first;
            yield return second;
            yield return TableWords.Line(column.Head, Each(r => column.Of(r) is { } f ? view.Grams(f) : null), "g");
        }

        yield return TableWords.Line(TableWords.Figures, Each(r => r.Cannot is null ? TableView.SourceOf(r) : TableWords.CannotBeKnitted), "");
    }

    private static string InBrackets(IEnumerable<string> each) => each.ToList() switch
    {
        [] => "",
        [var only] => only,
        [var first, .. var rest] => $"{first} ({string.Join(", ", rest)})",
    };
}
