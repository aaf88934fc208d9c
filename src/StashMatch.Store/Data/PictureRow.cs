namespace StashMatch.Store.Data;

/// <summary>A small picture of a leftover, apart from its row so that a list never reads it.</summary>
public sealed class PictureRow : IOwned
{
    public Guid LeftoverId { get; set; }

    public Guid OwnerId { get; set; }

    /// <summary>A PNG we wrote ourselves; never decoded here.</summary>
    public required byte[] Png { get; set; }
}
