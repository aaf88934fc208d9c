using System.Globalization;

namespace StashMatch.Store;

/// <summary>Which backups are kept by age: of the daily ones the latest of each of 7 days, 4 weeks and 12 months; of those made by ourselves before a change the latest 12; what somebody asked for, always [ours].</summary>
public static class BackupAge
{
    private const int Days = 7;
    private const int Weeks = 4;
    private const int Months = 12;
    private const int BeforeChanges = 12;

    /// <summary>Those that are no longer kept. The newest of each kind always is.</summary>
    public static IReadOnlyList<Backup> Expired(IEnumerable<Backup> backups)
    {
        ArgumentNullException.ThrowIfNull(backups);
        var newest = backups.OrderByDescending(b => b.At).ThenBy(b => b.Name, StringComparer.Ordinal).ToList();
        var daily = newest.FindAll(b => b.Kind == BackupKind.Daily);
        var kept = Latest(daily, b => b.At.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Days)
            .Concat(Latest(daily, b => $"{ISOWeek.GetYear(b.At.UtcDateTime)}-{ISOWeek.GetWeekOfYear(b.At.UtcDateTime)}", Weeks))
            .Concat(Latest(daily, b => b.At.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture), Months))
            .Concat(newest.Where(b => b.Kind == BackupKind.BeforeUpdate).Take(BeforeChanges))
            .Concat(newest.Where(b => b.Kind == BackupKind.BeforeRestore).Take(BeforeChanges))
            .Concat(newest.Where(b => b.Kind == BackupKind.Asked))
            .ToHashSet();
        return newest.FindAll(b => !kept.Contains(b));
    }

    private static IEnumerable<Backup> Latest(List<Backup> newestFirst, Func<Backup, string> span, int spans) =>
        newestFirst.GroupBy(span, StringComparer.Ordinal).Take(spans).Select(g => g.First());
}
