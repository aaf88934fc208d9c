using CsCheck;
using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Store.Tests.Leftovers;

public sealed class LeftoverStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_weighed_comes_back_as_it_was_printed()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var ratio = new LabelRatio(4, MassUnit.Ounces, 205.5m, LengthUnit.Yards, RatioSource.Measured);
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(" Wellington ") with { Ratio = ratio, Make = YarnMake.Singles, Superwash = true, Lot = "7", Bag = "Peg bag" }, cancel: Stop);
        var logged = Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Equal((id, "wellington", "Wellington", "We"), (logged.Id, id, logged.Name, logged.Code));
        Assert.Equal(ratio, logged.Ratio);
        Assert.Equal((YarnMake.Singles, true, "7", "Peg bag"), (logged.Make, logged.Superwash, logged.Lot, logged.Bag));
        Assert.Equal(logged, await shelf.Leftovers.FindAsync(id, Stop));
        Assert.Null(await shelf.Leftovers.FindAsync("nobody", Stop));
    }

    [Fact]
    public async Task Whatever_is_logged_comes_back_the_same()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var words = Gen.OneOf(Gen.Const((string?)null), Gen.String[0, 80].Select(s => (string?)s.Replace('\0', ' ')).Where(s => s is null || IsText(s)));
        var leftovers = Gen.Select(
            Gen.Select(Gen.Int[2, 5_000_000], Gen.Double[0, 0.99], Gen.Int[1, 100_000]),
            Gen.Select(Gen.Int[1, 4_000], Gen.Bool, Gen.Int[200, 900], Gen.Bool, Gen.Enum<RatioSource>()),
            Gen.Select(Gen.Int[1, 9_999], Gen.Int[0, 7], Gen.Enum<YarnMake>(), Gen.Bool, Gen.Int[0, 0xFFFFFF]),
            Gen.Select(words, words, words, words)).Array[40].Single();
        foreach (var (weighing, label, yarn, (lot, keptIn, note, bag)) in leftovers)
        {
            var share = yarn.Item1 / 100m;
            Assert.True(FibreBlend.TryParse(FormattableString.Invariant($"{share}% wool, {100 - share}% silk"), out var fibre, out var wrong), wrong);
            Assert.True(YarnColour.TryParse($"#{yarn.Item5:X6}", out var colour, out _));
            var given = new NewLeftover(
                "Odd one",
                new Weighing(Grams.FromMilligrams(weighing.Item1), Grams.FromMilligrams((long)(weighing.Item1 * weighing.Item2)), Grams.FromMilligrams(weighing.Item3)),
                new LabelRatio(label.Item1 / 10m, label.Item2 ? MassUnit.Grams : MassUnit.Ounces, label.Item1 * label.Item3 / 1000m, label.Item4 ? LengthUnit.Metres : LengthUnit.Yards, label.Item5))
            {
                Class = (WeightClass)yarn.Item2,
                Make = yarn.Item3,
                Superwash = yarn.Item4,
                Colour = colour,
                Fibre = fibre,
                Lot = lot,
                KeptIn = keptIn,
                Note = note,
                Bag = bag,
            };
            var back = await shelf.Leftovers.FindAsync(await shelf.Leftovers.WeighAsync(given, cancel: Stop), Stop);
            Assert.NotNull(back);
            Assert.Equal((given.Weighing, given.Ratio, given.Class, given.Fibre), (back.Weighing, back.Ratio, back.Class, back.Fibre));
            Assert.Equal((given.Colour, given.Make, given.Superwash), (back.Colour, back.Make, back.Superwash));
            Assert.Equal((Said(lot), Said(keptIn), Said(note), Said(bag)), (back.Lot, back.KeptIn, back.Note, back.Bag));
            static string? Said(string? text) => text is "" ? null : text;
        }
    }

    [Fact]
    public async Task Shares_of_a_third_come_back_as_they_were_typed()
    {
        await using var shelf = await Shelf.ReadyAsync();
        Assert.True(FibreBlend.TryParse("33.3% wool, 33.3% silk, 33.3% nylon", out var fibre, out _));
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss() with { Fibre = fibre }, cancel: Stop);
        Assert.Equal(fibre, (await shelf.Leftovers.FindAsync(id, Stop))?.Fibre);
    }

    [Fact]
    public async Task Weighings_are_appended_and_the_last_one_counts()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        Assert.True(await shelf.Leftovers.ReweighAsync(id, new Weighing(Grams.From(12), default, Grams.From(1)), Stop));
        var logged = Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Equal((2, 12m), (logged.Weighings, logged.Weighing.Net.Value));
        await using var context = shelf.Open();
        Assert.Equal([20_000L, 12_000L], await context.Ledger.OrderBy(w => w.Id).Select(w => w.GrossMilligrams).ToListAsync(Stop));
        Assert.False(await shelf.Leftovers.ReweighAsync("nobody", Shelf.Reading(1), Stop));
    }

    [Fact]
    public async Task Many_who_weigh_one_leftover_at_once_all_get_their_weighing_in()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        var done = await Task.WhenAll(Enumerable.Range(1, 12).Select(i => Task.Run(() => shelf.Leftovers.ReweighAsync(id, Shelf.Reading(i), Stop), Stop)));
        Assert.All(done, Assert.True);
        Assert.Equal(13, (await shelf.Leftovers.FindAsync(id, Stop))?.Weighings);
    }

    [Fact]
    public async Task Many_who_log_at_once_get_an_id_and_a_code_each()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await Task.WhenAll(Enumerable.Range(0, 40).Select(i => Task.Run(() => shelf.Leftovers.WeighAsync(Shelf.Moss(i % 2 == 0 ? "Moss" : "Moor"), cancel: Stop), Stop)));
        var list = await shelf.Leftovers.ListAsync(Stop);
        Assert.Equal((40, 40), (list.Select(l => l.Id).Distinct(StringComparer.Ordinal).Count(), list.Select(l => l.Code).Distinct(StringComparer.Ordinal).Count()));
    }

    [Fact]
    public async Task One_key_logs_once_even_when_asked_many_times_at_once()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var ids = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => shelf.Leftovers.WeighAsync(Shelf.Moss(), "evening", Stop), Stop)));
        Assert.Single(ids.Distinct(StringComparer.Ordinal));
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), "morning", Stop);
        Assert.Equal(2, (await shelf.Leftovers.ListAsync(Stop)).Count);
    }

    [Fact]
    public async Task An_id_that_is_taken_or_a_key_too_long_is_refused()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss() with { Id = "moss" }, cancel: Stop);
        await Assert.ThrowsAsync<ArgumentException>(() => shelf.Leftovers.WeighAsync(Shelf.Moss() with { Id = "moss" }, cancel: Stop));
        await Assert.ThrowsAsync<ArgumentException>(() => shelf.Leftovers.WeighAsync(Shelf.Moss(), new string('k', 201), Stop));
        await Assert.ThrowsAsync<ArgumentException>(() => shelf.Leftovers.WeighAsync(Shelf.Moss(), "", Stop));
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
    }

    public static TheoryData<string, NewLeftover> TooLong() => new()
    {
        { "name", Shelf.Moss(" ") },
        { "name", Shelf.Moss(new string('n', 81)) },
        { "id", Shelf.Moss() with { Id = "" } },
        { "id", Shelf.Moss() with { Id = new string('i', 81) } },
        { "lot", Shelf.Moss() with { Lot = new string('l', 81) } },
        { "keptIn", Shelf.Moss() with { KeptIn = new string('k', 81) } },
        { "note", Shelf.Moss() with { Note = new string('n', 501) } },
        { "bag", Shelf.Moss() with { Bag = new string('b', 81) } },
        { "keptBackFor", Shelf.Moss() with { KeptBackFor = new string('k', 81) } },
    };

    [Theory]
    [MemberData(nameof(TooLong))]
    public async Task A_text_that_is_missing_or_too_long_is_named_and_not_logged(string field, NewLeftover leftover)
    {
        var errors = new FieldErrors();
        leftover.Check(errors, "leftover.");
        Assert.Equal(["leftover." + field], errors.ByField.Keys);
        await using var shelf = await Shelf.ReadyAsync();
        await Assert.ThrowsAsync<ArgumentException>(() => shelf.Leftovers.WeighAsync(leftover, cancel: Stop));
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
    }

    [Fact]
    public async Task The_longest_texts_are_taken()
    {
        var longest = Shelf.Moss(new string('n', 80)) with { Id = new string('i', 80), Note = new string('n', 500), Lot = new string('l', 80) };
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(longest, new string('k', 200), Stop);
        Assert.Equal(500, Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Note?.Length);
    }

    [Fact]
    public async Task Only_those_that_may_go_into_hats_are_offered()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Free"), cancel: Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Crumb") with { Ratio = null }, cancel: Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Kept back") with { KeptBackFor = "mittens" }, cancel: Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Scratchy") with { NotForHats = true }, cancel: Stop);
        await shelf.Leftovers.KnitUpAsync(await shelf.Leftovers.WeighAsync(Shelf.Moss("Finished"), cancel: Stop), Stop);
        await shelf.Leftovers.RemoveAsync(await shelf.Leftovers.WeighAsync(Shelf.Moss("Gone"), cancel: Stop), Stop);
        Assert.Equal("Free", Assert.Single(await shelf.Leftovers.ForHatsAsync(Stop)).Name);
        Assert.Equal(5, (await shelf.Leftovers.ListAsync(Stop)).Count);
    }

    [Fact]
    public async Task Putting_back_undoes_one_step_at_a_time()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await shelf.Leftovers.KnitUpAsync(id, Stop);
        await shelf.Leftovers.RemoveAsync(id, Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
        Assert.Null(await shelf.Leftovers.FindAsync(id, Stop));
        Assert.True(await shelf.Leftovers.PutBackAsync(id, Stop));
        Assert.True(Assert.Single(await shelf.Leftovers.ListAsync(Stop)).KnittedUp);
        Assert.True(await shelf.Leftovers.PutBackAsync(id, Stop));
        Assert.Single(await shelf.Leftovers.ForHatsAsync(Stop));
        Assert.False(await shelf.Leftovers.PutBackAsync("nobody", Stop));
    }

    [Fact]
    public async Task A_leftover_put_back_keeps_its_code_unless_another_has_it_by_now()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var first = await shelf.Leftovers.WeighAsync(Shelf.Moss("Oatcake"), cancel: Stop);
        var second = await shelf.Leftovers.WeighAsync(Shelf.Moss("Oat"), cancel: Stop);
        await shelf.Leftovers.RemoveAsync(second, Stop);
        await shelf.Leftovers.RemoveAsync(first, Stop);
        await shelf.Leftovers.PutBackAsync(second, Stop);
        Assert.Equal("Ot", (await shelf.Leftovers.FindAsync(second, Stop))?.Code);
        var third = await shelf.Leftovers.WeighAsync(Shelf.Moss("Oasis"), cancel: Stop);
        await shelf.Leftovers.PutBackAsync(first, Stop);
        Assert.Equal(("Oa", "Oc"), ((await shelf.Leftovers.FindAsync(third, Stop))?.Code, (await shelf.Leftovers.FindAsync(first, Stop))?.Code));
    }

    [Fact]
    public async Task A_list_takes_two_queries_at_most_however_long_it_is()
    {
        await using var shelf = await Shelf.ReadyAsync();
        for (var i = 0; i < 500; i++)
        {
            var id = await shelf.Leftovers.WeighAsync(Shelf.Moss($"Ball {i}"), cancel: Stop);
            if (i % 5 == 0)
            {
                await shelf.Leftovers.ReweighAsync(id, Shelf.Reading(3), Stop);
            }
        }

        var before = shelf.Queries;
        var list = await shelf.Leftovers.ListAsync(Stop);
        Assert.Equal((500, 100), (list.Count, list.Count(l => l.Weighings == 2)));
        Assert.InRange(shelf.Queries - before, 1, 2);
        before = shelf.Queries;
        Assert.Equal(500, (await shelf.Leftovers.ForHatsAsync(Stop)).Count);
        Assert.InRange(shelf.Queries - before, 1, 2);
    }

    // Half a surrogate pair is no text in any encoding, and JSON and forms let none through.
    private static bool IsText(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]) && !(char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[++i])))
            {
                return false;
            }
        }

        return true;
    }
}
