namespace StashMatch.Store.Data;

/// <summary>Something that happened once for an owner, such as loading the demo.</summary>
public sealed class MarkRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public required string Name { get; set; }
}
