using System.Globalization;
using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>The drawing in words, for those who read it rather than see it.</summary>
public static class HatText
{
    /// <summary>One sentence for each part, in knitting order.</summary>
    public static IReadOnlyList<string> InOrder(HatNeeds hat, IReadOnlyDictionary<string, PartPaint> paint)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(paint);
        return [.. hat.Parts.Select(p =>
        {
            var label = paint.GetValueOrDefault(p.Name)?.Label ?? p.Name;
            var rows = p.Rows == 0 ? "" : string.Create(
                CultureInfo.InvariantCulture, $": {p.Rows} rows, {p.Depth.Value:0.0} cm ({p.Depth.Inches:0.0} in) deep");
            return $"{char.ToUpperInvariant(label[0])}{label[1..]}{rows}.";
        })];
    }
}
