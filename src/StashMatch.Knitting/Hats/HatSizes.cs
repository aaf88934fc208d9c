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

    private sealed record Row(string Size, string For, decimal HeadFromCm, decimal HeadBelowCm, decimal WorkedOutForCm, string Source);
}
