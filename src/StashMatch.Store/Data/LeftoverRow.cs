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
}
