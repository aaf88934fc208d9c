namespace StashMatch.Store.Data;

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
