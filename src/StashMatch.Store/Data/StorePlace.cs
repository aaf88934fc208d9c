namespace StashMatch.Store.Data;

/// <summary>Where the embedded database lives.</summary>
/// <param name="Folder">An absolute folder of ours.</param>
public sealed record StorePlace(string Folder)
{
    /// <summary>The database file.</summary>
    public string File => Path.Combine(Folder, "stashmatch.db");
}
