using System.Globalization;
using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Makes, lists and restores backups of the database file.</summary>
public sealed class BackupStore(IDbContextFactory<StashContext> contexts, StorePlace place, TimeProvider clock)
{
    private const string Stamp = "yyyyMMdd-HHmmss-fff";

    private static readonly Dictionary<BackupKind, string> Words = new()
    {
        [BackupKind.Asked] = "asked-",
        [BackupKind.Daily] = "daily-",
        [BackupKind.BeforeUpdate] = "before-update-",
        [BackupKind.BeforeRestore] = "before-restore-",
    };

    private string Folder => Path.Combine(place.Folder, "backups");

    /// <summary>Makes a backup now.</summary>
    public async Task<Backup> BackUpAsync(BackupKind kind = BackupKind.Asked, CancellationToken cancel = default)
    {
        Directory.CreateDirectory(Folder);
        var at = clock.GetUtcNow();
        var file = Path.Combine(Folder, $"{Words[kind]}{at.UtcDateTime.ToString(Stamp, CultureInfo.InvariantCulture)}.db");
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await context.Database.ExecuteSqlAsync($"VACUUM INTO {file}", cancel);
        return new Backup(Path.GetFileName(file), kind, at, new FileInfo(file).Length);
    }

    /// <summary>The backups there are, the latest first.</summary>
    public IReadOnlyList<Backup> List() => !Directory.Exists(Folder) ? [] :
        [.. Directory.EnumerateFiles(Folder, "*.db").Select(Read).OfType<Backup>().OrderByDescending(b => b.At).ThenBy(b => b.Name, StringComparer.Ordinal)];

    private static Backup? Read(string file)
    {
        var name = Path.GetFileNameWithoutExtension(file);
        foreach (var (kind, word) in Words)
        {
            if (name.StartsWith(word, StringComparison.Ordinal)
                && DateTimeOffset.TryParseExact(name[word.Length..], Stamp, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at))
            {
                return new Backup(Path.GetFileName(file), kind, at, new FileInfo(file).Length);
            }
        }

        return null;
    }
}
