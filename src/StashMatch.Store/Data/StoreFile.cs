using Microsoft.Data.Sqlite;

namespace StashMatch.Store.Data;

/// <summary>What stands in the database file, found out without writing to it.</summary>
internal static class StoreFile
{
    private const int Damaged = 11;
    private const int NoDatabase = 26;

    /// <summary>The migrations applied to a file; null where there is no file yet.</summary>
    /// <exception cref="StoreRefusedException">The file is damaged, or somebody else's.</exception>
    public static async Task<IReadOnlyList<string>?> AppliedAsync(string file, CancellationToken cancel)
    {
        if (!File.Exists(file) || new FileInfo(file).Length == 0)
        {
            return null;
        }

        var place = new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
        try
        {
            await using var connection = new SqliteConnection(place.ToString());
            await connection.OpenAsync(cancel);
            var tables = await ColumnAsync(connection, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'", cancel);
            var applied = tables.Contains("__EFMigrationsHistory", StringComparer.Ordinal)
                ? await ColumnAsync(connection, "SELECT MigrationId FROM __EFMigrationsHistory ORDER BY MigrationId", cancel)
                : [];
            return applied.Count > 0 || tables.TrueForAll(t => t.StartsWith("__EF", StringComparison.Ordinal))
                ? applied
                : throw new StoreRefusedException($"The file {file} holds another program's tables. It was left untouched; name another folder in Data:Folder.");
        }
        catch (SqliteException e) when (e.SqliteErrorCode is Damaged or NoDatabase)
        {
            throw new StoreRefusedException($"The file {file} is damaged or is no database. It was left untouched; put a backup in its place.", e);
        }
    }

    private static async Task<List<string>> ColumnAsync(SqliteConnection connection, string sql, CancellationToken cancel)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var column = new List<string>();
        while (await reader.ReadAsync(cancel))
        {
            column.Add(reader.GetString(0));
        }

        return column;
    }
}
