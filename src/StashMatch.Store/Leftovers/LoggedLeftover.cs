using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover to be logged.</summary>
/// <param name="Name">1 to 80 characters.</param>
/// <param name="Weighing">The reading.</param>
/// <param name="Ratio">The label, or null for a crumb.</param>
public sealed record NewLeftover(string Name, Weighing Weighing, LabelRatio? Ratio)
{
    /// <summary>What the open interface shall know it by; null for one made from the name.</summary>
    public string? Id { get; init; }

    public WeightClass? Class { get; init; }

    public FibreBlend Fibre { get; init; } = FibreBlend.Unknown;

    public bool Superwash { get; init; }

    public YarnMake Make { get; init; }

    public YarnColour? Colour { get; init; }

    public string? Lot { get; init; }

    public Care? Care { get; init; }

    public string? KeptIn { get; init; }

    public string? Note { get; init; }

    internal bool IsDemo { get; init; }
}

/// <summary>A leftover as logged, with its last weighing.</summary>
public sealed record LoggedLeftover
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required string Code { get; init; }

    public required Weighing Weighing { get; init; }

    public required DateTimeOffset WeighedAt { get; init; }

    public required int Weighings { get; init; }

    public required LabelRatio? Ratio { get; init; }

    public required WeightClass? Class { get; init; }

    public required FibreBlend Fibre { get; init; }

    public required YarnColour? Colour { get; init; }

    public required bool Superwash { get; init; }

    public required YarnMake Make { get; init; }

    public required string? Lot { get; init; }

    public required Care? Care { get; init; }

    public required string? KeptIn { get; init; }

    public required string? Note { get; init; }

    public required string? KeptBackFor { get; init; }

    public required bool NotForHats { get; init; }

    public required bool IsDemo { get; init; }

    public required bool KnittedUp { get; init; }

    /// <summary>Whether it may go into a hat: a label, not knitted up, not kept back.</summary>
    public bool ForHats => Ratio is not null && !KnittedUp && !NotForHats && KeptBackFor is null;

    /// <summary>The leftover the matcher takes; null without a label.</summary>
    public Leftover? ToLeftover() => Ratio is null ? null : new Leftover(Id, Name, Weighing, Ratio)
    {
        Class = Class,
        Fibre = Fibre,
        Superwash = Superwash,
        Make = Make,
        Colour = Colour,
        Lot = Lot,
        Care = Care,
    };

    internal static LoggedLeftover Of(LeftoverRow row, WeighingRow last, int weighings) => new()
    {
        Id = row.PublicId,
        Name = row.Name,
        Code = row.Code,
        Weighing = new Weighing(
            Grams.FromMilligrams(last.GrossMilligrams), Grams.FromMilligrams(last.TareMilligrams), Grams.FromMilligrams(last.StepMilligrams)),
        WeighedAt = last.At,
        Weighings = weighings,
        Ratio = row is { LabelMass: { } mass, LabelLength: { } length }
            ? new LabelRatio(mass, row.LabelMassUnit, length, row.LabelLengthUnit, row.RatioFrom)
            : null,
        Class = row.WeightClass,
        Fibre = FibreBlend.TryParse(row.Fibre, out var fibre, out _) ? fibre : FibreBlend.Unknown,
        Colour = YarnColour.TryParse(row.Colour, out var colour, out _) ? colour : null,
        Superwash = row.Superwash,
        Make = row.Make,
        Lot = row.Lot,
        Care = row.Care is not null && Knitting.Yarns.Care.TryParse(row.Care, out var care, out _) ? care : null,
        KeptIn = row.KeptIn,
        Note = row.Note,
        KeptBackFor = row.KeptBackFor,
        NotForHats = row.NotForHats,
        IsDemo = row.IsDemo,
        KnittedUp = row.KnittedUpAt is not null,
    };
}
