using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover to be logged.</summary>
/// <param name="Name">1 to 80 characters.</param>
/// <param name="Weighing">The reading.</param>
/// <param name="Ratio">The label, or null for a crumb.</param>
public sealed record NewLeftover(string Name, Weighing Weighing, LabelRatio? Ratio)
{
    private const int MostWords = 80;

    /// <summary>What the open interface shall know it by, 1 to 80 characters; null for one made from the name.</summary>
    public string? Id { get; init; }

    public WeightClass? Class { get; init; }

    public FibreBlend Fibre { get; init; } = FibreBlend.Unknown;

    public bool Superwash { get; init; }

    public YarnMake Make { get; init; }

    public YarnColour? Colour { get; init; }

    /// <summary>Dye lot or set, at most 80 characters.</summary>
    public string? Lot { get; init; }

    /// <summary>How its label says to wash it; null where nobody said.</summary>
    public Care? Care { get; init; }

    /// <summary>Where it is, at most 80 characters.</summary>
    public string? KeptIn { get; init; }

    /// <summary>At most 500 characters.</summary>
    public string? Note { get; init; }

    /// <summary>The bag it belongs to, at most 80 characters.</summary>
    public string? Bag { get; init; }

    /// <summary>What it is kept back for, at most 80 characters; null if it is not.</summary>
    public string? KeptBackFor { get; init; }

    /// <summary>Weighed, but never to go into a hat.</summary>
    public bool NotForHats { get; init; }

    internal bool IsDemo { get; init; }

    /// <summary>Says of each text what is wrong with it, under <paramref name="at"/> and the field's name.</summary>
    public void Check(FieldErrors errors, string at = "")
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (string.IsNullOrWhiteSpace(Name))
        {
            errors.Add($"{at}name", "is missing");
        }

        if (Id is not null && string.IsNullOrWhiteSpace(Id))
        {
            errors.Add($"{at}id", "is empty");
        }

        foreach (var (field, text, most) in new[]
        {
            ("name", Name?.Trim(), LeftoverStore.MostName), ("id", Id, MostWords), ("lot", Lot, MostWords),
            ("keptIn", KeptIn, MostWords), ("note", Note, LeftoverStore.MostNote), ("bag", Bag, MostWords), ("keptBackFor", KeptBackFor, MostWords),
        })
        {
            if (text?.Length > most)
            {
                errors.Add($"{at}{field}", $"must be at most {most} characters");
            }
        }
    }

    internal LeftoverRow ToRow(Tags tags, DateTimeOffset at)
    {
        var row = new LeftoverRow
        {
            Id = Guid.NewGuid(),
            PublicId = Id is null ? tags.TakeIdFrom(Name) : tags.TakeId(Id),
            Name = Name.Trim(),
            Code = tags.TakeCode(Name),
            Colour = Colour?.Hex,
            Fibre = Fibre.ToString(),
            WeightClass = Class,
            LabelMass = Ratio?.Mass,
            LabelMassUnit = Ratio?.MassUnit ?? MassUnit.Grams,
            LabelLength = Ratio?.Length,
            LabelLengthUnit = Ratio?.LengthUnit ?? LengthUnit.Metres,
            RatioFrom = Ratio?.Source ?? RatioSource.Printed,
            Superwash = Superwash,
            Make = Make,
            Lot = Lot,
            Care = Care?.ToString(),
            KeptIn = KeptIn,
            Note = Note,
            Bag = Bag,
            KeptBackFor = KeptBackFor,
            NotForHats = NotForHats,
            IsDemo = IsDemo,
            LoggedAt = at,
        };
        row.Weighings.Add(WeighingRow.Of(Weighing, row.Id, at));
        return row;
    }
}
