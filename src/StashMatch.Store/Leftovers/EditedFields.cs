using System.Text.Json;

namespace StashMatch.Store;

/// <summary>What an edit changed, as its ledger line keeps it.</summary>
internal static class EditedFields
{
    /// <summary>The fields whose text differs, as JSON; null where none does.</summary>
    public static string? Write(LeftoverDetails before, LeftoverDetails after)
    {
        var changes = LeftoverText.Fields
            .Select(f => new FieldChange(f, LeftoverText.Of(before, f), LeftoverText.Of(after, f)))
            .Where(c => c.Before != c.After).ToList();
        return changes.Count == 0 ? null : JsonSerializer.Serialize(changes, JsonSerializerOptions.Web);
    }

    public static IReadOnlyList<FieldChange> Read(string? json) =>
        json is null ? [] : JsonSerializer.Deserialize<List<FieldChange>>(json, JsonSerializerOptions.Web) ?? [];

    /// <summary>The details as they were before an edit, in its fields alone; as they are where the old values cannot be read.</summary>
    public static LeftoverDetails Undo(LeftoverDetails now, string? json)
    {
        var before = Read(json).ToDictionary(c => c.Field, c => c.Before, StringComparer.Ordinal);
        var errors = new FieldErrors();
        return LeftoverText.Read(f => before.TryGetValue(f, out var text) ? text : LeftoverText.Of(now, f), errors)
            ?? now;
    }
}
