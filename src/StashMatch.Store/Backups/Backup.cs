namespace StashMatch.Store;

/// <summary>Why a backup was made; its file's name begins with it.</summary>
public enum BackupKind
{
    /// <summary>Somebody asked for it.</summary>
    Asked,

    /// <summary>Made by itself once a day.</summary>
    Daily,

    /// <summary>Made before the file was brought up to date.</summary>
    BeforeUpdate,

    /// <summary>Made before another backup was put in the file's place.</summary>
    BeforeRestore,
}

/// <summary>A backup in the backups folder.</summary>
/// <param name="Name">Its file's name.</param>
/// <param name="Kind">Why it was made.</param>
/// <param name="At">When.</param>
/// <param name="Bytes">How large it is.</param>
public sealed record Backup(string Name, BackupKind Kind, DateTimeOffset At, long Bytes);
