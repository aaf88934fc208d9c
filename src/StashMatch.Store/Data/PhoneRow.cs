namespace StashMatch.Store.Data;

/// <summary>A browser on the home network that was let in by a one-time code.</summary>
public sealed class PhoneRow : IOwned
{
    public Guid Id { get; set; }

    public Guid OwnerId { get; set; }

    /// <summary>What the person calls it.</summary>
    public required string Name { get; set; }

    public DateTimeOffset PairedAt { get; set; }

    /// <summary>When it was shut out again; null while it may come in.</summary>
    public DateTimeOffset? RevokedAt { get; set; }
}
