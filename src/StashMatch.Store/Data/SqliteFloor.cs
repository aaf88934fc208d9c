namespace StashMatch.Store.Data;

/// <summary>The oldest SQLite this program starts with: 3.51.3. In 3.7.0 to 3.51.2 resetting the write-ahead log can lose a save.</summary>
public static class SqliteFloor
{
    private static readonly Version Oldest = new(3, 51, 3);

    /// <summary>Refuses a version below the floor.</summary>
    /// <param name="version">As SQLite names itself, such as "3.53.3".</param>
    /// <exception cref="StoreRefusedException">The version is older, or is none.</exception>
    public static void Check(string? version)
    {
        if (!Version.TryParse(version, out var found) || found < Oldest)
        {
            throw new StoreRefusedException($"SQLite {version} can lose a save when two writers meet; {Oldest} or newer is needed.");
        }
    }
}
