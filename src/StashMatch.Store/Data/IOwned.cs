namespace StashMatch.Store.Data;

/// <summary>A row that belongs to somebody.</summary>
public interface IOwned
{
    /// <summary>Its owner.</summary>
    Guid OwnerId { get; set; }
}
