using System.Text.Json;

namespace StashMatch.Store;

/// <summary>What an edit changed, as its ledger line keeps it.</summary>
internal static class EditedFields
{
    /// <summary>The fields whose text differs, as JSON; null where none does.</summary>
    public static string? Write(LeftoverDetails before, LeftoverDetails after)
    {
        var (was, now) = (LeftoverFields.Say(before), LeftoverFields.Say(after));
        var changes = LeftoverFields.Columns
            .Select(c => new FieldChange(c, LeftoverFields.Text(was, c), LeftoverFields.Text(now, c)))
            .Where(c => c.Before != c.After).ToList();
        return changes.Count == 0 ? null : JsonSerializer.Serialize(changes, JsonSerializerOptions.Web);
    }

    public static IReadOnlyList<FieldChange> Read(string? json) =>
        json is null ? [] : JsonSerializer.Deserialize<List<FieldChange>>(json, JsonSerializerOptions.Web) ?? [];

    /// <summary>The details as they were before an edit, in its fields alone; as they are where the old values cannot be read.</summary>
    public static LeftoverDetails Undo(LeftoverDetails now, string? json)
    {
        var before = Read(json).ToDictionary(c => c.Field, c => c.Before, StringComparer.Ordinal);
        var said = LeftoverFields.Say(now);
        var asBefore = LeftoverFields.OfColumns(c => before.TryGetValue(c, out var text) ? text : LeftoverFields.Columns.Contains(c, StringComparer.Ordinal) ? LeftoverFields.Text(said, c) : null);
        return LeftoverFields.Read(new Reading(asBefore, new FieldErrors())) ?? now;
    }
}
