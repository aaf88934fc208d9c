using System.Text.Json;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Reads ledgers back. Ids of their lines are given here, in order, so that a line can name one before it.</summary>
/// <param name="errors">Takes what is wrong.</param>
/// <param name="lastId">The last id that is taken.</param>
internal sealed class LedgerReader(FieldErrors errors, long lastId)
{
    private long _lastId = lastId;

    private const int MostLines = 10_000;

    /// <summary>Appends the lines to a leftover; false with a message where one cannot be read.</summary>
    public bool ReadInto(LeftoverRow leftover, IReadOnlyList<EntryJson?>? lines, string at)
    {
        var first = _lastId + 1;
        if (lines is not [{ Kind: EntryKind.Weighed }, ..] || lines.Count > MostLines)
        {
            errors.Add(at, $"must begin with a weighing and have at most {MostLines} lines");
            return false;
        }

        var undone = new HashSet<int>();
        for (var i = 0; i < lines.Count; i++)
        {
            var field = $"{at}[{i}]";
            if (lines[i] is not { Kind: { } kind, At: { } when } json || !Enum.IsDefined(kind))
            {
                errors.Add(field, "must have a kind and a time");
                return false;
            }

            var row = new EntryRow { Id = ++_lastId, LeftoverId = leftover.Id, Kind = kind, At = when, For = json.For, Undoes = kind == EntryKind.Undone ? first + json.Undoes : null };
            errors.CheckText($"{field}.for", json.For, 80);
            if (!(kind switch
            {
                EntryKind.Weighed => Weighed(row, json),
                EntryKind.Used => Used(row, json),
                EntryKind.Edited => Edited(row, json),
                EntryKind.Undone => json.Undoes is { } u and > 0 && u < i && lines[u]!.Kind != EntryKind.Undone && undone.Add(u),
                _ => true,
            }))
            {
                errors.Add(field, $"is no line that says {kind.ToString().ToLowerInvariant()}");
                return false;
            }

            leftover.Entries.Add(row);
        }

        leftover.RemovedAt = lines.Select((l, i) => (Line: l!, i)).LastOrDefault(l => l.Line.Kind == EntryKind.Removed && !undone.Contains(l.i)).Line?.At;
        return true;
    }

    private static bool Weighed(EntryRow row, EntryJson json)
    {
        if (json is not { Grams: >= 0.001m and <= Weighing.MostGrams, TareGrams: >= 0 and <= Weighing.MostGrams, ScaleStepGrams: >= 0.001m and <= 100 }
            || Grams.From(json.TareGrams.Value) >= Grams.From(json.Grams.Value))
        {
            return false;
        }

        (row.GrossMilligrams, row.TareMilligrams, row.StepMilligrams) =
            (Grams.From(json.Grams.Value).Milligrams, Grams.From(json.TareGrams.Value).Milligrams, Grams.From(json.ScaleStepGrams.Value).Milligrams);
        return true;
    }

    private static bool Used(EntryRow row, EntryJson json)
    {
        row.UsedMilligrams = json.Grams is >= 0.001m and <= Weighing.MostGrams ? Grams.From(json.Grams.Value).Milligrams : 0;
        return row.UsedMilligrams > 0;
    }

    // What an undo would put back must be readable, or it would fail one day.
    private static bool Edited(EntryRow row, EntryJson json)
    {
        if (json.Changes is not { Count: > 0 and <= 50 } changes
            || changes.Any(c => c?.Field is null || c.Before is null || c.After is null || !LeftoverFields.Columns.Contains(c.Field, StringComparer.Ordinal) || c.Before.Length > 1_000 || c.After.Length > 1_000)
            || changes.DistinctBy(c => c.Field, StringComparer.Ordinal).Count() != changes.Count)
        {
            return false;
        }

        row.Changes = JsonSerializer.Serialize(changes, JsonSerializerOptions.Web);
        return true;
    }
}
