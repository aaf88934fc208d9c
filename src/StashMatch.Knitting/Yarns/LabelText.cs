using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>Label ratios as people type them off a ball band: "100 g/400 m", "50g 175yd", "4 oz / 205 yd", "210 yd per 100 g".</summary>
public static class LabelText
{
    private const int MostCharacters = 60;

    // No label prints more; a third of an ounce then reads back as it is shown.
    private const int Places = 4;

    /// <summary>Reads a label.</summary>
    /// <param name="text">What was typed: one mass and one length, each with its unit, in either order. A missing unit is never guessed.</param>
    /// <param name="source">Where the ratio comes from.</param>
    /// <param name="ratio">The ratio, numbers and units as typed, when the answer is true.</param>
    /// <param name="message">What is wrong, otherwise, in plain words.</param>
    public static bool TryParse(
        string? text, RatioSource source, [NotNullWhen(true)] out LabelRatio? ratio, [NotNullWhen(false)] out string? message)
    {
        (ratio, message) = (null, null);
        if (string.IsNullOrWhiteSpace(text) || text.Length > MostCharacters)
        {
            message = "type grams and length, such as 100 g / 400 m";
            return false;
        }

        var pieces = TypedText.Cut(text);
        pieces.RemoveAll(p => p.Is('.'));
        if (pieces.Count == 5 && IsJoin(pieces[2]))
        {
            pieces.RemoveAt(2);
        }

        if (pieces is not [{ Kind: TypedKind.Number }, { Kind: TypedKind.Word }, { Kind: TypedKind.Number }, { Kind: TypedKind.Word }]
            || !(IsUnit(pieces[1].Text) && IsUnit(pieces[3].Text)))
        {
            message = "type one weight and one length with their units, such as 100 g / 400 m or 4 oz / 205 yd";
            return false;
        }

        if (!TryNumber(pieces[0].Text, out var first, out message) || !TryNumber(pieces[2].Text, out var second, out message))
        {
            return false;
        }

        var (mass, massUnit, length, lengthUnit) = (0m, MassOf(pieces[1].Text), 0m, LengthOf(pieces[3].Text));
        if (massUnit is not null && lengthUnit is not null)
        {
            (mass, length) = (first, second);
        }
        else
        {
            (mass, massUnit, length, lengthUnit) = (second, MassOf(pieces[3].Text), first, LengthOf(pieces[1].Text));
        }

        if (massUnit is null || lengthUnit is null)
        {
            message = massUnit is null && lengthUnit is not null ? "the weight is missing, such as 100 g" : "the length is missing, such as 400 m";
            return false;
        }

        if (!LabelRatio.CanBe(mass, massUnit.Value, length, lengthUnit.Value))
        {
            message = $"it must come to {LabelRatio.LeastMetresPer100G} to {LabelRatio.MostMetresPer100G} m per 100 g";
            return false;
        }

        ratio = new LabelRatio(mass, massUnit.Value, length, lengthUnit.Value, source);
        return true;
    }

    private static bool TryNumber(string typed, out decimal number, [NotNullWhen(false)] out string? message)
    {
        if (!TypedNumber.TryRead(typed, out number, out var wrong))
        {
            message = $"{typed} {wrong}";
            return false;
        }

        (number, message) = (Math.Round(number, Places), null);
        return true;
    }

    private static bool IsJoin(TypedPiece piece) => piece.Kind == TypedKind.Mark
        ? piece.Text[0] is '/' or '=' or ':' or ';' or ',' or '-' or '–'
        : piece.Text is "per" or "to" or "in" or "a";

    private static bool IsUnit(string word) => MassOf(word) is not null || LengthOf(word) is not null;

    private static MassUnit? MassOf(string word) => word switch
    {
        "g" or "gr" or "gram" or "grams" or "gramme" or "grammes" => MassUnit.Grams,
        "oz" or "ounce" or "ounces" => MassUnit.Ounces,
        _ => null,
    };

    private static LengthUnit? LengthOf(string word) => word switch
    {
        "m" or "metre" or "metres" or "meter" or "meters" => LengthUnit.Metres,
        "y" or "yd" or "yds" or "yard" or "yards" => LengthUnit.Yards,
        _ => null,
    };
}
