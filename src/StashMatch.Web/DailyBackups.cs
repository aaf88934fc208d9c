using StashMatch.Store;

namespace StashMatch.Web;

/// <summary>Looks every hour whether today has its backup, and makes it.</summary>
internal sealed partial class DailyBackups(BackupStore backups, TimeProvider clock, ILogger<DailyBackups> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var hourly = new PeriodicTimer(TimeSpan.FromHours(1), clock);
        do
        {
            try
            {
                await backups.DailyAsync(stoppingToken);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                NotMade(e.Message);
            }
        }
        while (await hourly.WaitForNextTickAsync(stoppingToken));
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Today's backup could not be made. {Reason}")]
    private partial void NotMade(string reason);
}
