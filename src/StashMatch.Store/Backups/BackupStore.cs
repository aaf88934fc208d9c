using System.Collections.Concurrent;
using System.Globalization;
using Microsoft.Data.Sqlite;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Makes, lists and removes backups of the database file, and puts one in its place.</summary>
public sealed class BackupStore(StorePlace place, Restore restore, TimeProvider clock) : IDisposable
{
    private const string Stamp = "yyyyMMdd-HHmmss-fff";
    private readonly SemaphoreSlim _one = new(1, 1);
    private readonly ConcurrentDictionary<string, bool> _stuck = new(StringComparer.Ordinal);

    private static readonly Dictionary<BackupKind, string> Words = new()
    {
        [BackupKind.Asked] = "asked-",
        [BackupKind.Daily] = "daily-",
        [BackupKind.BeforeUpdate] = "before-update-",
        [BackupKind.BeforeRestore] = "before-restore-",
    };

    /// <summary>Makes a backup now; it is whole and on the disk when this returns.</summary>
    /// <exception cref="StoreFailedException">It could not be made, and no half of one is there.</exception>
    public Task<Backup> BackUpAsync(CancellationToken cancel = default) => BackUpAsync(BackupKind.Asked, cancel);

    /// <summary>Backups that could not be deleted when they should have been, and are still there.</summary>
    public IReadOnlyList<string> CannotBeDeleted => [.. List().Select(b => b.Name).Where(_stuck.ContainsKey)];

    /// <summary>The folder they are in.</summary>
    public string Folder => place.Backups;

    /// <summary>Makes today's backup unless there is one, and lets go of those too old to keep. One that cannot be deleted is skipped.</summary>
    /// <returns>Today's backup where one was made; null where there is one already.</returns>
    public async Task<Backup?> DailyAsync(CancellationToken cancel = default)
    {
        var today = clock.GetUtcNow().UtcDateTime.Date;
        var made = List().Any(b => b.Kind == BackupKind.Daily && b.At.UtcDateTime.Date == today) ? null : await BackUpAsync(BackupKind.Daily, cancel);
        foreach (var old in BackupAge.Expired(List()))
        {
            Remove(old.Name);
        }

        return made;
    }

    /// <summary>The backups there are, the latest first.</summary>
    public IReadOnlyList<Backup> List() => !Directory.Exists(place.Backups) ? [] :
        [.. Directory.EnumerateFiles(place.Backups, "*.db").Select(Read).OfType<Backup>().OrderByDescending(b => b.At).ThenBy(b => b.Name, StringComparer.Ordinal)];

    /// <summary>Removes a backup; false where there is none, or it cannot be deleted (then it is in <see cref="CannotBeDeleted"/>).</summary>
    public bool Remove(string name)
    {
        if (List().FirstOrDefault(b => b.Name == name) is not { } backup)
        {
            return false;
        }

        try
        {
            File.Delete(Path.Combine(place.Backups, backup.Name));
            _stuck.TryRemove(name, out _);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _stuck[name] = true;
            return false;
        }
    }

    /// <summary>Puts a backup in the file's place, for everybody at once. The file as it was becomes a backup of its own.</summary>
    /// <exception cref="RestoreRefusedException">There is no such backup, it is damaged or newer than this program, or somebody else has the file open. The file is as it was.</exception>
    /// <exception cref="StoreFailedException">The disk did not take it. The file is as it was.</exception>
    public async Task RestoreAsync(string name, CancellationToken cancel = default)
    {
        var backup = List().FirstOrDefault(b => b.Name == name) ?? throw new RestoreRefusedException("There is no backup of that name.");
        await OneAtATimeAsync(
            async () =>
            {
                await restore.PutInPlaceAsync(Path.Combine(place.Backups, backup.Name), NewFile(BackupKind.BeforeRestore, clock.GetUtcNow()), cancel);
                return true;
            },
            cancel);
    }

    /// <inheritdoc cref="Restore.ChangeWholeAsync"/>
    internal Task ChangeWholeAsync(Func<StashContext, Task> change, CancellationToken cancel) => OneAtATimeAsync(
        async () =>
        {
            await restore.ChangeWholeAsync(change, cancel);
            return true;
        },
        cancel);

    /// <inheritdoc/>
    public void Dispose() => _one.Dispose();

    internal Task<Backup> BackUpAsync(BackupKind kind, CancellationToken cancel) => OneAtATimeAsync(
        async () =>
        {
            var at = clock.GetUtcNow();
            var file = NewFile(kind, at);
            await StoreFile.CopyAsync(place.File, file, cancel);
            return new Backup(Path.GetFileName(file), kind, at, new FileInfo(file).Length);
        },
        cancel);

    // Two at the same moment would want one name.
    private async Task<T> OneAtATimeAsync<T>(Func<Task<T>> act, CancellationToken cancel)
    {
        await _one.WaitAsync(cancel);
        try
        {
            Directory.CreateDirectory(place.Backups);
            return await act();
        }
        catch (SqliteException e)
        {
            throw new StoreFailedException(ShortWrite.Why(e), e);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException and not StoreFailedException)
        {
            throw new StoreFailedException(ShortWrite.Why(e), e);
        }
        finally
        {
            _one.Release();
        }
    }

    private string NewFile(BackupKind kind, DateTimeOffset at)
    {
        string File() => Path.Combine(place.Backups, $"{Words[kind]}{at.UtcDateTime.ToString(Stamp, CultureInfo.InvariantCulture)}.db");
        while (System.IO.File.Exists(File()))
        {
            at = at.AddMilliseconds(1);
        }

        return File();
    }

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
