using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Everything about a leftover but what it weighs. An empty text is none.</summary>
/// <param name="Name">1 to 80 characters.</param>
/// <param name="Ratio">The label, or null where there is none.</param>
public record LeftoverDetails(string Name, LabelRatio? Ratio)
{
    private const int MostWords = 80;

    /// <summary>The two letters on its tag, a capital and a small one; null for a pair made from the name.</summary>
    public string? Code { get; init; }

    public WeightClass? Class { get; init; }

    public FibreBlend Fibre { get; init; } = FibreBlend.Unknown;

    public bool Superwash { get; init; }

    public YarnMake Make { get; init; }

    public YarnColour? Colour { get; init; }

    /// <summary>How its label says to wash it; null where nobody said.</summary>
    public Care? Care { get; init; }

    /// <summary>Dye lot or set, at most 80 characters.</summary>
    public string? Lot { get; init; }

    /// <summary>The bag it belongs to, at most 80 characters.</summary>
    public string? Bag { get; init; }

    /// <summary>Where it is, at most 80 characters.</summary>
    public string? KeptIn { get; init; }

    /// <summary>What it is kept back for, at most 80 characters; null if it is not.</summary>
    public string? KeptBackFor { get; init; }

    /// <summary>Weighed, but never to go into a hat.</summary>
    public bool NotForHats { get; init; }

    /// <summary>Too short to plan with.</summary>
    public bool Crumb { get; init; }

    /// <summary>At most 500 characters.</summary>
    public string? Note { get; init; }

    /// <summary>Says of each text what is wrong with it, under <paramref name="at"/> and the field's name.</summary>
    public virtual void Check(FieldErrors errors, string at = "")
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (string.IsNullOrWhiteSpace(Name))
        {
            errors.Add($"{at}name", "is missing");
        }

        if (Code is not null and not [>= 'A' and <= 'Z', >= 'a' and <= 'z'])
        {
            errors.Add($"{at}code", "must be a capital and a small letter, such as Oa");
        }

        foreach (var (field, text, most) in new[]
        {
            ("name", Name?.Trim(), LeftoverStore.MostName), ("lot", Lot, MostWords), ("keptIn", KeptIn, MostWords), ("note", Note, LeftoverStore.MostNote),
            ("bag", Bag, MostWords), ("keptBackFor", KeptBackFor, MostWords),
        })
        {
            CheckText(errors, at + field, text, most);
        }
    }

    internal static void CheckText(FieldErrors errors, string field, string? text, int most)
    {
        if (text?.Length > most)
        {
            errors.Add(field, $"must be at most {most} characters");
        }

        if (text?.Contains('\0', StringComparison.Ordinal) == true)
        {
            errors.Add(field, "has a character in it that is no text");
        }
    }

    internal static LeftoverDetails Of(LeftoverRow row) => new(row.Name, LoggedLeftover.RatioOf(row))
    {
        Code = row.Code,
        Class = row.WeightClass,
        Fibre = FibreBlend.TryParse(row.Fibre, out var fibre, out _) ? fibre : FibreBlend.Unknown,
        Superwash = row.Superwash,
        Make = row.Make,
        Colour = YarnColour.TryParse(row.Colour, out var colour, out _) ? colour : null,
        Care = row.Care is not null && Care.TryParse(row.Care, out var care, out _) ? care : null,
        Lot = row.Lot,
        Bag = row.Bag,
        KeptIn = row.KeptIn,
        KeptBackFor = row.KeptBackFor,
        NotForHats = row.NotForHats,
        Crumb = row.Crumb,
        Note = row.Note,
    };

    /// <summary>Writes everything but the code, which is given out.</summary>
    internal void To(LeftoverRow row)
    {
        row.Name = Name.Trim();
        row.Colour = Colour?.Hex;
        row.Fibre = Fibre.ToString();
        row.WeightClass = Class;
        row.LabelMass = Ratio?.Mass;
        row.LabelMassUnit = Ratio?.MassUnit ?? MassUnit.Grams;
        row.LabelLength = Ratio?.Length;
        row.LabelLengthUnit = Ratio?.LengthUnit ?? LengthUnit.Metres;
        row.RatioFrom = Ratio?.Source ?? RatioSource.Printed;
        row.Superwash = Superwash;
        row.Make = Make;
        row.Care = Care?.ToString();
        (row.Lot, row.Bag, row.KeptIn, row.KeptBackFor, row.Note) = (Words(Lot), Words(Bag), Words(KeptIn), Words(KeptBackFor), Words(Note));
        (row.NotForHats, row.Crumb) = (NotForHats, Crumb);
    }

    private static string? Words(string? text) => string.IsNullOrEmpty(text) ? null : text;
}
