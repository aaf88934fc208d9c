using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>Our own size set, A to H, heads from 46 to 63 cm [ours, from WHO head circumference standards and ANSUR II]. Nothing under one year, on purpose.</summary>
public static class HatSizes
{
    private static readonly IReadOnlyList<Row> Rows = SeedData.Rows<Row>("hat-sizes.json");

    /// <summary>The sizes, worked out for one head each.</summary>
    public static IReadOnlyList<HatSize> Default { get; } =
        [.. Rows.Select(r => HatSize.ForHead(r.Size, Centimetres.From(r.WorkedOutForCm)))];

    /// <summary>The size for a head; null for one smaller than A or larger than H.</summary>
    public static string? LetterFor(Centimetres head) =>
        Rows.FirstOrDefault(r => r.HeadFromCm <= head.Value && (head.Value < r.HeadBelowCm || (r == Rows[^1] && head.Value == r.HeadBelowCm)))?.Size;

    /// <summary>Whom a size is for, such as "5-9 years"; null for a size of another set.</summary>
    public static string? For(string size) => Rows.FirstOrDefault(r => r.Size == size)?.For;

    /// <summary>
    /// The size of a hat for the head nearest to that of a size it does not have; of two as near the larger. Null where that size is known neither
    /// here nor to another hat, or no head is known.
    /// </summary>
    /// <param name="size">The size asked for.</param>
    /// <param name="hat">The hat that does not have it.</param>
    /// <param name="others">Hats that may have it.</param>
    public static string? Nearest(string size, Hat hat, IEnumerable<Hat> others)
    {
        ArgumentNullException.ThrowIfNull(hat);
        var asked = others.Select(h => HeadIn(h, size)).FirstOrDefault(h => h is not null) ?? HeadOf(size);
        return asked is null ? null : hat.SizeNames.Select(s => (Size: s, Head: HeadIn(hat, s) ?? HeadOf(s))).Where(s => s.Head is not null)
            .OrderBy(s => Math.Abs(s.Head!.Value - asked.Value)).ThenByDescending(s => s.Head).Select(s => s.Size).FirstOrDefault();
    }

    private static decimal? HeadOf(string size) => Default.FirstOrDefault(s => s.Size == size)?.Head?.Value;

    private static decimal? HeadIn(Hat hat, string size) => hat switch
    {
        HatDesign design => design.Sizes.FirstOrDefault(s => s.Size == size)?.Head?.Value,
        PrintedHat printed => printed.Sizes.FirstOrDefault(s => s.Size == size)?.Head?.Value,
        _ => null,
    };

    private sealed record Row(string Size, string For, decimal HeadFromCm, decimal HeadBelowCm, decimal WorkedOutForCm, string Source);
}
