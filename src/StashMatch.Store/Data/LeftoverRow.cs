using StashMatch.Knitting.Yarns;

namespace StashMatch.Store.Data;

/// <summary>A logged leftover. What it weighs stands in its weighings.</summary>
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

    public string? KeptBackFor { get; set; }

    public bool NotForHats { get; set; }

    public bool IsDemo { get; set; }

    public DateTimeOffset LoggedAt { get; set; }

    public DateTimeOffset? KnittedUpAt { get; set; }

    public DateTimeOffset? RemovedAt { get; set; }

    public ICollection<WeighingRow> Weighings { get; } = new List<WeighingRow>();
}

/// <summary>One reading of the scale; appended, never changed.</summary>
public sealed class WeighingRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public Guid LeftoverId { get; set; }

    public long GrossMilligrams { get; set; }

    public long TareMilligrams { get; set; }

    public long StepMilligrams { get; set; }

    public DateTimeOffset At { get; set; }
}

/// <summary>A hat somebody described, kept as the description's JSON.</summary>
public sealed class HatRow : IOwned
{
    public Guid Id { get; set; }

    public Guid OwnerId { get; set; }

    public required string PublicId { get; set; }

    public required string Name { get; set; }

    public required string Description { get; set; }

    public DateTimeOffset SavedAt { get; set; }
}

/// <summary>A request already carried out: the same key carries it out once.</summary>
public sealed class DoneOnceRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public required string Key { get; set; }

    public required string Result { get; set; }

    public DateTimeOffset At { get; set; }
}

/// <summary>Something that happened once for an owner, such as loading the demo.</summary>
public sealed class MarkRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public required string Name { get; set; }
}

/// <summary>What a weighed swatch or finished hat said of this knitter.</summary>
public sealed class CalibrationRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    /// <summary>Where it comes from, in the knitter's words.</summary>
    public required string From { get; set; }

    public double Factor { get; set; }

    public double MeasureSpread { get; set; }

    public bool SwitchedOff { get; set; }

    public DateTimeOffset At { get; set; }
}
