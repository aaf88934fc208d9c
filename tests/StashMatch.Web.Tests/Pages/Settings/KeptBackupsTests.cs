using System.Net;
using StashMatch.Store.Tests;
using Xunit;

namespace StashMatch.Web.Tests.Pages.Settings;

public sealed class KeptBackupsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_backup_that_cannot_be_deleted_does_not_stop_the_program_and_is_told_in_the_settings()
    {
        using var app = new HeldBackupApp();
        using var held = app.Hold();
        for (var look = 0; look < 400; look++)
        {
            using var response = await app.Client.GetAsync(new Uri("/settings", UriKind.Relative), Stop);
            Assert.Equal(HttpStatusCode.OK, response.StatusCode);
            var text = WebUtility.HtmlDecode(await response.Content.ReadAsStringAsync(Stop));
            if (text.Contains("1 old backup could not be deleted: daily-20240102-080000-000.db", StringComparison.Ordinal))
            {
                return;
            }

            await Task.Delay(25, Stop);
        }

        Assert.Fail("The settings do not tell of it.");
    }

    // Twenty days of old backups, so that some are too old to keep; one of them nobody may delete.
    private sealed class HeldBackupApp : HomeApp
    {
        public Undeletable Hold()
        {
            var folder = Directory.CreateDirectory(Path.Combine(Folder, "backups")).FullName;
            for (var day = 1; day <= 20; day++)
            {
                File.WriteAllText(Path.Combine(folder, $"daily-202401{day:00}-080000-000.db"), "");
            }

            return new Undeletable(Path.Combine(folder, "daily-20240102-080000-000.db"));
        }
    }
}
