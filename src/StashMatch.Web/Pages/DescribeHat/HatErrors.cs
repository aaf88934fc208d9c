using System.Globalization;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.DescribeHat;

/// <summary>What is wrong with a hat as typed, one sentence for each field of the page, named as the page names it.</summary>
public static class HatErrors
{
    // What the page has a field for; everything else is said below them.
    private static readonly string[] Placed =
        ["name", "weightClass", "gauge.stitchesPer10cm", "gauge.rowsPer10cm", "brim.depthCm", "braids.where", "crown.decreaseLines", "stripeCounts.least", "stripeCounts.most", "stripes", "pomPom", "sizes", "printed", "head", "mine.stitches", "mine.rows"];

    /// <summary>The first message of a field, or of what belongs to it; null where nothing is wrong with it.</summary>
    /// <param name="errors">All messages.</param>
    /// <param name="field">Such as "brim.depthCm"; "stripes" stands for "stripes.depthsCm[2]" too.</param>
    /// <param name="called">What the page calls it.</param>
    public static string? Of(FieldErrors errors, string field, string called)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (errors.ByField.FirstOrDefault(e => Belongs(e.Key, field)) is not { Key: { } key, Value: var messages })
        {
            return null;
        }

        var where = Places(key[field.Length..]) switch
        {
            [] => "",
            [var one] => $"number {one + 1} ",
            [var size, var row, ..] => $"column {size + 3}, row {row + 2} ",
        };
        var message = messages[0].Replace("beside-brim-too", "“beside the brim too”", StringComparison.Ordinal);
        return Shown.Sentence(where.Length == 0 ? called : $"{called}: {where.TrimEnd()}", message);
    }

    /// <summary>What is wrong with no field of the page in particular.</summary>
    public static IEnumerable<string> Elsewhere(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        return errors.ByField.Where(e => !Array.Exists(Placed, p => Belongs(e.Key, p))).Select(e => Shown.Sentence(e.Key.Replace('.', ' '), e.Value[0]));
    }

    private static bool Belongs(string key, string field) =>
        key.StartsWith(field, StringComparison.Ordinal) && (key.Length == field.Length || key[field.Length] is '.' or '[');

    // The numbers in brackets, in order.
    private static IReadOnlyList<int> Places(string rest) =>
        [.. rest.Split('[').Skip(1).Select(p => int.TryParse(p.Split(']')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0)];
}
