using Microsoft.Data.Sqlite;

namespace StashMatch.Store.Data;

/// <summary>What stands in the database file, found out without writing to it.</summary>
internal static class StoreFile
{
    private const int Damaged = 11;
    private const int NoDatabase = 26;

    /// <summary>Opens a file for writing, by itself and out of the pool.</summary>
    public static string Alone(string file) => new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadWrite, Pooling = false, DefaultTimeout = 10 }.ToString();

    /// <summary>Opens a file for reading only.</summary>
    public static string ToRead(string file) => new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString();

    /// <summary>Opens a file on a disk that cannot be written. Where no log lies beside it nobody changes it, and no files need to be made to read it.</summary>
    public static string Unchanging(string file) => new FileInfo(file + "-wal") is { Exists: true, Length: > 0 }
        ? ToRead(file)
        : new SqliteConnectionStringBuilder { DataSource = new Uri(file).AbsoluteUri + "?immutable=1", Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString();

    /// <summary>Looks a copy over before it takes the file's place: sound in itself, of this program, and no newer than it.</summary>
    /// <returns>Why it may not, in plain words; null where it may.</returns>
    public static async Task<string?> FaultAsync(string file, IReadOnlySet<string> known, CancellationToken cancel)
    {
        try
        {
            await using var connection = new SqliteConnection(ToRead(file));
            await connection.OpenAsync(cancel);
            var sound = await ColumnAsync(connection, "PRAGMA integrity_check", cancel);
            if (sound is not ["ok"] || (await ColumnAsync(connection, "SELECT \"table\" FROM pragma_foreign_key_check", cancel)).Count > 0)
            {
                return "it is damaged";
            }

            var applied = await AppliedAsync(file, cancel) ?? [];
            return applied.Count == 0 ? "it is empty"
                : applied.Any(a => !known.Contains(a)) ? "it was written by a newer version of this program"
                : null;
        }
        catch (Exception e) when (e is SqliteException or StoreRefusedException)
        {
            return "it is damaged or is no backup of this program";
        }
    }

    /// <summary>Runs one statement and returns its first value as text.</summary>
    public static async Task<string> RunAsync(SqliteConnection connection, string sql, CancellationToken cancel, params (string Name, object Value)[] with)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in with)
        {
            command.Parameters.AddWithValue(name, value);
        }

        return $"{await command.ExecuteScalarAsync(cancel)}";
    }

    /// <summary>Copies a database into a new file, whole or not at all, and on the disk when it returns.</summary>
    public static async Task CopyAsync(string from, string to, CancellationToken cancel)
    {
        var part = to + ".part";
        try
        {
            File.Delete(part);
            await using (var connection = new SqliteConnection(ToRead(from)))
            {
                await connection.OpenAsync(cancel);
                await RunAsync(connection, "VACUUM INTO $part", cancel, ("$part", part));
            }

            Flush(part);
            File.Move(part, to, overwrite: true);
        }
        catch
        {
            File.Delete(part);
            throw;
        }
    }

    /// <summary>Waits until a file's bytes are on the disk.</summary>
    public static void Flush(string file)
    {
        using var handle = File.OpenHandle(file, FileMode.Open, FileAccess.ReadWrite);
        RandomAccess.FlushToDisk(handle);
    }

    /// <summary>The migrations applied to a file; null where there is no file yet. On a disk that cannot be written it is opened as one nobody changes.</summary>
    /// <exception cref="StoreRefusedException">The file is damaged, or somebody else's.</exception>
    public static async Task<IReadOnlyList<string>?> AppliedAsync(string file, CancellationToken cancel, bool unchanging = false)
    {
        if (!File.Exists(file) || new FileInfo(file).Length == 0)
        {
            return null;
        }

        try
        {
            await using var connection = new SqliteConnection(unchanging ? Unchanging(file) : ToRead(file));
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
