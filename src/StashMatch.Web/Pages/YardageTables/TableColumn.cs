using StashMatch.Knitting.Designing;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>One length of a table.</summary>
/// <param name="Key">Its name in a file.</param>
/// <param name="Head">Its name on the page.</param>
/// <param name="Sentence">What it takes, in words: "A stripe takes".</param>
/// <param name="Of">The figure in a row; null where the row has none.</param>
public sealed record TableColumn(string Key, string Head, string Sentence, Func<YardageRow, Figure?> Of);
