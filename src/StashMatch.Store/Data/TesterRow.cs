namespace StashMatch.Store.Data;

/// <summary>What a tester of a hat sent back, kept as the description's JSON.</summary>
public sealed class TesterRow : IOwned
{
    public Guid Id { get; set; }

    public Guid OwnerId { get; set; }

    public required string PublicId { get; set; }

    /// <summary>The hat's public id: a sample's or one's own.</summary>
    public required string HatId { get; set; }

    public required string Description { get; set; }

    public DateTimeOffset SavedAt { get; set; }
}
