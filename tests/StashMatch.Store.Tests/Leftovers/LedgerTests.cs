using CsCheck;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Store.Tests.Leftovers;

public sealed class LedgerTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_used_is_taken_off_what_was_weighed()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss() with { Weighing = new Weighing(Grams.From(24), Grams.From(4), Grams.From(0.1m)) }, cancel: Stop);
        Assert.Equal(UseOutcome.Booked, await shelf.Leftovers.UseAsync(id, Grams.From(6), "mittens", Stop));
        var logged = await shelf.Leftovers.FindAsync(id, Stop);
        Assert.Equal((14m, 18m, 4m, 1), (logged!.Left.Value, logged.Weighing.Gross.Value, logged.Weighing.Tare.Value, logged.Weighings));
        Assert.Equal(56m, Assert.Single(await shelf.Leftovers.ForHatsAsync(Stop)).Held.Value);
        Assert.Equal(UseOutcome.MoreThanIsLeft, await shelf.Leftovers.UseAsync(id, Grams.From(14.001m), null, Stop));
        Assert.Equal(UseOutcome.NotThere, await shelf.Leftovers.UseAsync("nobody", Grams.From(1), null, Stop));
        Assert.Equal(UseOutcome.Booked, await shelf.Leftovers.UseAsync(id, Grams.From(14), null, Stop));
        logged = await shelf.Leftovers.FindAsync(id, Stop);
        Assert.True(logged is { KnittedUp: true, Left.Value: 0, ForHats: false });
        await shelf.Leftovers.ReweighAsync(id, Shelf.Reading(2), Stop);
        Assert.Equal(2m, (await shelf.Leftovers.FindAsync(id, Stop))?.Left.Value);
    }

    [Fact]
    public async Task The_history_says_in_order_what_happened_when_how_much_is_left_and_for_what()
    {
        var clock = new SetClock(new DateTimeOffset(2026, 11, 1, 20, 0, 0, TimeSpan.Zero));
        await using var shelf = await Shelf.ReadyAsync(clock: clock);
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        clock.Now = clock.Now.AddDays(1);
        await shelf.Leftovers.UseAsync(id, Grams.From(6), "mittens", Stop);
        await shelf.Leftovers.EditAsync(id, d => d with { Lot = "7", KeptBackFor = "socks" }, Stop);
        await shelf.Leftovers.KnitUpAsync(id, Stop);
        await shelf.Leftovers.UndoAsync(id, Stop);
        var history = await shelf.Leftovers.HistoryAsync(id, Stop);
        Assert.Equal([EntryKind.Weighed, EntryKind.Used, EntryKind.Edited, EntryKind.KnittedUp, EntryKind.Undone], history.Select(h => h.Kind));
        Assert.Equal([20m, 14m, 14m, 0m, 14m], history.Select(h => h.Left.Value));
        Assert.Equal((20m, 6m, "mittens"), (history[0].Weighing!.Net.Value, history[1].Used!.Value.Value, history[1].For));
        Assert.Equal([new FieldChange("lot", "", "7"), new FieldChange("keptBackFor", "", "socks")], history[2].Changes);
        Assert.Equal((true, EntryKind.KnittedUp), (history[3].IsUndone, history[4].Undid));
        Assert.Equal(TimeSpan.FromDays(1), history[1].At - history[0].At);
        await shelf.Leftovers.RemoveAsync(id, Stop);
        Assert.Equal(6, (await shelf.Leftovers.HistoryAsync(id, Stop)).Count);
        Assert.Empty(await shelf.Leftovers.HistoryAsync("nobody", Stop));
    }

    [Fact]
    public async Task Undo_goes_back_step_by_step_to_the_first_weighing_and_no_further()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await shelf.Leftovers.ReweighAsync(id, Shelf.Reading(18), Stop);
        await shelf.Leftovers.UseAsync(id, Grams.From(3), null, Stop);
        await shelf.Leftovers.EditAsync(id, d => d with { Name = "Moss bank", Code = "Zz" }, Stop);
        await shelf.Leftovers.RemoveAsync(id, Stop);
        foreach (var (undone, left, name, code) in new[]
        {
            (EntryKind.Removed, 15m, "Moss bank", "Zz"), (EntryKind.Edited, 15m, "Moss", "Mo"), (EntryKind.Used, 18m, "Moss", "Mo"), (EntryKind.Weighed, 20m, "Moss", "Mo"),
        })
        {
            Assert.Equal(undone, await shelf.Leftovers.UndoAsync(id, Stop));
            var logged = await shelf.Leftovers.FindAsync(id, Stop);
            Assert.Equal((left, name, code), (logged!.Left.Value, logged.Name, logged.Code));
        }

        Assert.Null(await shelf.Leftovers.UndoAsync(id, Stop));
        Assert.Equal(20m, (await shelf.Leftovers.FindAsync(id, Stop))?.Left.Value);
        Assert.Equal(9, (await shelf.Leftovers.HistoryAsync(id, Stop)).Count);
        await shelf.Leftovers.ReweighAsync(id, Shelf.Reading(9), Stop);
        Assert.Equal(EntryKind.Weighed, await shelf.Leftovers.UndoAsync(id, Stop));
    }

    [Fact]
    public async Task Whatever_is_done_and_undone_what_is_left_is_what_a_pile_of_notes_says()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var acts = Gen.Select(Gen.Int[0, 5], Gen.Int[1, 30_000]).Array[60].Array[5].Single();
        foreach (var run in acts)
        {
            var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
            var pile = new Stack<(long Left, bool Listed)>([(20_000, true)]);
            foreach (var (act, milligrams) in run)
            {
                var (left, listed) = pile.Peek();
                switch (act)
                {
                    case 0 when listed:
                        await shelf.Leftovers.ReweighAsync(id, Shelf.Reading(milligrams / 1000m), Stop);
                        pile.Push((milligrams, true));
                        break;
                    case 1 when listed:
                        if (await shelf.Leftovers.UseAsync(id, Grams.FromMilligrams(milligrams), null, Stop) == UseOutcome.Booked)
                        {
                            pile.Push((left - milligrams, true));
                        }

                        break;
                    case 2 when listed:
                        await shelf.Leftovers.KnitUpAsync(id, Stop);
                        pile.Push((0, true));
                        break;
                    case 3 when listed:
                        await shelf.Leftovers.RemoveAsync(id, Stop);
                        pile.Push((left, false));
                        break;
                    default:
                        var undone = await shelf.Leftovers.UndoAsync(id, Stop);
                        Assert.Equal(pile.Count > 1, undone is not null);
                        if (undone is not null)
                        {
                            pile.Pop();
                        }

                        break;
                }

                var logged = await shelf.Leftovers.FindAsync(id, Stop);
                Assert.Equal(pile.Peek().Listed, logged is not null);
                Assert.Equal(pile.Peek().Left, (await shelf.Leftovers.HistoryAsync(id, Stop))[^1].Left.Milligrams);
                Assert.True(logged is null || logged.Left.Milligrams == pile.Peek().Left);
            }
        }
    }

    [Fact]
    public async Task An_edit_changes_only_what_it_touches_and_says_what_is_wrong_by_field()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss() with { Lot = "7" }, cancel: Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Oat"), cancel: Stop);
        var ratio = new LabelRatio(4, MassUnit.Ounces, 205.12345m, LengthUnit.Yards, RatioSource.Measured);
        Assert.False((await shelf.Leftovers.EditAsync(id, d => d with { Ratio = ratio, Crumb = true, Bag = "", Make = YarnMake.Drape }, Stop)).Any);
        var logged = await shelf.Leftovers.FindAsync(id, Stop);
        Assert.Equal((ratio, true, "7", null, YarnMake.Drape, 20m), (logged!.Ratio, logged.Crumb, logged.Lot, logged.Bag, logged.Make, logged.Left.Value));
        Assert.False(logged.ForHats);
        Assert.Equal(["code"], (await shelf.Leftovers.EditAsync(id, d => d with { Code = "Oa", Name = "Never" }, Stop)).ByField.Keys);
        Assert.Equal(["code", "name"], (await shelf.Leftovers.EditAsync(id, d => d with { Code = "oa", Name = " " }, Stop)).ByField.Keys);
        Assert.Equal(["id"], (await shelf.Leftovers.EditAsync("nobody", d => d, Stop)).ByField.Keys);
        Assert.Equal("Moss", (await shelf.Leftovers.FindAsync(id, Stop))?.Name);
        await shelf.Leftovers.EditAsync(id, d => d, Stop);
        Assert.Equal(2, (await shelf.Leftovers.HistoryAsync(id, Stop)).Count);
        await shelf.Leftovers.UndoAsync(id, Stop);
        logged = await shelf.Leftovers.FindAsync(id, Stop);
        Assert.Equal((Shelf.Moss().Ratio, false, YarnMake.Plied), (logged!.Ratio, logged.Crumb, logged.Make));
    }

    [Fact]
    public async Task Two_who_edit_different_fields_at_once_both_get_their_way()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await Task.WhenAll(
            Task.Run(() => shelf.Leftovers.EditAsync(id, d => d with { Lot = "7" }, Stop), Stop),
            Task.Run(() => shelf.Leftovers.EditAsync(id, d => d with { Note = "soft" }, Stop), Stop),
            Task.Run(() => shelf.Leftovers.UseAsync(id, Grams.From(1), null, Stop), Stop));
        var logged = await shelf.Leftovers.FindAsync(id, Stop);
        Assert.Equal(("7", "soft", 19m), (logged!.Lot, logged.Note, logged.Left.Value));
    }
}
