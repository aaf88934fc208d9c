using CsCheck;
using Xunit;

namespace StashMatch.Store.Tests.Backups;

public sealed class BackupAgeTests
{
    private static readonly DateTimeOffset Today = new(2026, 11, 25, 20, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Of_two_years_of_daily_backups_seven_days_four_weeks_and_twelve_months_are_kept()
    {
        var all = Enumerable.Range(0, 730).Select(d => Daily(Today.AddDays(-d))).ToList();
        var kept = all.Except(BackupAge.Expired(all)).Select(b => b.At.ToString("yyyy-MM-dd")).ToList();
        Assert.Equal(
            [
                "2026-11-25", "2026-11-24", "2026-11-23", "2026-11-22", "2026-11-21", "2026-11-20", "2026-11-19",
                "2026-11-15", "2026-11-08",
                "2026-10-31", "2026-09-30", "2026-08-31", "2026-07-31", "2026-06-30", "2026-05-31", "2026-04-30", "2026-03-31", "2026-02-28", "2026-01-31", "2025-12-31",
            ],
            kept);
    }

    [Fact]
    public void What_somebody_asked_for_is_always_kept_and_of_ours_before_a_change_the_latest_twelve()
    {
        var all = Enumerable.Range(0, 40).SelectMany(d => new[] { BackupKind.Asked, BackupKind.BeforeUpdate, BackupKind.BeforeRestore }
            .Select(k => new Backup($"{k}-{d}", k, Today.AddDays(-d), 1))).ToList();
        var kept = all.Except(BackupAge.Expired(all)).ToList();
        Assert.Equal((40, 12, 12), (kept.Count(b => b.Kind == BackupKind.Asked), kept.Count(b => b.Kind == BackupKind.BeforeUpdate), kept.Count(b => b.Kind == BackupKind.BeforeRestore)));
        Assert.Equal(Today, kept.Where(b => b.Kind == BackupKind.BeforeRestore).Max(b => b.At));
    }

    [Fact]
    public void Letting_go_day_by_day_never_loses_the_newest_and_never_grows_past_what_is_kept() =>
        Gen.Int[0, 3].Array[120].Sample(
            gaps =>
            {
                var (kept, at) = (new List<Backup>(), Today);
                foreach (var gap in gaps)
                {
                    at = at.AddDays(gap).AddHours(1);
                    kept.Add(Daily(at));
                    var expired = BackupAge.Expired(kept);
                    kept.RemoveAll(expired.Contains);
                    Assert.Equal(at, kept[^1].At);
                    Assert.InRange(kept.Count, 1, 7 + 4 + 12);
                }
            },
            iter: 50);

    private static Backup Daily(DateTimeOffset at) => new($"daily-{at:yyyyMMddHHmmss}", BackupKind.Daily, at, 1);
}
