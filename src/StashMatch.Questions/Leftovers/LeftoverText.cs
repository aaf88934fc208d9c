using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>A leftover as it is said: its id, what the scale reads, and its details.</summary>
public static class LeftoverText
{
    /// <summary>What it is known by.</summary>
    public static readonly Field Id = Field.Text("id");

    /// <summary>What the scale reads, core or bowl included.</summary>
    public static readonly Field Grams = Field.Number("grams", 0.001m, Weighing.MostGrams) with { Says = "What the scale reads, core or bowl included." };

    /// <summary>The core or bowl; nothing said is 0.</summary>
    public static readonly Field TareGrams = Field.Number("tareGrams", 0, Weighing.MostGrams) with { Says = "The core or bowl, within the reading." };

    /// <summary>The scale's step; nothing said is 1 g.</summary>
    public static readonly Field ScaleStepGrams = Field.Number("scaleStepGrams", 0.001m, 100);

    /// <summary>The reading of a scale.</summary>
    public static IReadOnlyList<Field> Weighed { get; } = [Grams, TareGrams, ScaleStepGrams];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [Id, .. Weighed, .. LeftoverFields.Fields];

    /// <summary>Reads what the scale said, or null with messages.</summary>
    public static Weighing? ReadWeighing(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var before = reading.Errors.Count;
        var gross = reading.NumberWanted(Grams);
        var tare = reading.Number(TareGrams) ?? 0;
        var step = reading.Number(ScaleStepGrams) ?? 1;
        if (gross is null || reading.Errors.Count > before)
        {
            return null;
        }

        var (whole, core) = (Knitting.Quantities.Grams.From(gross.Value), Knitting.Quantities.Grams.From(tare));
        if (core < whole)
        {
            return new Weighing(whole, core, Knitting.Quantities.Grams.From(step));
        }

        reading.Wrong(TareGrams, "must be less than what the scale shows");
        return null;
    }

    /// <summary>Reads a leftover of a question, which has a label and is called by its id where it has no name; null with messages.</summary>
    public static Leftover? Read(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var before = reading.Errors.Count;
        var id = reading.Wanted(Id);
        var weighing = ReadWeighing(reading);
        if (!reading.Has(LeftoverFields.Label))
        {
            reading.Wrong(LeftoverFields.Label, "is missing");
        }

        var details = LeftoverFields.Change(new LeftoverDetails(id ?? "", null), reading);
        return weighing is null || reading.Errors.Count > before ? null : (details.Name.Length > 0 ? details : details with { Name = id! }).ToLeftover(id!, weighing);
    }
}
