namespace StashMatch.Store.Data;

/// <summary>Where the embedded database lives.</summary>
/// <param name="Folder">An absolute folder of ours.</param>
public sealed record StorePlace(string Folder)
{
    /// <summary>The database file.</summary>
    public string File => Path.Combine(Folder, "stashmatch.db");

    /// <summary>Where its backups are.</summary>
    public string Backups => Path.Combine(Folder, "backups");

    /// <summary>Whether the disk could not be written at start, so that the file is only read.</summary>
    public bool ReadingOnly { get; internal set; }
}
