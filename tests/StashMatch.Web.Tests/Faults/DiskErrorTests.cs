using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace StashMatch.Web.Tests.Faults;

/// <summary>A file that may not grow past a limit of the system's: every write beyond it is an input/output error. It takes no administrator.</summary>
public sealed class DiskErrorTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task When_the_disk_reports_errors_each_save_says_so_reading_goes_on_and_nothing_acknowledged_is_lost()
    {
        var folder = Directory.CreateTempSubdirectory("stashmatch-io-").FullName;
        try
        {
            var saved = new List<string>();
            using (var app = AppProcess.Start(folder, "trap '' XFSZ; ulimit -f 1024"))
            {
                Assert.True(await app.ReadyAsync(Stop));
                var failed = 0;
                for (var i = 0; i < 5_000 && failed < 5; i++)
                {
                    var body = new JsonObject { ["id"] = $"ball-{i}", ["name"] = "Ball", ["grams"] = 20, ["fibre"] = "100% wool", ["lot"] = new string('l', 80), ["label"] = new JsonObject { ["grams"] = 100, ["metres"] = 400 } };
                    using var response = await app.Client.PostAsJsonAsync(new Uri("api/v1/leftovers", UriKind.Relative), body, Stop);
                    if (response.StatusCode == HttpStatusCode.Created)
                    {
                        saved.Add($"ball-{i}");
                        continue;
                    }

                    failed++;
                    Assert.Equal(HttpStatusCode.ServiceUnavailable, response.StatusCode);
                    var problem = await response.Content.ReadFromJsonAsync<JsonElement>(Stop);
                    Assert.Equal(("Not saved.", "input-output"), (problem.GetProperty("title").GetString(), problem.GetProperty("why").GetString()));
                    Assert.Equal(saved, await IdsAsync(app));
                }

                Assert.Equal(5, failed);
                Assert.NotEmpty(saved);
                app.Kill();
            }

            using var again = AppProcess.Start(folder);
            Assert.True(await again.ReadyAsync(Stop));
            Assert.Equal(saved, await IdsAsync(again));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<IEnumerable<string>> IdsAsync(AppProcess app) =>
        (await app.Client.GetFromJsonAsync<JsonElement>(new Uri("api/v1/leftovers", UriKind.Relative), Stop)).EnumerateArray().Select(l => l.GetProperty("id").GetString()!).Reverse().ToList();
}
