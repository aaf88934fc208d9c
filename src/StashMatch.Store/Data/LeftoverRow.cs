using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store.Data;

/// <summary>A logged leftover. What it weighs stands in its ledger.</summary>
public sealed class LeftoverRow : IOwned, IRaced
{
    public Guid Id { get; set; }

    public Guid OwnerId { get; set; }

    public Guid Version { get; set; }

    /// <summary>What the open interface knows it by; unique for its owner.</summary>
    public required string PublicId { get; set; }

    public required string Name { get; set; }

    /// <summary>The two letters on its tag; unique for its owner as far as they go.</summary>
    public required string Code { get; set; }

    public string? Colour { get; set; }

    public required string Fibre { get; set; }

    public WeightClass? WeightClass { get; set; }

    /// <summary>The label as printed; null for a crumb.</summary>
    public decimal? LabelMass { get; set; }

    public MassUnit LabelMassUnit { get; set; }

    public decimal? LabelLength { get; set; }

    public LengthUnit LabelLengthUnit { get; set; }

    public RatioSource RatioFrom { get; set; }

    public bool Superwash { get; set; }

    public YarnMake Make { get; set; }

    public string? Lot { get; set; }

    public string? Care { get; set; }

    public string? KeptIn { get; set; }

    public string? Note { get; set; }

    /// <summary>The bag it belongs to.</summary>
    public string? Bag { get; set; }

    public string? KeptBackFor { get; set; }

    public bool NotForHats { get; set; }

    /// <summary>Too short to plan with, somebody said.</summary>
    public bool Crumb { get; set; }

    public bool IsDemo { get; set; }

    public DateTimeOffset LoggedAt { get; set; }

    /// <summary>When it was taken off the list; its ledger says so too.</summary>
    public DateTimeOffset? RemovedAt { get; set; }

    public PictureRow? Picture { get; set; }

    public ICollection<EntryRow> Entries { get; } = new List<EntryRow>();

    internal LabelRatio? Ratio => LabelMass is { } mass && LabelLength is { } length ? new LabelRatio(mass, LabelMassUnit, length, LabelLengthUnit, RatioFrom) : null;

    /// <summary>Everything it says but what it weighs.</summary>
    internal LeftoverDetails ToDetails() => new(Name, Ratio)
    {
        Code = Code,
        Class = WeightClass,
        Fibre = FibreBlend.TryParse(Fibre, out var fibre, out _) ? fibre : FibreBlend.Unknown,
        Superwash = Superwash,
        Make = Make,
        Colour = YarnColour.TryParse(Colour, out var colour, out _) ? colour : null,
        Care = Care is not null && Knitting.Yarns.Care.TryParse(Care, out var care, out _) ? care : null,
        Lot = Lot,
        Bag = Bag,
        KeptIn = KeptIn,
        KeptBackFor = KeptBackFor,
        NotForHats = NotForHats,
        Crumb = Crumb,
        Note = Note,
    };

    /// <summary>Takes everything but the code, which is given out.</summary>
    internal void Take(LeftoverDetails details)
    {
        Name = details.Name.Trim();
        Colour = details.Colour?.Hex;
        Fibre = details.Fibre.ToString();
        WeightClass = details.Class;
        (LabelMass, LabelMassUnit) = (details.Ratio?.Mass, details.Ratio?.MassUnit ?? MassUnit.Grams);
        (LabelLength, LabelLengthUnit) = (details.Ratio?.Length, details.Ratio?.LengthUnit ?? LengthUnit.Metres);
        RatioFrom = details.Ratio?.Source ?? RatioSource.Printed;
        Superwash = details.Superwash;
        Make = details.Make;
        Care = details.Care?.ToString();
        Lot = Words(details.Lot);
        Bag = Words(details.Bag);
        KeptIn = Words(details.KeptIn);
        KeptBackFor = Words(details.KeptBackFor);
        Note = Words(details.Note);
        NotForHats = details.NotForHats;
        Crumb = details.Crumb;
    }

    private static string? Words(string? text) => string.IsNullOrEmpty(text) ? null : text;
}
