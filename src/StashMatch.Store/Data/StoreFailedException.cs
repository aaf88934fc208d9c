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
public sealed class StoreFailedException(StoreFailure why, Exception cause) : IOException($"It is not saved: {Words(why)}", cause)
{
    /// <summary>Why.</summary>
    public StoreFailure Why { get; } = why;

    /// <summary>Why, and what to do, in plain words, for whatever was not done.</summary>
    public string Reason => Words(Why);

    private static string Words(StoreFailure why) => why switch
    {
        StoreFailure.DiskFull => "the disk is full. Make room and try again; reading still works.",
        StoreFailure.ReadOnly => "the disk or the database file may only be read. Reading still works.",
        StoreFailure.InputOutput => "the disk reports an error. Make a backup elsewhere and look after the disk.",
        StoreFailure.Busy => "the database file was in use for too long. Try again.",
        StoreFailure.Damaged => "the database file is damaged. Put a backup in its place.",
        _ => "the database did not take it.",
    };
}
