using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover's ledger, folded: what is left, and how it came to be so. Lines that were undone do not count.</summary>
internal sealed class Ledger
{
    private readonly IReadOnlyList<EntryRow> _lines;
    private readonly HashSet<long> _undone = [];

    /// <summary>Lines of one leftover, oldest first; the first is a weighing.</summary>
    public Ledger(IReadOnlyList<EntryRow> lines)
    {
        _lines = lines;
        _undone.UnionWith(lines.Where(l => l.Undoes is not null).Select(l => l.Undoes!.Value));
        Last = lines[0];
        foreach (var line in lines.Where(Counts))
        {
            Take(line);
        }
    }

    /// <summary>The weighing that counts.</summary>
    public EntryRow Last { get; private set; }

    /// <summary>How many weighings count, 1 or more.</summary>
    public int Weighings { get; private set; }

    /// <summary>What is left, yarn alone.</summary>
    public Grams Left { get; private set; }

    /// <summary>What is left as a reading of the scale: the last one less what was used since; the last one itself where nothing is left.</summary>
    public Weighing Reading
    {
        get
        {
            var last = Last.ToWeighing();
            return Left > default(Grams) ? new Weighing(last.Tare + Left, last.Tare, last.ScaleStep) : last;
        }
    }

    /// <summary>The line an undo would undo: the last that counts, but never the first weighing. Null where there is none.</summary>
    public EntryRow? LastStep => _lines.Skip(1).LastOrDefault(Counts);

    /// <summary>Every line with what was left after it, as it was seen then.</summary>
    public IReadOnlyList<HistoryEntry> History()
    {
        var byId = _lines.ToDictionary(l => l.Id);
        return [.. _lines.Select((line, i) => new HistoryEntry(line.Kind, line.At, new Ledger([.. _lines.Take(i + 1)]).Left)
        {
            Weighing = line.Kind == EntryKind.Weighed ? line.ToWeighing() : null,
            Used = line.Kind == EntryKind.Used ? Grams.FromMilligrams(line.UsedMilligrams) : null,
            For = line.For,
            Changes = EditedFields.Read(line.Changes),
            IsUndone = _undone.Contains(line.Id),
            Undid = line.Undoes is { } id && byId.TryGetValue(id, out var undid) ? undid.Kind : null,
        })];
    }

    private bool Counts(EntryRow line) => line.Kind != EntryKind.Undone && !_undone.Contains(line.Id);

    private void Take(EntryRow line)
    {
        switch (line.Kind)
        {
            case EntryKind.Weighed:
                (Last, Left) = (line, line.ToWeighing().Net);
                Weighings++;
                break;
            case EntryKind.Used:
                Left = Grams.FromMilligrams(Math.Max(0, Left.Milligrams - line.UsedMilligrams));
                break;
            case EntryKind.KnittedUp:
                Left = default;
                break;
        }
    }
}
