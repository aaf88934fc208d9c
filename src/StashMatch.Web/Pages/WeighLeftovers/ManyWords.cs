using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>What is said where many leftovers are imported or exported as a table.</summary>
public static class ManyWords
{
    public const string Heading = "Import and export";
    public const string HowTo = "Paste rows from a spreadsheet, or open a CSV file. The first row names the columns.";
    public const string Columns = "It needs name and grams. It may have label, weight class, fibre, colour, bag, kept in and note.";
    public const string Between = "Put a comma, a semicolon or a tab between cells.";
    public const string PasteHere = "paste rows here";
    public const string OrOpen = "or open a file";
    public const string Export = "Export all leftovers (CSV)";
    public const string WhatRowsSay = "What the rows say";
    public const string NotSavedYet = "Nothing is saved yet.";
    public const string CannotBeRead = "Cannot be read";
    public const string GoodRows = "Good rows";
    public const string Row = "row";
    public const string Length = "length";
    public const string EmptyFile = "The file is empty, or over 8 MB.";
    public const string NothingPasted = "Nothing is pasted yet.";
    public const string DidNotArrive = "The rows did not arrive. What you pasted is still here. Try again.";

    public static string Sum(int good, int known, int bad)
    {
        var here = known > 0 ? $" {known} already here, left as {(known == 1 ? "it is" : "they are")}." : "";
        return $"{Terms.Counted(good, "row")} can be saved.{here}{(bad > 0 ? $" {Terms.Counted(bad, "row")} cannot be read." : "")} {NotSavedYet}";
    }

    public static string NotUsed(IReadOnlyList<string> columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        return $"Not used: {(columns.Count == 1 ? "the column" : "the columns")} {string.Join(", ", columns)}.";
    }

    public static string Bad(int row, IEnumerable<string> reasons) => $"Row {row}: {string.Join("; ", reasons)}.";

    public static string Known(string name) => $"{name} (already here)";

    public static string AndMore(int count) => $"… and {count} more.";

    public static string Keep(int count, bool someAreBad) => (count, someAreBad) switch
    {
        (1, true) => "Keep the good row",
        (1, false) => "Keep the row",
        (_, true) => $"Keep the {count} good rows",
        _ => $"Keep the {count} rows",
    };
}
