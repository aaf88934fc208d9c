namespace StashMatch.Store.Data;

/// <summary>A request already carried out: the same key carries it out once.</summary>
public sealed class DoneOnceRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public required string Key { get; set; }

    public required string Result { get; set; }

    /// <summary>A mark of what was asked, so that the same key with something else is noticed; null where an older program noted none.</summary>
    public string? Asked { get; set; }

    public DateTimeOffset At { get; set; }
}
