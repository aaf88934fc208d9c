using StashMatch.Knitting.Quantities;
using Xunit;

namespace StashMatch.Store.Tests.Plans;

public sealed class PlanStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_saved_plan_comes_back_and_its_yarn_is_free_for_nobody_else()
    {
        await using var shelf = await WithMossAsync();
        var saved = await shelf.Plans.SaveAsync(Plan("Winter hat", 30_000, 20_000) with { Question = "{\"size\":\"C\"}" }, Stop);
        Assert.True(saved.Saved);
        var plan = Assert.Single(await shelf.Plans.ListAsync(Stop));
        Assert.Equal((saved.Id, "Winter hat", "sample", "C", 6, "own-colours"), (plan.Id, plan.Name, plan.Hat, plan.Size, plan.Stripes, plan.Arrangement));
        Assert.Equal(("{\"size\":\"C\"}", true, null, null), (plan.Question, plan.Reserves, plan.Sheet, plan.FinishedAt));
        Assert.Equal([("stripe 1", 30m, 7.5m), ("stripe 2", 20m, 5m)], plan.Parts.Select(p => (p.Part, p.Length.Value, p.Mass!.Value.Value)));
        Assert.Equal(50m, (await shelf.Leftovers.FindAsync("moss", Stop))?.Promised.Value);
        Assert.Equal(30m, Assert.Single(await shelf.Leftovers.ForHatsAsync(Stop)).Held.Value);
        Assert.Equal(80m, Assert.Single(await shelf.Leftovers.ForHatsAsync(Promised.CountedToo, null, Stop)).Held.Value);
        Assert.Equal(80m, Assert.Single(await shelf.Leftovers.ForHatsAsync(Promised.LeftOut, saved.Id, Stop)).Held.Value);
    }

    [Fact]
    public async Task A_plan_that_wants_more_than_is_free_is_told_of_which_leftover_and_who_has_it()
    {
        await using var shelf = await WithMossAsync();
        var first = await shelf.Plans.SaveAsync(Plan("Winter hat", 50_000), Stop);
        var second = await shelf.Plans.SaveAsync(Plan("Spring hat", 30_001), Stop);
        Assert.False(second.Saved);
        var clash = Assert.Single(second.Clashes);
        Assert.Equal(("moss", "Moss", 30.001m, 30m), (clash.Leftover, clash.Name, clash.Wanted.Value, clash.Free.Value));
        Assert.Equal((first.Id!, "Winter hat", 50m), (Assert.Single(clash.Others).Id, clash.Others[0].Name, clash.Others[0].Promised.Value));
        Assert.Equal("Moss: 30.0 m (32.8 yd) wanted, 30.0 m (32.8 yd) free; “Winter hat” has 50.0 m (54.7 yd)", clash.ToString());
        Assert.Single(await shelf.Plans.ListAsync(Stop));
        Assert.True((await shelf.Plans.SaveAsync(Plan("Spring hat", 30_000), Stop)).Saved);
        Assert.Empty(await shelf.Leftovers.ForHatsAsync(Stop));
        var stranger = await shelf.Plans.SaveAsync(Plan("Summer hat") with { Parts = [new PlannedPart("nobody", "brim", 1)] }, Stop);
        Assert.Equal("nobody", Assert.Single(stranger.Clashes).Leftover);
    }

    [Fact]
    public async Task Of_many_browsers_that_race_for_one_ball_one_wins_and_the_others_are_told()
    {
        await using var shelf = await WithMossAsync();
        await using var beside = await Shelf.ReadyAsync(shelf.Folder);
        for (var round = 0; round < 10; round++)
        {
            var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => Task.Run(
                () => (i % 2 == 0 ? shelf : beside).Plans.SaveAsync(Plan($"Hat {round} {i}", 41_000), Stop), Stop)));
            var winner = Assert.Single(outcomes, o => o.Saved);
            Assert.All(outcomes.Where(o => !o.Saved), o => Assert.Equal(winner.Id, Assert.Single(Assert.Single(o.Clashes).Others).Id));
            Assert.True(await shelf.Plans.RemoveAsync(winner.Id!, Stop));
        }
    }

    [Fact]
    public async Task A_plan_is_replaced_only_by_one_who_saw_it_as_it_is()
    {
        await using var shelf = await WithMossAsync();
        var id = (await shelf.Plans.SaveAsync(Plan("Winter hat", 60_000), Stop)).Id!;
        var seen = (await shelf.Plans.FindAsync(id, Stop))!.Version;
        Assert.True((await shelf.Plans.ReplaceAsync(id, seen, Plan("Winter hat", 70_000), Stop)).Saved);
        Assert.True((await shelf.Plans.ReplaceAsync(id, seen, Plan("Winter hat", 10_000), Stop)).ChangedMeanwhile);
        var now = (await shelf.Plans.FindAsync(id, Stop))!;
        Assert.Equal(70m, Assert.Single(now.Parts).Length.Value);
        Assert.Single((await shelf.Plans.ReplaceAsync(id, now.Version, Plan("Winter hat", 80_001), Stop)).Clashes);
        Assert.Equal(70m, (await shelf.Leftovers.FindAsync("moss", Stop))?.Promised.Value);
        Assert.True((await shelf.Plans.ReplaceAsync("nobody", seen, Plan("x"), Stop)).NotThere);
    }

    [Fact]
    public async Task A_plan_is_renamed_copied_given_free_and_deleted()
    {
        await using var shelf = await WithMossAsync();
        var id = (await shelf.Plans.SaveAsync(Plan("Winter hat", 60_000), Stop)).Id!;
        var again = (await shelf.Plans.SaveAsync(Plan(" Winter hat "), Stop)).Id!;
        Assert.Equal("Winter hat (2)", (await shelf.Plans.FindAsync(again, Stop))!.Name);
        Assert.Equal("Winter hat (3)", (await shelf.Plans.FindAsync((await shelf.Plans.SaveAsync(Plan("Winter hat"), Stop)).Id!, Stop))!.Name);
        await shelf.Plans.RemoveAsync(again, Stop);
        Assert.True((await shelf.Plans.RenameAsync(id, "Snow hat", Stop)).Saved);
        Assert.Equal(["name"], (await shelf.Plans.RenameAsync(id, "", Stop)).Errors.ByField.Keys);
        var copy = (await shelf.Plans.CopyAsync(id, Stop)).Id!;
        Assert.Equal(("Snow hat (2)", false), ((await shelf.Plans.FindAsync(copy, Stop))!.Name, (await shelf.Plans.FindAsync(copy, Stop))!.Reserves));
        Assert.Equal("Snow hat (3)", (await shelf.Plans.FindAsync((await shelf.Plans.CopyAsync(id, Stop)).Id!, Stop))!.Name);
        Assert.True((await shelf.Plans.RenameAsync(copy, "Snow hat", Stop)).Saved);
        Assert.Equal("Snow hat (2)", (await shelf.Plans.FindAsync(copy, Stop))!.Name);
        Assert.Single((await shelf.Plans.ReserveAsync(copy, true, Stop)).Clashes);
        Assert.False((await shelf.Plans.FindAsync(copy, Stop))!.Reserves);
        Assert.True((await shelf.Plans.ReserveAsync(id, false, Stop)).Saved);
        Assert.True((await shelf.Plans.ReserveAsync(copy, true, Stop)).Saved);
        Assert.True(await shelf.Plans.RemoveAsync(copy, Stop));
        Assert.False(await shelf.Plans.RemoveAsync(copy, Stop));
        Assert.Equal(0m, (await shelf.Leftovers.FindAsync("moss", Stop))?.Promised.Value);
        await using var context = shelf.Open();
        Assert.DoesNotContain(context.Promises, p => context.Plans.All(x => x.Id != p.PlanId));
    }

    [Fact]
    public async Task A_finished_plan_books_what_was_knitted_and_promises_nothing_any_more()
    {
        await using var shelf = await WithMossAsync();
        var id = (await shelf.Plans.SaveAsync(Plan("Winter hat", 60_000), Stop)).Id!;
        Assert.True((await shelf.Plans.KeepSheetAsync(id, "[1]", Stop)).Saved);
        var tooMuch = await shelf.Plans.FinishAsync(id, new Dictionary<string, Grams>(StringComparer.Ordinal) { ["moss"] = Grams.From(20.5m) }, Stop);
        Assert.Equal(["used.moss"], tooMuch.Errors.ByField.Keys);
        Assert.Null((await shelf.Plans.FindAsync(id, Stop))!.FinishedAt);
        Assert.True((await shelf.Plans.FinishAsync(id, new Dictionary<string, Grams>(StringComparer.Ordinal) { ["moss"] = Grams.From(14.5m) }, Stop)).Saved);
        var plan = (await shelf.Plans.FindAsync(id, Stop))!;
        Assert.Equal((false, "[1]", true), (plan.Reserves, plan.Sheet, plan.FinishedAt is not null));
        var moss = (await shelf.Leftovers.FindAsync("moss", Stop))!;
        Assert.Equal((5.5m, 0m), (moss.Left.Value, moss.Promised.Value));
        Assert.Equal("Winter hat", (await shelf.Leftovers.HistoryAsync("moss", Stop))[^1].For);
    }

    [Fact]
    public async Task A_plan_outlives_a_leftover_that_is_gone_for_good()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Demo.LoadOnceAsync(Stop);
        var id = (await shelf.Plans.SaveAsync(Plan("Winter hat") with { Parts = [new PlannedPart("kelp", "brim", 1_000)] }, Stop)).Id!;
        await shelf.Demo.RemoveAsync(Stop);
        var part = Assert.Single((await shelf.Plans.FindAsync(id, Stop))!.Parts);
        Assert.Equal((null, "Kelp", 1m, null), (part.Leftover, part.Name, part.Length.Value, part.Mass));
    }

    [Fact]
    public async Task What_is_wrong_with_a_plan_is_said_by_field()
    {
        await using var shelf = await WithMossAsync();
        var outcome = await shelf.Plans.SaveAsync(new NewPlan("", new string('h', 81), "", -1, "\0", [new PlannedPart("", "", 0), null!]), Stop);
        Assert.Equal(
            ["arrangement", "hat", "name", "parts[0].leftover", "parts[0].millimetres", "parts[0].part", "parts[1].leftover", "parts[1].millimetres", "parts[1].part", "size", "stripes"],
            outcome.Errors.ByField.Keys);
    }

    private static async Task<Shelf> WithMossAsync()
    {
        var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        return shelf;
    }

    private static NewPlan Plan(string name, params long[] millimetres) =>
        new(name, "sample", "C", 6, "own-colours", [.. millimetres.Select((m, i) => new PlannedPart("moss", $"stripe {i + 1}", m))]);
}
