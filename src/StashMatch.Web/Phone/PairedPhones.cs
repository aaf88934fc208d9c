using System.Text.Json;
using StashMatch.Store.Data;

namespace StashMatch.Web.Phone;

/// <summary>The browsers let in, in a file of their own beside the keys: restoring an old backup cannot bring a revoked phone back.</summary>
public sealed class PairedPhones(StorePlace place, TimeProvider clock)
{
    /// <summary>The longest name.</summary>
    public const int MostName = 40;

    private const int MostPhones = 50;

    private readonly Lock _lock = new();
    private readonly List<(Guid Phone, Action Cut)> _lines = [];
    private List<PairedPhone>? _phones;

    private string File => Path.Combine(place.Folder, "keys", "phones.json");

    /// <summary>All of them, newest first.</summary>
    public IReadOnlyList<PairedPhone> List()
    {
        lock (_lock)
        {
            return [.. Phones.OrderByDescending(p => p.PairedAt)];
        }
    }

    public bool IsPaired(Guid id)
    {
        lock (_lock)
        {
            return Phones.Exists(p => p.Id == id);
        }
    }

    /// <summary>Lets a browser in; past fifty, the oldest is let go.</summary>
    public PairedPhone Pair(string? name)
    {
        var called = (name ?? "").Trim();
        var phone = new PairedPhone(Guid.NewGuid(), called.Length == 0 ? "a phone" : called[..Math.Min(MostName, called.Length)], clock.GetUtcNow());
        lock (_lock)
        {
            Write([.. Phones.TakeLast(MostPhones - 1), phone]);
        }

        return phone;
    }

    /// <summary>Lets one in no more, and cuts what it has open; false where there is none.</summary>
    public bool Revoke(Guid id)
    {
        lock (_lock)
        {
            if (!Phones.Exists(p => p.Id == id))
            {
                return false;
            }

            Write([.. Phones.Where(p => p.Id != id)]);
        }

        Cut(id);
        return true;
    }

    /// <summary>Lets none in any more.</summary>
    public void RevokeAll()
    {
        foreach (var phone in List())
        {
            Revoke(phone.Id);
        }
    }

    /// <summary>Holds a line of a phone, to be cut when it is revoked; dispose it when the line is done.</summary>
    public IDisposable Hold(Guid id, Action cut)
    {
        var line = (id, cut);
        lock (_lock)
        {
            _lines.Add(line);
        }

        return new Line(() =>
        {
            lock (_lock)
            {
                _lines.Remove(line);
            }
        });
    }

    private void Cut(Guid id)
    {
        List<Action> cuts;
        lock (_lock)
        {
            cuts = [.. _lines.Where(l => l.Phone == id).Select(l => l.Cut)];
        }

        cuts.ForEach(c => c());
    }

    private List<PairedPhone> Phones => _phones ??= Read();

    // A file that cannot be read lets nobody in.
    private List<PairedPhone> Read()
    {
        try
        {
            return System.IO.File.Exists(File) ? JsonSerializer.Deserialize<List<PairedPhone>>(System.IO.File.ReadAllText(File)) ?? [] : [];
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private void Write(List<PairedPhone> phones)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(File)!);
        var next = File + ".next";
        System.IO.File.WriteAllText(next, JsonSerializer.Serialize(phones));
        System.IO.File.Move(next, File, overwrite: true);
        _phones = phones;
    }

    private sealed class Line(Action done) : IDisposable
    {
        public void Dispose() => done();
    }
}
