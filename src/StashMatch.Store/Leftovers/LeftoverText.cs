using System.Globalization;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>Each detail of a leftover as text that reads back the same: in tables, and as the old values an edit leaves behind.</summary>
internal static class LeftoverText
{
    private static readonly Dictionary<string, Func<LeftoverDetails, string?>> Texts = new(StringComparer.Ordinal)
    {
        ["name"] = d => d.Name,
        ["code"] = d => d.Code,
        ["labelGrams"] = d => d.Ratio is { MassUnit: MassUnit.Grams } r ? Number(r.Mass) : null,
        ["labelOunces"] = d => d.Ratio is { MassUnit: MassUnit.Ounces } r ? Number(r.Mass) : null,
        ["labelMetres"] = d => d.Ratio is { LengthUnit: LengthUnit.Metres } r ? Number(r.Length) : null,
        ["labelYards"] = d => d.Ratio is { LengthUnit: LengthUnit.Yards } r ? Number(r.Length) : null,
        ["ratioFrom"] = d => d.Ratio is { } r ? Word(r.Source) : null,
        ["weightClass"] = d => d.Class is { } c ? $"{(int)c}" : null,
        ["fibre"] = d => d.Fibre.ToString(),
        ["superwash"] = d => YesNo(d.Superwash),
        ["make"] = d => Word(d.Make),
        ["colour"] = d => d.Colour?.Hex,
        ["care"] = d => d.Care?.ToString(),
        ["lot"] = d => d.Lot,
        ["bag"] = d => d.Bag,
        ["keptIn"] = d => d.KeptIn,
        ["keptBackFor"] = d => d.KeptBackFor,
        ["notForHats"] = d => YesNo(d.NotForHats),
        ["crumb"] = d => YesNo(d.Crumb),
        ["note"] = d => d.Note,
    };

    /// <summary>The fields, in the order they stand in a table.</summary>
    public static IReadOnlyCollection<string> Fields => Texts.Keys;

    /// <summary>One field's text; empty where nothing is said.</summary>
    public static string Of(LeftoverDetails details, string field) => Texts[field](details) ?? "";

    /// <summary>A number with every digit it has.</summary>
    public static string Number(decimal value) => value.ToString("0.############################", CultureInfo.InvariantCulture);

    public static string YesNo(bool value) => value ? "yes" : "no";

    /// <summary>Reads the details; what is wrong goes to <paramref name="errors"/> by field.</summary>
    /// <param name="text">The text of a field; empty or null where nothing is said.</param>
    /// <param name="errors">Takes the messages.</param>
    public static LeftoverDetails? Read(Func<string, string?> text, FieldErrors errors)
    {
        var before = errors.Any;
        string? Words(string field) => text(field) is { Length: > 0 } words ? words : null;
        var details = new LeftoverDetails(text("name") ?? "", ReadRatio(text, errors))
        {
            Code = Words("code"),
            Class = ReadClass(text("weightClass"), errors),
            Fibre = FibreBlend.TryParse(text("fibre"), out var fibre, out var wrong) ? fibre : Wrong(errors, "fibre", wrong, FibreBlend.Unknown),
            Superwash = ReadYesNo("superwash", text, errors),
            Make = ReadWord("make", text("make"), YarnMake.Plied, errors),
            Colour = ReadColour(text("colour"), errors),
            Care = ReadCare(text("care"), errors),
            Lot = Words("lot"),
            Bag = Words("bag"),
            KeptIn = Words("keptIn"),
            KeptBackFor = Words("keptBackFor"),
            NotForHats = ReadYesNo("notForHats", text, errors),
            Crumb = ReadYesNo("crumb", text, errors),
            Note = Words("note"),
        };
        details.Check(errors);
        return errors.Any && !before ? null : details;
    }

    /// <summary>A number in a range, as people type them.</summary>
    public static decimal? ReadNumber(string field, string? text, decimal least, decimal most, FieldErrors errors)
    {
        if (!TypedNumber.TryRead(text, out var value, out var wrong))
        {
            errors.Add(field, wrong);
        }
        else if (value < least || value > most)
        {
            errors.Add(field, $"must be from {Number(least)} to {Number(most)}");
        }
        else
        {
            return value;
        }

        return null;
    }

    public static bool ReadYesNo(string field, Func<string, string?> text, FieldErrors errors)
    {
        switch ((text(field) ?? "").Trim().ToUpperInvariant())
        {
            case "YES" or "TRUE" or "1" or "X":
                return true;
            case "" or "NO" or "FALSE" or "0":
                return false;
            default:
                errors.Add(field, "must be yes or no");
                return false;
        }
    }

    /// <summary>Where a label ratio comes from; printed where nothing is said.</summary>
    public static RatioSource ReadSource(Func<string, string?> text, FieldErrors errors) => ReadWord("ratioFrom", text("ratioFrom"), RatioSource.Printed, errors);

    private static LabelRatio? ReadRatio(Func<string, string?> text, FieldErrors errors)
    {
        var source = ReadSource(text, errors);
        var (grams, ounces, metres, yards) = (Said("labelGrams"), Said("labelOunces"), Said("labelMetres"), Said("labelYards"));
        if ((grams ?? ounces ?? metres ?? yards) is null)
        {
            return null;
        }

        if ((grams is null) == (ounces is null))
        {
            errors.Add(grams is null ? "labelGrams" : "labelOunces", grams is null ? "is missing: a label gives one mass, in grams or ounces" : "cannot be given beside labelGrams: a label gives one mass");
            return null;
        }

        if ((metres is null) == (yards is null))
        {
            errors.Add(metres is null ? "labelMetres" : "labelYards", metres is null ? "is missing: a label gives one length, in metres or yards" : "cannot be given beside labelMetres: a label gives one length");
            return null;
        }

        var mass = ReadNumber(grams is null ? "labelOunces" : "labelGrams", grams ?? ounces, LabelRatio.LeastNumber, LabelRatio.MostNumber, errors);
        var length = ReadNumber(metres is null ? "labelYards" : "labelMetres", metres ?? yards, LabelRatio.LeastNumber, LabelRatio.MostNumber, errors);
        if (mass is null || length is null)
        {
            return null;
        }

        var (massUnit, lengthUnit) = (grams is null ? MassUnit.Ounces : MassUnit.Grams, metres is null ? LengthUnit.Yards : LengthUnit.Metres);
        if (!LabelRatio.CanBe(mass.Value, massUnit, length.Value, lengthUnit))
        {
            errors.Add(metres is null ? "labelYards" : "labelMetres", $"and the label's mass must come to {LabelRatio.LeastMetresPer100G} to {LabelRatio.MostMetresPer100G} m per 100 g");
            return null;
        }

        return new LabelRatio(mass.Value, massUnit, length.Value, lengthUnit, source);

        string? Said(string field) => text(field) is { } said && !string.IsNullOrWhiteSpace(said) ? said : null;
    }

    private static WeightClass? ReadClass(string? text, FieldErrors errors) => (text ?? "").Trim() switch
    {
        "" => null,
        [>= '0' and <= '7'] digit => (WeightClass)(digit[0] - '0'),
        _ => Wrong<WeightClass?>(errors, "weightClass", "must be a whole number from 0 to 7", null),
    };

    private static YarnColour? ReadColour(string? text, FieldErrors errors) =>
        string.IsNullOrWhiteSpace(text) ? null
        : YarnColour.TryParse(text, out var colour, out var wrong) ? colour
        : Wrong<YarnColour?>(errors, "colour", wrong, null);

    private static Care? ReadCare(string? text, FieldErrors errors) =>
        string.IsNullOrWhiteSpace(text) ? null
        : Care.TryParse(text, out var care, out var wrong) ? care
        : Wrong<Care?>(errors, "care", wrong, null);

    private static T ReadWord<T>(string field, string? text, T otherwise, FieldErrors errors)
        where T : struct, Enum
    {
        var word = (text ?? "").Trim();
        if (word.Length == 0)
        {
            return otherwise;
        }

        foreach (var value in Enum.GetValues<T>())
        {
            if (Word(value).Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        errors.Add(field, $"must be one of {string.Join(", ", Enum.GetValues<T>().Select(Word))}");
        return otherwise;
    }

    private static T Wrong<T>(FieldErrors errors, string field, string message, T instead)
    {
        errors.Add(field, message);
        return instead;
    }

    private static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}
