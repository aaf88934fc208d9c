namespace StashMatch.Store.Data;

/// <summary>A designer's kit, kept as the description's JSON.</summary>
public sealed class KitRow : IOwned
{
    public Guid Id { get; set; }

    public Guid OwnerId { get; set; }

    public required string PublicId { get; set; }

    public required string Name { get; set; }

    public required string Description { get; set; }

    public DateTimeOffset SavedAt { get; set; }
}
