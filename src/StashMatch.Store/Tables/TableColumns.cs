namespace StashMatch.Store;

/// <summary>The columns of a table of leftovers, named as the open interface names them.</summary>
internal static class TableColumns
{
    /// <summary>A label in one cell, as printed; read, never written.</summary>
    public const string Label = "label";

    /// <summary>Every column that is written, in order.</summary>
    public static IReadOnlyList<string> Written { get; } =
        ["id", "name", "code", "grams", "tareGrams", "scaleStepGrams", .. LeftoverFields.Columns.Except(["name", "code", "note"], StringComparer.Ordinal), "knittedUp", "note"];

    private static readonly HashSet<string> Words = LeftoverFields.Kept.Where(f => f.IsOwnWords).SelectMany(f => f.Columns).Append("id").ToHashSet(StringComparer.Ordinal);

    private static readonly Dictionary<string, string> ByPlainName = Written.Append(Label).ToDictionary(Plain, c => c, StringComparer.Ordinal)
        .Concat([new("color", "colour"), new("fiber", "fibre"), new("labelmeters", "labelMetres")]).ToDictionary(StringComparer.Ordinal);

    /// <summary>Whether a column holds words of the person's own, which a spreadsheet might take for a formula.</summary>
    public static bool HasWords(string column) => Words.Contains(column);

    /// <summary>The column a heading means: capitals, spaces and signs do not count. Null for none.</summary>
    public static string? Find(string heading) => ByPlainName.GetValueOrDefault(Plain(heading));

    private static string Plain(string heading) => string.Concat(heading.Where(char.IsLetterOrDigit)).ToLowerInvariant();
}
