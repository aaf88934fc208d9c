using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A label ratio as printed: one mass, one length.</summary>
public sealed record LabelBody(double? Grams, double? Ounces, double? Metres, double? Yards);

/// <summary>A leftover as the open interface takes it; <c>grams</c> is the reading, tare included.</summary>
public sealed record LeftoverBody
{
    public string? Id { get; init; }

    public string? Name { get; init; }

    public double? Grams { get; init; }

    public double? TareGrams { get; init; }

    public double? ScaleStepGrams { get; init; }

    public LabelBody? Label { get; init; }

    public string? RatioFrom { get; init; }

    public int? WeightClass { get; init; }

    public string? Fibre { get; init; }

    public string? Colour { get; init; }

    public bool? Singles { get; init; }

    public bool? Superwash { get; init; }

    public string? Lot { get; init; }

    /// <summary>Such as "30 C mild, flat", "hand wash, line", "do not wash".</summary>
    public string? Care { get; init; }

    internal static readonly Dictionary<string, RatioSource> Sources = new(StringComparer.Ordinal)
    {
        ["printed"] = RatioSource.Printed,
        ["measured"] = RatioSource.Measured,
        ["guessed"] = RatioSource.Guessed,
    };

    /// <summary>Reads the leftover; what is wrong goes to <paramref name="errors"/> under <paramref name="at"/> ("leftovers[0].").</summary>
    public Leftover? Read(FieldErrors errors, string at, string? id)
    {
        var before = errors.Any;
        var weighing = ReadWeighing(errors, at, Grams, TareGrams, ScaleStepGrams);
        var source = RatioFrom is null ? RatioSource.Printed : errors.OneOf($"{at}ratioFrom", RatioFrom, Sources);
        var ratio = ReadLabel(errors, at, Label, source ?? RatioSource.Printed);
        if (WeightClass is < 0 or > 7)
        {
            errors.Add($"{at}weightClass", "must be a whole number from 0 to 7");
        }

        if (!FibreBlend.TryParse(Fibre, out var fibre, out var fibreMessage))
        {
            errors.Add($"{at}fibre", fibreMessage);
        }

        YarnColour? colour = null;
        if (Colour is not null)
        {
            if (YarnColour.TryParse(Colour, out var read, out var colourMessage))
            {
                colour = read;
            }
            else
            {
                errors.Add($"{at}colour", colourMessage);
            }
        }

        Knitting.Yarns.Care? care = null;
        if (Care is not null && !Knitting.Yarns.Care.TryParse(Care, out care, out var careMessage))
        {
            errors.Add($"{at}care", careMessage);
        }

        foreach (var (field, text) in new[] { ("name", Name), ("lot", Lot) })
        {
            if (text is { Length: > 80 })
            {
                errors.Add($"{at}{field}", "must be at most 80 characters");
            }
        }

        if (weighing is null || ratio is null || fibre is null || id is null || (errors.Any && !before))
        {
            return null;
        }

        return new Leftover(id, Name ?? id, weighing, ratio)
        {
            Class = (Knitting.Yarns.WeightClass?)WeightClass,
            Fibre = fibre,
            Colour = colour,
            Superwash = Superwash ?? false,
            Make = Singles == true ? YarnMake.Singles : YarnMake.Plied,
            Lot = Lot,
            Care = care,
        };
    }

    /// <summary>Reads a reading of the scale.</summary>
    public static Weighing? ReadWeighing(FieldErrors errors, string at, double? grams, double? tareGrams, double? scaleStepGrams)
    {
        var gross = errors.Number($"{at}grams", grams, 0, Weighing.MostGrams, leastItself: false);
        var tare = errors.Number($"{at}tareGrams", tareGrams ?? 0, 0, Weighing.MostGrams);
        var step = errors.Number($"{at}scaleStepGrams", scaleStepGrams ?? 1, 0.001m, 100);
        if (gross is null || tare is null || step is null)
        {
            return null;
        }

        if (gross < 0.001m)
        {
            errors.Add($"{at}grams", "must be at least 0.001");
            return null;
        }

        if (tare >= gross)
        {
            errors.Add($"{at}tareGrams", "must be less than what the scale shows");
            return null;
        }

        var (whole, core) = (Knitting.Quantities.Grams.From(gross.Value), Knitting.Quantities.Grams.From(tare.Value));
        if (core >= whole)
        {
            errors.Add($"{at}tareGrams", "must be less than what the scale shows");
            return null;
        }

        return new Weighing(whole, core, Knitting.Quantities.Grams.From(step.Value));
    }

    /// <summary>Reads a label: one mass, one length.</summary>
    internal static LabelRatio? ReadLabel(FieldErrors errors, string at, LabelBody? label, RatioSource source)
    {
        if (label is null)
        {
            errors.Add($"{at}label", "is missing");
            return null;
        }

        var mass = One(errors, $"{at}label.grams", $"{at}label.ounces", label.Grams, label.Ounces, "one mass, grams or ounces");
        var length = One(errors, $"{at}label.metres", $"{at}label.yards", label.Metres, label.Yards, "one length, metres or yards");
        if (mass is null || length is null)
        {
            return null;
        }

        try
        {
            return new LabelRatio(
                mass.Value,
                label.Ounces is null ? MassUnit.Grams : MassUnit.Ounces,
                length.Value,
                label.Yards is null ? LengthUnit.Metres : LengthUnit.Yards,
                source);
        }
        catch (ArgumentOutOfRangeException)
        {
            errors.Add($"{at}label", $"must come to {LabelRatio.LeastMetresPer100G} to {LabelRatio.MostMetresPer100G} metres per 100 g");
            return null;
        }
    }

    private static decimal? One(FieldErrors errors, string firstField, string secondField, double? first, double? second, string wanted)
    {
        if ((first is null) == (second is null))
        {
            errors.Add(firstField, first is null ? $"is missing: the label gives {wanted}" : $"and {secondField} cannot both be given: the label gives {wanted}");
            return null;
        }

        return errors.Number(first is null ? secondField : firstField, first ?? second, 0.001m, 100_000);
    }
}
