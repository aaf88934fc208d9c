using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.Settings;

/// <summary>What the settings say.</summary>
public static class SettingsWords
{
    public const string Title = "Settings";
    public const string AtTheComputer = "Backups, phones and deleting are done at the computer itself.";

    // Units, scale and reserve.
    public const string UnitsHeading = "Units, scale and reserve";
    public const string FirstUnit = "first unit";
    public const string MetresFirst = "metres, then yards";
    public const string YardsFirst = "yards, then metres";
    public const string HabitsSaved = "Saved. Every page uses it from now on.";

    public static string Example(string hundredMetres) => $"So 100 metres reads {hundredMetres}.";

    // Backups.
    public const string BackupsHeading = "Backups";
    public const string BackupsDaily = "StashMatch makes a backup every day.";
    public const string BackupsFolder = "They are in the backups folder beside the database. Copy one to another disk now and then.";
    public const string BackUpNow = "Back up now";
    public const string BackedUp = "A backup is made.";
    public const string NoBackup = "There is no backup yet.";
    public const string NewestFirst = "The newest first";
    public const string Made = "made";
    public const string Why = "why";
    public const string FileSize = "file size";
    public const string RestoreOne = "restore";
    public const string RestoreQuestion = "Restore this backup?";
    public const string RestoreMeans = "Everything becomes as it was then. What you weighed since is gone. We back up what is here first.";
    public const string Restore = "Restore";

    public static string OfBackup(string when) => $"the backup of {when}";

    public static string Restored(string when) => $"The backup of {when} is restored. What was here is now the newest backup.";

    public static string WhyMade(BackupKind kind) => kind switch
    {
        BackupKind.Asked => "you asked for it",
        BackupKind.Daily => "daily",
        BackupKind.BeforeUpdate => "before an update",
        _ => "before a restore",
    };

    // Everything out and in.
    public const string EverythingHeading = "Import and export";
    public const string ExportEverything = "Export everything";
    public const string ExportMeans = "(one file that keeps it all)";
    public const string ExportLeftovers = "Export the leftovers as a table";
    public const string ImportEverything = "Import everything (only while StashMatch is empty)";
    public const string NothingImported = "Nothing was imported.";
    public const string Imported = "Everything in the file is here now.";
    public const string EmptyFile = "The file is empty, or over 64 MB.";
    public const string FileLost = "The file did not arrive. Try again.";

    // Deleting everything.
    public const string DeleteEverything = "Delete everything";
    public const string DeletePhrase = "delete everything";
    public const string DeleteMeans = "This deletes your leftovers, plans, hats, swatches, settings and phones. Only a backup brings them back.";
    public const string TypePhrase = "To go on, type";
    public const string BackupsToo = "Delete the backups too";
    public const string PhraseMissing = "Nothing is deleted. First type “delete everything”.";

    /// <param name="backupsToo">Whether the backups were to go too.</param>
    /// <param name="stayed">How many of them could not be deleted.</param>
    public static string Deleted(bool backupsToo, int stayed) =>
        !backupsToo ? "Everything is deleted. The backups are still there."
        : stayed == 0 ? "Everything is deleted, the backups too."
        : $"Everything is deleted, but {Terms.Counted(stayed, "backup")} could not be.";

    public static string NothingDeleted(string reason) => $"Nothing is deleted: {reason}";

    /// <summary>Old backups that are in nobody's way but cannot be deleted.</summary>
    public static string Stuck(IReadOnlyCollection<string> names, string folder)
    {
        ArgumentNullException.ThrowIfNull(names);
        var some = string.Join(", ", names.Take(5)) + (names.Count > 5 ? " …" : "");
        return $"{Terms.Counted(names.Count, "old backup")} could not be deleted: {some}. Delete {(names.Count == 1 ? "it" : "them")} yourself in {folder}.";
    }

    // Phones.
    public const string PhoneHeading = "A phone beside the scale";
    public const string PhoneOff = "No phone can reach StashMatch yet. To let yours in, start it with";
    public const string PhoneOpen = "On the phone, open";
    public const string PhoneOr = "or";
    public const string PhonePlain = "What is sent is not encrypted: use it only on your own network.";
    public const string ShowCode = "Show a code";
    public const string TypeCode = "On the phone, type";
    public const string NoPhone = "No phone is paired.";
    public const string RemovePhone = "Remove this phone";

    public static string ThisComputer(int port) => $"this computer’s address, port {port}";

    public static string CodeGood(double minutes) => $"within {minutes:0} minutes. It works once.";

    public static string Paired(string name, string day) => $"{name}, paired {day}";

    public static string PhoneRemoved(string name) => $"{name} is removed.";
}
