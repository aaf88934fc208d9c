using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Microsoft.Data.Sqlite;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Whole;

public sealed class EverythingTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Everything_read_into_an_empty_store_is_written_again_byte_for_byte()
    {
        await using var shelf = await FullAsync();
        var file = await shelf.Everything.WriteAsync(Stop);
        await using var fresh = await Shelf.ReadyAsync();
        Assert.Empty((await fresh.Everything.ReadAsync(file, Stop)).ByField);
        Assert.Equal(Encoding.UTF8.GetString(file), Encoding.UTF8.GetString(await fresh.Everything.WriteAsync(Stop)));
        Assert.Equal((await shelf.Leftovers.ListAsync(Stop)).Select(l => l with { Version = default }), (await fresh.Leftovers.ListAsync(Stop)).Select(l => l with { Version = default }));
        var (before, after) = (await shelf.Leftovers.HistoryAsync("moss", Stop), await fresh.Leftovers.HistoryAsync("moss", Stop));
        Assert.Equal(before.Select(h => (h.Kind, h.At, h.Left, h.Weighing, h.Used, h.For, h.IsUndone, h.Undid)), after.Select(h => (h.Kind, h.At, h.Left, h.Weighing, h.Used, h.For, h.IsUndone, h.Undid)));
        Assert.Equal(before.SelectMany(h => h.Changes), after.SelectMany(h => h.Changes));
        Assert.Equal("mittens", after[1].For);
        Assert.Equal(EntryKind.Edited, await fresh.Leftovers.UndoAsync("moss", Stop));
        Assert.Null((await fresh.Leftovers.FindAsync("moss", Stop))?.Lot);
        Assert.Equal(10m, (await fresh.Leftovers.FindAsync("oat", Stop))?.Promised.Value);
        Assert.Equal((LengthUnit.Yards, 12.5m), ((await fresh.Settings.ReadAsync(Stop)).FirstUnit, (await fresh.Settings.ReadAsync(Stop)).AllowancePercent));
        Assert.Equal(await shelf.Knitter.UsageAsync(Stop), await fresh.Knitter.UsageAsync(Stop));
        Assert.Equal("Hedge", Assert.Single(await fresh.Kits.ListAsync(Stop)).Name);
        Assert.Equal(3.9m, Assert.Single(await fresh.Testers.ListAsync("practice-hat", Stop)).Description.Parts![0]!.AfterGrams);
        Assert.Equal(EntryKind.Removed, await fresh.Leftovers.UndoAsync("gone", Stop));
    }

    [Fact]
    public async Task Whatever_is_in_sixty_bags_comes_back_byte_for_byte()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await using var fresh = await Shelf.ReadyAsync();
        foreach (var bag in RandomBags.Leftover.Array[1, 5].Array[60].Single())
        {
            await shelf.Everything.ClearAsync(Stop);
            await fresh.Everything.ClearAsync(Stop);
            await shelf.Table.KeepAsync(new TablePreview { Rows = [.. bag.Select((l, i) => new TableRow(i, l))] }, Stop);
            var file = await shelf.Everything.WriteAsync(Stop);
            Assert.Empty((await fresh.Everything.ReadAsync(file, Stop)).ByField);
            Assert.Equal(file, await fresh.Everything.WriteAsync(Stop));
        }
    }

    [Fact]
    public async Task A_store_with_something_in_it_takes_nothing()
    {
        await using var shelf = await FullAsync();
        var file = await shelf.Everything.WriteAsync(Stop);
        Assert.Equal(["store"], (await shelf.Everything.ReadAsync(file, Stop)).ByField.Keys);
        Assert.Equal(file, await shelf.Everything.WriteAsync(Stop));
    }

    [Theory]
    [InlineData("/leftovers/0/ledger/0/grams", "-1", "leftovers[0].ledger[0]")]
    [InlineData("/leftovers/0/ledger/0/kind", "\"used\"", "leftovers[0].ledger")]
    [InlineData("/leftovers/0/ledger/0/kind", "0", "leftovers[0].ledger[0].kind")]
    [InlineData("/leftovers/0/weightClass", "9", "leftovers[0].weightClass")]
    [InlineData("/leftovers/0/name", "\"\\u0000\"", "leftovers[0].name")]
    [InlineData("/leftovers/1/id", "\"moss\"", "leftovers[1].id")]
    [InlineData("/leftovers/0/code", "null", "leftovers[0].code")]
    [InlineData("/plans/0/parts/0/leftover", "\"nobody\"", "plans[0].parts[0].leftover")]
    [InlineData("/hats/0/hat", "null", "hats[0].hat")]
    [InlineData("/calibrations/0/factor", "1e300", "calibrations[0].factor")]
    [InlineData("/calibrations/0/hat", "\"\"", "calibrations[0].hat")]
    [InlineData("/settings/allowancePercent", "101", "settings")]
    [InlineData("/stashMatch", "2", "stashMatch")]
    [InlineData("/leftovers/0/surprise", "1", "leftovers[0].surprise")]
    public async Task What_cannot_be_read_is_named_and_nothing_is_kept(string path, string value, string field)
    {
        await using var shelf = await FullAsync();
        var root = JsonNode.Parse(await shelf.Everything.WriteAsync(Stop))!;
        var steps = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var node = steps.SkipLast(1).Aggregate(root, (n, s) => int.TryParse(s, out var i) ? n[i]! : n[s]!);
        node[steps[^1]] = JsonNode.Parse(value);
        await using var fresh = await Shelf.ReadyAsync();
        var errors = await fresh.Everything.ReadAsync(Encoding.UTF8.GetBytes(root.ToJsonString()), Stop);
        Assert.Contains(field, errors.ByField.Keys);
        Assert.Empty(await fresh.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task Broken_files_of_everything_are_refused_and_never_fall_over()
    {
        await using var shelf = await FullAsync();
        var text = Encoding.UTF8.GetString(await shelf.Everything.WriteAsync(Stop));
        await using var fresh = await Shelf.ReadyAsync();
        foreach (var (at, length, with) in Gen.Select(Gen.Int[0, text.Length - 1], Gen.Int[0, 30], Gen.String[0, 6]).Array[300].Single())
        {
            var broken = string.Concat(text.AsSpan(0, at), with, text.AsSpan(Math.Min(text.Length, at + length)));
            if (!(await fresh.Everything.ReadAsync(Encoding.UTF8.GetBytes(broken), Stop)).Any)
            {
                // A word changed here and there is still sound; what was kept is then whole.
                Assert.NotEmpty(await fresh.Everything.WriteAsync(Stop));
                await fresh.Everything.ClearAsync(Stop);
            }
        }
    }

    [Fact]
    public async Task Deleting_everything_leaves_nothing_to_be_read_in_any_file()
    {
        await using var shelf = await FullAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Very private wool") with { Note = new string('q', 400) }, "a private key", Stop);
        await shelf.Backups.BackUpAsync(Stop);
        Assert.True(await FoundAsync(shelf));
        await shelf.Everything.DeleteAsync(backupsToo: false, Stop);
        Assert.Single(shelf.Backups.List());
        await shelf.Everything.DeleteAsync(backupsToo: true, Stop);
        Assert.Empty(shelf.Backups.List());
        Assert.False(await FoundAsync(shelf));
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
        await shelf.Demo.LoadOnceAsync(Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task Everything_is_deleted_or_nothing_is()
    {
        await using var shelf = await FullAsync();
        var all = await shelf.Everything.WriteAsync(Stop);
        var names = (await shelf.Leftovers.ListAsync(Stop)).Select(l => l.Name).ToList();
        await using (var other = new SqliteConnection($"Data Source={shelf.File};Pooling=False"))
        {
            await other.OpenAsync(Stop);
            await using var reading = other.BeginTransaction(deferred: true);
            await using var command = other.CreateCommand();
            command.CommandText = "SELECT count(*) FROM Leftovers";
            command.Transaction = reading;
            await command.ExecuteScalarAsync(Stop);
            var failed = await Assert.ThrowsAsync<StoreFailedException>(() => shelf.Everything.DeleteAsync(backupsToo: true, Stop));
            Assert.Equal(StoreFailure.Busy, failed.Why);
        }

        Assert.Equal(names, (await shelf.Leftovers.ListAsync(Stop)).Select(l => l.Name));
        Assert.Equal(all, await shelf.Everything.WriteAsync(Stop));
        Assert.DoesNotContain(Directory.GetFiles(shelf.Folder), f => f.Contains(".new", StringComparison.Ordinal));

        // Somebody stays in for longer than anybody waits.
        await using var held = new Shelf(shelf.Folder, clock: new NoPatience());
        await held.Gate.EnterAsync(Stop);
        Assert.Equal(StoreFailure.Busy, (await Assert.ThrowsAsync<StoreFailedException>(() => held.Everything.DeleteAsync(backupsToo: false, Stop))).Why);
        held.Gate.Leave();
        Assert.Equal(all, await held.Everything.WriteAsync(Stop));
    }

    // A log goes when the last connection does, which another test may bring about in between: what is there is then looked at again.
    private static async Task<bool> FoundAsync(Shelf shelf)
    {
        for (var look = 0; ; look++)
        {
            try
            {
                return await FoundNowAsync(shelf);
            }
            catch (FileNotFoundException) when (look < 20)
            {
                await Task.Yield();
            }
        }
    }

    private static async Task<bool> FoundNowAsync(Shelf shelf)
    {
        var found = false;
        foreach (var file in Directory.GetFiles(shelf.Folder, "*", SearchOption.AllDirectories))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var bytes = new MemoryStream();
            await stream.CopyToAsync(bytes, Stop);
            var text = Encoding.Latin1.GetString(bytes.ToArray());
            found |= text.Contains("Very private", StringComparison.Ordinal) || text.Contains("private key", StringComparison.Ordinal) || text.Contains("qqqqqqqq", StringComparison.Ordinal);
        }

        return found;
    }

    private static async Task<Shelf> FullAsync()
    {
        var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss() with { Note = "é 🧶 \"soft\"", KeptBackFor = "socks" }, cancel: Stop);
        await shelf.Leftovers.UseAsync("moss", Grams.From(1.5m), "mittens", Stop);
        await shelf.Leftovers.KnitUpAsync("moss", Stop);
        await shelf.Leftovers.UndoAsync("moss", Stop);
        await shelf.Leftovers.EditAsync("moss", d => d with { Lot = "7" }, Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Oat") with { Ratio = new LabelRatio(4, MassUnit.Ounces, 205.123456789m, LengthUnit.Yards, RatioSource.Guessed) }, cancel: Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Gone") with { Ratio = null, Crumb = true }, cancel: Stop);
        await shelf.Leftovers.RemoveAsync("gone", Stop);
        await shelf.Hats.SaveAsync(Described.Hat(Described.Plain), Stop);
        await shelf.Knitter.AddAsync("swatch", new Calibration(1.05, 0.021), Stop);
        await shelf.Knitter.TakeOverAsync("side-to-side-sample", "2 testers", new Usage(1.02, 0.06), Stop);
        await shelf.Settings.SaveAsync(new Settings { FirstUnit = LengthUnit.Yards, ScaleStep = Grams.From(0.1m), AllowancePercent = 12.5m }, Stop);
        await shelf.Plans.SaveAsync(new NewPlan("Winter hat", "practice-hat", "C", 4, "own-colours", [new PlannedPart("oat", "brim", 7_000), new PlannedPart("oat", "stripe 1", 3_000)]) { Question = "{}" }, Stop);
        await shelf.Plans.CopyAsync((await shelf.Plans.ListAsync(Stop))[0].Id, Stop);
        await shelf.Kits.SaveAsync(Described.Kit("""{"name":"Hedge","skeins":[{"name":"M","grams":20.50,"count":2,"label":"20 g / 80 m","colour":"#E2D3B2","fibre":"100% wool","weightClass":1}]}"""), Stop);
        await shelf.Testers.AddAsync("practice-hat", [new TesterDescription { Tester = "Tess", Size = "C", Label = "1 g / 2.5 yd", ExtraRounds = -1, Parts = [new("S1", 10m, 3.9m)] }], Stop);
        await using var context = shelf.Open();
        context.Marks.Add(new MarkRow { Name = "demo loaded" });
        await context.SaveChangesAsync(Stop);
        return shelf;
    }

    /// <summary>A clock that waits a moment, however long it is told to.</summary>
    private sealed class NoPatience : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            base.CreateTimer(callback, state, dueTime > TimeSpan.Zero ? TimeSpan.FromMilliseconds(20) : dueTime, period);
    }
}
