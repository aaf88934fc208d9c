using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover as logged, with what is left of it.</summary>
public sealed record LoggedLeftover
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required string Code { get; init; }

    /// <summary>What is left as a reading: the last one less what was knitted from it since; the last one itself where nothing is left.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>What is left, yarn alone; 0 once it is knitted up.</summary>
    public required Grams Left { get; init; }

    /// <summary>What of it is promised to plans.</summary>
    public required Metres Promised { get; init; }

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

    /// <summary>Another one after each step taken with it.</summary>
    public Guid Version { get; init; }

    /// <summary>Whether a small picture of it is kept.</summary>
    public bool HasPicture { get; init; }

    /// <summary>Nothing is left of it.</summary>
    public bool KnittedUp => Left == default;

    /// <summary>Too short to plan with, somebody said.</summary>
    public required bool Crumb { get; init; }

    /// <summary>Whether it may go into a hat: a label, not knitted up, no crumb, not kept back.</summary>
    public bool ForHats => Ratio is not null && !KnittedUp && !Crumb && !NotForHats && KeptBackFor is null;

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

    /// <summary>What of it is not promised to plans, as a leftover; null without a label, or where nothing is free. Grams rounded down.</summary>
    public Leftover? ToFreeLeftover()
    {
        if (ToLeftover() is not { } all || Promised == default)
        {
            return ToLeftover();
        }

        var free = all.Held > Promised ? Math.Floor(Left.Milligrams - (1000 * all.Ratio.GramsOf(Promised))) : 0;
        var (tare, step) = (Weighing.Tare, Weighing.ScaleStep);
        return free < 1 ? null : all with { Weighing = new Weighing(tare + Grams.FromMilligrams((long)free), tare, step) };
    }

    /// <summary>Everything about it but what it weighs.</summary>
    public LeftoverDetails ToDetails() => new(Name, Ratio)
    {
        Code = Code,
        Class = Class,
        Fibre = Fibre,
        Superwash = Superwash,
        Make = Make,
        Colour = Colour,
        Care = Care,
        Lot = Lot,
        Bag = Bag,
        KeptIn = KeptIn,
        KeptBackFor = KeptBackFor,
        NotForHats = NotForHats,
        Crumb = Crumb,
        Note = Note,
    };

    internal static LabelRatio? RatioOf(LeftoverRow row) => row is { LabelMass: { } mass, LabelLength: { } length }
        ? new LabelRatio(mass, row.LabelMassUnit, length, row.LabelLengthUnit, row.RatioFrom)
        : null;

    internal static LoggedLeftover Of(LeftoverRow row, Ledger ledger, long promisedMillimetres, bool hasPicture = false) => new()
    {
        Id = row.PublicId,
        Name = row.Name,
        Code = row.Code,
        Version = row.Version,
        Weighing = ledger.Reading,
        Left = ledger.Left,
        Promised = Metres.FromMillimetres(promisedMillimetres),
        HasPicture = hasPicture,
        WeighedAt = ledger.Last.At,
        Weighings = ledger.Weighings,
        Ratio = RatioOf(row),
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
        Crumb = row.Crumb,
    };
}
