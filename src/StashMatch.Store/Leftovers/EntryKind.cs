namespace StashMatch.Store;

/// <summary>What a line of a leftover's ledger says. The numbers stand in the file: add, never renumber.</summary>
public enum EntryKind
{
    /// <summary>It was put on the scale.</summary>
    Weighed = 0,

    /// <summary>Some of it was knitted.</summary>
    Used = 1,

    /// <summary>Nothing is left of it.</summary>
    KnittedUp = 2,

    /// <summary>It was taken off the list.</summary>
    Removed = 3,

    /// <summary>Something else about it was changed.</summary>
    Edited = 4,

    /// <summary>An earlier line was undone.</summary>
    Undone = 5,
}
