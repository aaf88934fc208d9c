namespace StashMatch.Store.Data;

/// <summary>What a weighed swatch or finished hat said of this knitter.</summary>
public sealed class CalibrationRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    /// <summary>Where it comes from, in the knitter's words.</summary>
    public required string From { get; set; }

    /// <summary>The public id of the one hat it speaks of, where testers of it were weighed; null where it is the knitter's own.</summary>
    public string? HatId { get; set; }

    public double Factor { get; set; }

    public double MeasureSpread { get; set; }

    public bool SwitchedOff { get; set; }

    public DateTimeOffset At { get; set; }
}
