namespace StashMatch.Store.Data;

/// <summary>A row two browsers may race for.</summary>
public interface IRaced
{
    /// <summary>Renewed at each save; a stale one loses.</summary>
    Guid Version { get; set; }
}
