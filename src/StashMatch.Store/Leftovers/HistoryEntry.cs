using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>One line of a leftover's history, oldest first.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="At">When.</param>
/// <param name="Left">What was left after it, grams of yarn alone.</param>
public sealed record HistoryEntry(EntryKind Kind, DateTimeOffset At, Grams Left)
{
    /// <summary>The reading, where it was weighed.</summary>
    public Weighing? Weighing { get; init; }

    /// <summary>What was knitted from it, where it was used.</summary>
    public Grams? Used { get; init; }

    /// <summary>What it was used for.</summary>
    public string? For { get; init; }

    /// <summary>What an edit changed.</summary>
    public IReadOnlyList<FieldChange> Changes { get; init; } = [];

    /// <summary>Whether a later line undid this one.</summary>
    public bool IsUndone { get; init; }

    /// <summary>The kind of line this one undid.</summary>
    public EntryKind? Undid { get; init; }
}
