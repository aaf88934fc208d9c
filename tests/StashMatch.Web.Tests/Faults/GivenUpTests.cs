using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Xunit;

namespace StashMatch.Web.Tests.Faults;

/// <summary>The real program, and people who go away before they have their answer.</summary>
public sealed class GivenUpTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("stashmatch-given-up-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task After_hundreds_of_requests_given_up_a_backup_is_restored_at_once_and_pages_come()
    {
        using var app = AppProcess.Start(_folder);
        Assert.True(await app.ReadyAsync(Stop));
        var moss = new { id = "moss", name = "Moss", grams = 20, label = new { grams = 100, metres = 400 } };
        using (await app.Client.PostAsJsonAsync(At("/api/v1/leftovers"), moss, Stop))
        {
        }

        using var made = await app.Client.PostAsync(At("/api/v1/backups"), null, Stop);
        var backup = (await made.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("name").GetString();
        foreach (var page in new[] { "/leftovers/tags", "/api/v1/leftovers" })
        {
            using var warm = await app.Client.GetAsync(At(page), Stop);
            await Parallel.ForAsync(0, 150, new ParallelOptions { MaxDegreeOfParallelism = 8, CancellationToken = Stop }, async (i, _) =>
            {
                // From before the first byte is sent to after the last has come.
                using var leaving = new CancellationTokenSource(TimeSpan.FromMicroseconds(150 * (i % 60)));
                try
                {
                    using var response = await app.Client.GetAsync(At(page), leaving.Token);
                }
                catch (OperationCanceledException)
                {
                    // Gone before the answer.
                }
            });
        }

        var watch = Stopwatch.StartNew();
        using var restored = await app.Client.PostAsync(At($"/api/v1/backups/{backup}/restore"), null, Stop);
        Assert.Equal(HttpStatusCode.NoContent, restored.StatusCode);
        Assert.InRange(watch.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(10));
        Assert.Contains("Moss", await app.Client.GetStringAsync(At("/leftovers/tags"), Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_port_somebody_has_is_one_sentence()
    {
        using var app = AppProcess.Start(_folder);
        Assert.True(await app.ReadyAsync(Stop));
        var other = Path.Combine(_folder, "other");
        string[] how = ["StashMatch.Web.dll", "--urls", $"{app.Client.BaseAddress}", "--Data:Folder", other, "--Data:Demo", "false"];
        using var second = Process.Start(new ProcessStartInfo("dotnet", how)
        {
            WorkingDirectory = AppContext.BaseDirectory,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var (said, logged) = (second.StandardError.ReadToEndAsync(Stop), second.StandardOutput.ReadToEndAsync(Stop));
        await second.WaitForExitAsync(Stop);
        Assert.Equal(1, second.ExitCode);
        var line = Assert.Single((await said).Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith($"Another program, perhaps StashMatch itself, already uses {app.Client.BaseAddress}", line, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", await logged, StringComparison.Ordinal);
        Assert.DoesNotContain("xception", await logged, StringComparison.Ordinal);
    }

    private static Uri At(string path) => new(path, UriKind.Relative);
}
