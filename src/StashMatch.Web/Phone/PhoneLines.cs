namespace StashMatch.Web.Phone;

/// <summary>What paired phones have open just now, so that it can be cut when one is revoked.</summary>
public sealed class PhoneLines
{
    private readonly Lock _lock = new();
    private readonly List<(Guid Phone, Action Cut)> _lines = [];

    /// <summary>Holds a line of a phone; dispose it when the line is done.</summary>
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

    /// <summary>Cuts every line of a phone.</summary>
    public void Cut(Guid id)
    {
        List<Action> cuts;
        lock (_lock)
        {
            cuts = [.. _lines.Where(l => l.Phone == id).Select(l => l.Cut)];
        }

        cuts.ForEach(c => c());
    }

    private sealed class Line(Action done) : IDisposable
    {
        public void Dispose() => done();
    }
}
