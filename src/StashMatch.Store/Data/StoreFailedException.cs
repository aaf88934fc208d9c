namespace StashMatch.Store.Data;

/// <summary>Why a save failed.</summary>
public enum StoreFailure
{
    /// <summary>The disk is full.</summary>
    DiskFull,

    /// <summary>The disk or the file may only be read.</summary>
    ReadOnly,

    /// <summary>The disk reports an error.</summary>
    InputOutput,

    /// <summary>Somebody else held the file for too long.</summary>
    Busy,

    /// <summary>The file is damaged.</summary>
    Damaged,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>A save that was not made, and why, in plain words. Nothing of it stands in the file.</summary>
public sealed class StoreFailedException(StoreFailure why, Exception cause) : IOException($"Not saved: {Words(why)}", cause)
{
    /// <summary>Why.</summary>
    public StoreFailure Why { get; } = why;

    /// <summary>Why, and what to do, in plain words, for whatever was not done.</summary>
    public string Reason => Words(Why);

    private static string Words(StoreFailure why) => why switch
    {
        StoreFailure.DiskFull => "the disk is full. Make room and try again.",
        StoreFailure.ReadOnly => "the disk or the database file is read-only. You can still read everything.",
        StoreFailure.InputOutput => "the disk reports an error. Make a backup on another disk.",
        StoreFailure.Busy => "another program was using the database file. Try again.",
        StoreFailure.Damaged => "the database file is damaged. Restore a backup.",
        _ => "the database could not be written.",
    };
}
