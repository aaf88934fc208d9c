using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Xunit;

namespace StashMatch.Web.Tests.Faults;

/// <summary>The real program killed with kill -9 again and again: while many save, while an old file is brought up to date, while a backup is restored. STASHMATCH_KILLS says how often; 24 where nothing is said.</summary>
public sealed class KillTests
{
    private const int SavesForEachFile = 25;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static int Kills => int.TryParse(Environment.GetEnvironmentVariable("STASHMATCH_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out var kills) ? kills : 24;

    private static int Seed => int.TryParse(Environment.GetEnvironmentVariable("STASHMATCH_SEED"), NumberStyles.None, CultureInfo.InvariantCulture, out var seed) ? seed : 20261125;

    [Fact]
    public async Task What_was_acknowledged_is_there_after_every_kill_and_nothing_is_halved()
    {
        var (kills, acknowledged, wrong) = (0, 0, new List<string>());
        var random = new Random(Seed);
        for (var file = 0; kills < Kills * 3 / 4; file++)
        {
            await InFolderAsync(async folder =>
            {
                var savers = new Savers(Seed + file);
                for (var round = 0; round < SavesForEachFile && kills < Kills * 3 / 4; round++, kills++)
                {
                    using var app = AppProcess.Start(folder);
                    Assert.True(await app.ReadyAsync(Stop), "It did not start again after a kill.");
                    wrong.AddRange(savers.Compare(await EverythingAsync(app)));
                    wrong.AddRange(await DamageAsync(folder));
                    var before = savers.Acknowledged;
                    using var gone = new CancellationTokenSource();
                    var saving = savers.SaveAsync(app.Client, gone.Token);
                    var killAt = random.Next(1, 60);
                    for (var wait = 0; savers.Acknowledged - before < killAt && wait < 2_000; wait++)
                    {
                        await Task.Delay(2, Stop);
                    }

                    app.Kill();
                    await gone.CancelAsync();
                    await saving;
                }

                using var last = AppProcess.Start(folder);
                Assert.True(await last.ReadyAsync(Stop), "It did not start again after the last kill.");
                wrong.AddRange(savers.Compare(await EverythingAsync(last)));
                wrong.AddRange(await DamageAsync(folder));
                acknowledged += savers.Acknowledged;
                Report($"while saving, so far: {kills} kills, {acknowledged} saves acknowledged, {wrong.Count} lost or damaged");
            });
        }

        Report($"while saving: {kills} kills, {acknowledged} saves acknowledged, {wrong.Count(w => w.StartsWith("lost", StringComparison.Ordinal))} lost, {wrong.Count(w => !w.StartsWith("lost", StringComparison.Ordinal))} damaged");
        Assert.Empty(wrong);
        Assert.True(acknowledged > kills);
    }

    [Fact]
    public async Task A_kill_while_an_old_file_is_brought_up_to_date_loses_nothing_of_it()
    {
        var (kills, whole, wrong) = (0, 0, new List<string>());
        var random = new Random(Seed + 1);
        while (kills < Kills / 8)
        {
            await InFolderAsync(async folder =>
            {
                var file = Path.Combine(folder, "stashmatch.db");
                File.Copy(Path.Combine(AppContext.BaseDirectory, "Released", "first.db"), file);
                whole = whole > 0 ? whole : await TimeAsync(folder);
                File.Copy(Path.Combine(AppContext.BaseDirectory, "Released", "first.db"), file, overwrite: true);
                for (var round = 0; round < 3 && kills < Kills / 8; round++, kills++)
                {
                    using var app = AppProcess.Start(folder);

                    await BegunAsync(app, folder);
                    await Task.Delay(random.Next(0, whole + 50), Stop);
                    app.Kill();
                    wrong.AddRange(await DamageAsync(folder));
                }

                using var last = AppProcess.Start(folder);
                Assert.True(await last.ReadyAsync(Stop), "It did not start again after a kill.");
                var everything = await EverythingAsync(last);
                var ledgers = everything.GetProperty("leftovers").EnumerateArray().Sum(l => l.GetProperty("ledger").GetArrayLength());
                if (everything.GetProperty("leftovers").GetArrayLength() != 28 || ledgers != 32)
                {
                    wrong.Add($"lost: {everything.GetProperty("leftovers").GetArrayLength()} leftovers, {ledgers} lines");
                }

                wrong.AddRange(await DamageAsync(folder));
            });
        }

        Report($"while bringing an old file up to date: {kills} kills, {wrong.Count} lost or damaged");
        Assert.Empty(wrong);
    }

    [Fact]
    public async Task A_kill_while_a_backup_is_restored_leaves_the_old_file_or_the_new_one_whole()
    {
        var (kills, restored, whole, wrong) = (0, 0, 0, new List<string>());
        var random = new Random(Seed + 2);
        await InFolderAsync(async folder =>
        {
            string before, after;
            using (var app = AppProcess.Start(folder))
            {
                Assert.True(await app.ReadyAsync(Stop));
                await LogAsync(app, "first", 30);
                before = (await EverythingAsync(app)).GetRawText();
                using (await app.Client.PostAsync(new Uri("api/v1/backups", UriKind.Relative), null, Stop))
                {
                }

                await LogAsync(app, "second", 30);
                after = (await EverythingAsync(app)).GetRawText();
                var watch = Stopwatch.StartNew();
                using (await app.Client.PostAsync(new Uri($"api/v1/backups/{Path.GetFileName(Directory.GetFiles(Path.Combine(folder, "backups")).Single())}/restore", UriKind.Relative), null, Stop))
                {
                    whole = (int)watch.ElapsedMilliseconds;
                }

                app.Kill();
            }

            var (live, backup) = (Path.Combine(folder, "stashmatch.db"), Directory.GetFiles(Path.Combine(folder, "backups"), "asked-*").Single());
            while (kills < Kills / 8)
            {
                using var app = AppProcess.Start(folder);
                Assert.True(await app.ReadyAsync(Stop), "It did not start again after a kill.");
                var now = (await EverythingAsync(app)).GetRawText();
                if (now != before && now != after)
                {
                    wrong.Add("damaged: neither the old file nor the new one");
                }

                wrong.AddRange(await DamageAsync(folder));
                restored += now == before ? 1 : 0;

                // Back and forth: whichever it is, the other one is restored next.
                var other = now == before ? Directory.GetFiles(Path.Combine(folder, "backups"), "before-restore-*.db").Order(StringComparer.Ordinal).First() : backup;
                var restoring = app.Client.PostAsync(new Uri($"api/v1/backups/{Path.GetFileName(other)}/restore", UriKind.Relative), null, CancellationToken.None);
                await Task.Delay(random.Next(0, whole + 50), Stop);
                app.Kill();
                kills++;
                try
                {
                    using var answer = await restoring;
                }
                catch (HttpRequestException)
                {
                    // Killed before it could say.
                }
            }

            using var last = AppProcess.Start(folder);
            Assert.True(await last.ReadyAsync(Stop) && File.Exists(live));
            wrong.AddRange(await DamageAsync(folder));
        });
        Report($"while restoring: {kills} kills, {restored} found the backup in place, {wrong.Count} lost or damaged");
        Assert.Empty(wrong);
    }

    // The start lock is there when it begins on the file; from then on every moment counts.
    private static async Task BegunAsync(AppProcess app, string folder)
    {
        while (!File.Exists(Path.Combine(folder, "start.lock")) && !app.HasEnded)
        {
            await Task.Delay(1, Stop);
        }
    }

    // How long bringing up to date takes here, in milliseconds, so that kills fall anywhere in it.
    private static async Task<int> TimeAsync(string folder)
    {
        using var app = AppProcess.Start(folder);
        await BegunAsync(app, folder);
        var watch = Stopwatch.StartNew();
        Assert.True(await app.ReadyAsync(Stop));
        app.Kill();
        foreach (var file in Directory.GetFiles(folder, "stashmatch.db*"))
        {
            File.Delete(file);
        }

        return (int)watch.ElapsedMilliseconds;
    }

    private static async Task LogAsync(AppProcess app, string name, int count)
    {
        var table = new StringBuilder("id,name,grams,note\n");
        for (var i = 0; i < count; i++)
        {
            table.Append(CultureInfo.InvariantCulture, $"{name}-{i},Ball,{i + 1},{new string('n', 400)}\n");
        }

        using var content = new StringContent(table.ToString(), Encoding.UTF8, "text/csv");
        using var response = await app.Client.PostAsync(new Uri("api/v1/leftovers/import", UriKind.Relative), content, Stop);
        response.EnsureSuccessStatusCode();
    }

    private static Task<JsonElement> EverythingAsync(AppProcess app) => app.Client.GetFromJsonAsync<JsonElement>(new Uri("api/v1/export", UriKind.Relative), Stop);

    // Of the file and of every backup under its final name.
    private static async Task<List<string>> DamageAsync(string folder)
    {
        var damage = new List<string>();
        foreach (var file in Directory.GetFiles(folder, "*.db", SearchOption.AllDirectories))
        {
            await using var connection = new SqliteConnection($"Data Source={file};Pooling=False;Default Timeout=30");
            await connection.OpenAsync(Stop);
            foreach (var check in new[] { "PRAGMA integrity_check", "SELECT count(*) || 'k' FROM pragma_foreign_key_check" })
            {
                await using var command = connection.CreateCommand();
                command.CommandText = check;
                if ($"{await command.ExecuteScalarAsync(Stop)}" is not ("ok" or "0k") and var said)
                {
                    damage.Add($"damaged: {Path.GetFileName(file)}: {said}");
                }
            }
        }

        return damage;
    }

    private static async Task InFolderAsync(Func<string, Task> act)
    {
        var folder = Directory.CreateTempSubdirectory("stashmatch-kill-").FullName;
        try
        {
            await act(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Report(string figures)
    {
        TestContext.Current.TestOutputHelper?.WriteLine(figures);
        Console.WriteLine($"kill -9 {figures}; seed {Seed}");
    }
}
