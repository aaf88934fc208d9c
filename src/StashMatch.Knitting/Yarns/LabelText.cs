using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>Label ratios as people type them off a ball band: "100 g/400 m", "50g 175yd", "4 oz / 205 yd".</summary>
public static partial class LabelText
{
    /// <summary>Reads a label.</summary>
    /// <param name="text">What was typed: one mass and one length, each with its unit, in either order.</param>
    /// <param name="source">Where the ratio comes from.</param>
    /// <param name="ratio">The ratio, numbers and units as typed, when the answer is true.</param>
    /// <param name="message">What is wrong, otherwise, in plain words.</param>
    public static bool TryParse(
        string? text, RatioSource source, [NotNullWhen(true)] out LabelRatio? ratio, [NotNullWhen(false)] out string? message)
    {
        (ratio, message) = (null, null);
        if (string.IsNullOrWhiteSpace(text) || text.Length > 60)
        {
            message = "a label is a mass and a length, such as 100 g / 400 m";
            return false;
        }

        var (mass, length) = (default((decimal Number, MassUnit Unit)?), default((decimal Number, LengthUnit Unit)?));
        var found = Quantity().Matches(text);
        if (found.Count != 2 || !OnlyJoins().IsMatch(Quantity().Replace(text, " ")))
        {
            message = "a label is one mass and one length with their units, such as 100 g / 400 m or 4 oz / 205 yd";
            return false;
        }

        foreach (Match quantity in found)
        {
            if (!TypedNumber.TryRead(quantity.Groups["number"].Value, out var number, out var wrong))
            {
                message = $"{quantity.Groups["number"].Value} {wrong}";
                return false;
            }

            switch (quantity.Groups["unit"].Value.ToLowerInvariant()[0])
            {
                case 'g' when mass is null:
                    mass = (number, MassUnit.Grams);
                    break;
                case 'o' when mass is null:
                    mass = (number, MassUnit.Ounces);
                    break;
                case 'm' when length is null:
                    length = (number, LengthUnit.Metres);
                    break;
                case 'y' when length is null:
                    length = (number, LengthUnit.Yards);
                    break;
            }
        }

        if (mass is not { } m || length is not { } l)
        {
            message = mass is null ? "the label's mass is missing, such as 100 g" : "the label's length is missing, such as 400 m";
            return false;
        }

        try
        {
            ratio = new LabelRatio(m.Number, m.Unit, l.Number, l.Unit, source);
            return true;
        }
        catch (ArgumentOutOfRangeException)
        {
            message = $"the label must come to {LabelRatio.LeastMetresPer100G} to {LabelRatio.MostMetresPer100G} m per 100 g";
            return false;
        }
    }

    [GeneratedRegex(@"(?<![\p{L}\d.,])(?<number>[\d.,½¼¾⅓⅔⅛⅜⅝⅞]+(?:\s+\d+/\d+)?)\s*(?<unit>grams?|gr?|ounces?|oz|met(?:re|er)s?|m|yards?|yds?|y)\.?(?![\p{L}])", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Quantity();

    [GeneratedRegex(@"^\s*(?:[/=:;,–-]|per|to|in|a)?\s*$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex OnlyJoins();
}
