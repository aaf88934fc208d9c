using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover as logged, with its last weighing.</summary>
public sealed record LoggedLeftover
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required string Code { get; init; }

    /// <summary>The last reading.</summary>
    public required Weighing Weighing { get; init; }

    public required DateTimeOffset WeighedAt { get; init; }

    /// <summary>How often it was weighed, 1 or more.</summary>
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

    public required string? Bag { get; init; }

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
        Weighing = last.ToWeighing(),
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
        Bag = row.Bag,
        KeptBackFor = row.KeptBackFor,
        NotForHats = row.NotForHats,
        IsDemo = row.IsDemo,
        KnittedUp = row.KnittedUpAt is not null,
    };
}
