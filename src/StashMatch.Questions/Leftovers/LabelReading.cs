using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>Reads what a ball band says: mass and length, fibre, colour, care.</summary>
public static class LabelReading
{
    private static readonly Field Grams = Mass("grams");
    private static readonly Field Ounces = Mass("ounces");
    private static readonly Field Metres = Mass("metres");
    private static readonly Field Yards = Mass("yards");

    /// <summary>A field for a label: one mass and one length, or both in one text as printed.</summary>
    public static Field Field(string name) => Questions.Field.Of(name, Grams, Ounces, Metres, Yards) with { OrText = true, Longest = 60, Says = "One mass and one length, as printed." };

    /// <summary>What is said of a ratio.</summary>
    public static Said Say(LabelRatio? ratio) => ratio is null ? Said.Nothing : Said.Of(
        (ratio.MassUnit == MassUnit.Grams ? Grams : Ounces, Number(ratio.Mass)),
        (ratio.LengthUnit == LengthUnit.Metres ? Metres : Yards, Number(ratio.Length)));

    /// <summary>A label as printed, "50 g / 200 m"; empty where nothing can be read.</summary>
    public static string Printed(Said label)
    {
        ArgumentNullException.ThrowIfNull(label);
        var field = Field("label");
        return label.Words ?? (label.IsNothing ? "" : Read(new Reading(Said.Of((field, label)), new FieldErrors()), field, RatioSource.Printed)?.ToString() ?? "");
    }

    /// <summary>Reads a label, or null with a message.</summary>
    public static LabelRatio? Read(Reading reading, Field label, RatioSource source)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Said[label].Words is { } printed)
        {
            if (LabelText.TryParse(printed, source, out var read, out var message))
            {
                return read;
            }

            reading.Wrong(label, $"cannot be read: {message}");
            return null;
        }

        if (reading.In(label) is not { } inside)
        {
            reading.Wrong(label, "is missing");
            return null;
        }

        var mass = One(inside, Grams, Ounces, "mass");
        var length = One(inside, Metres, Yards, "length");
        if (mass is null || length is null)
        {
            return null;
        }

        var (massUnit, lengthUnit) = (inside.Has(Grams) ? MassUnit.Grams : MassUnit.Ounces, inside.Has(Metres) ? LengthUnit.Metres : LengthUnit.Yards);
        if (LabelRatio.CanBe(mass.Value, massUnit, length.Value, lengthUnit))
        {
            return new LabelRatio(mass.Value, massUnit, length.Value, lengthUnit, source);
        }

        reading.Wrong(label, $"must come to {LabelRatio.LeastMetresPer100G} to {LabelRatio.MostMetresPer100G} metres per 100 g");
        return null;
    }

    /// <summary>What a yarn is spun of; unknown where nothing is said, or with a message.</summary>
    public static FibreBlend Fibre(this Reading reading, Field field)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (FibreBlend.TryParse(reading.Said[field].Words, out var fibre, out var wrong))
        {
            return fibre;
        }

        reading.Wrong(field, wrong);
        return FibreBlend.Unknown;
    }

    /// <summary>A colour by its word or code; null where nothing is said, or with a message.</summary>
    public static YarnColour? Colour(this Reading reading, Field field)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Said[field] is not { Words: { } words } said || (string.IsNullOrWhiteSpace(words) && !said.IsExact))
        {
            return null;
        }

        if (NamedColour.TryRead(words, out var colour, out var wrong))
        {
            return colour;
        }

        reading.Wrong(field, wrong);
        return null;
    }

    /// <summary>How a label says to wash it; null where nothing is said, or with a message.</summary>
    public static Care? Care(this Reading reading, Field field)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Said[field] is not { Words: { } words } said || (string.IsNullOrWhiteSpace(words) && !said.IsExact))
        {
            return null;
        }

        if (Knitting.Yarns.Care.TryParse(words, out var care, out var wrong))
        {
            return care;
        }

        reading.Wrong(field, wrong);
        return null;
    }

    private static decimal? One(Reading reading, Field first, Field second, string what)
    {
        if (reading.Has(first) && reading.Has(second))
        {
            reading.Wrong(first, $"cannot be given beside {second.Name}: a label gives one {what}");
            return null;
        }

        return reading.Has(second) ? reading.Number(second) : reading.Has(first) ? reading.Number(first) : Missing(reading, first, second, what);
    }

    private static decimal? Missing(Reading reading, Field first, Field second, string what)
    {
        reading.Wrong(first, $"is missing: a label gives one {what}, in {first.Name} or {second.Name}");
        return null;
    }

    private static Said Number(decimal number) => Said.Exact(Said.Number(number));

    private static Field Mass(string name) => Questions.Field.Number(name, LabelRatio.LeastNumber, LabelRatio.MostNumber);
}
