using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Store.Tests.Hats;

public sealed class HatStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_three_samples_are_always_there_and_can_be_knitted_in_every_size()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var hats = await shelf.Hats.ListAsync(Stop);
        Assert.Equal(["side-to-side-sample", "brim-up-sample", "practice-hat"], hats.Select(h => h.Id));
        foreach (var hat in hats.Select(h => h.Hat))
        {
            Assert.All(hat.SizeNames, size => Assert.All(hat.CountsFor(size), count => Assert.True(hat.TryNeeds(size, count, out _, out var why), why?.Reason)));
        }
    }

    [Fact]
    public async Task An_own_hat_comes_back_as_it_was_saved()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Hats.SaveAsync(Described(), Stop);
        var hat = Assert.IsType<HatDesign>(await shelf.Hats.FindAsync(id, Stop));
        Assert.Equal(("Bobbin", Construction.BrimUpRound, 22m), (hat.Name, hat.Construction, hat.Gauge.StitchesPer10Cm));
        Assert.Null(await shelf.Hats.FindAsync("nobody", Stop));
    }

    [Fact]
    public async Task The_practice_hat_has_its_printed_figures_to_the_yard()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var hat = Assert.IsType<PrintedHat>(await shelf.Hats.FindAsync("practice-hat", Stop));
        Assert.Equal((WeightClass.Light, false), (hat.WeightClass, hat.AllowanceIncluded));
        Assert.Equal(["A", "B", "C", "D", "E"], hat.SizeNames);
        decimal[] brims = [19.0m, 20.9m, 22.7m, 26.5m, 28.3m], stripes = [10.0m, 11.0m, 12.0m, 13.9m, 14.9m], strands = [2.4m, 2.6m, 2.8m, 3.3m, 3.5m];
        for (var i = 0; i < 5; i++)
        {
            var lines = hat.Sizes[i].Lines.Select(l => (l.Part, l.Yarn, l.Length / 0.9144m));
            Assert.Equal(
                [
                    ("brim", "M", brims[i]),
                    ("braid 1 strand a", "S1", strands[i]), ("braid 1 strand b", "S2", strands[i]), ("stripe 1", "S1", stripes[i]), ("stripe 2", "S2", stripes[i]),
                    ("braid 2 strand a", "S3", strands[i]), ("braid 2 strand b", "S4", strands[i]), ("stripe 3", "S3", stripes[i]), ("stripe 4", "S4", stripes[i]),
                    ("crown", "M", stripes[i]),
                ],
                lines);
        }
    }

    [Fact]
    public async Task A_list_of_hats_takes_two_queries_at_most()
    {
        await using var shelf = await Shelf.ReadyAsync();
        for (var i = 0; i < 20; i++)
        {
            await shelf.Hats.SaveAsync(Tests.Described.Hat(Tests.Described.Plain).With(HatFields.Name, $"Hat {i}"), Stop);
        }

        var before = shelf.Queries;
        var own = (await shelf.Hats.ListAsync(Stop)).Where(h => !h.IsSample).ToList();
        Assert.InRange(shelf.Queries - before, 1, 2);
        Assert.Equal((20, "Hat 19"), (own.Count, own[0].Hat.Name));
    }

    [Fact]
    public async Task A_description_that_cannot_be_read_is_not_saved()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var refused = await Assert.ThrowsAsync<ArgumentException>(() => shelf.Hats.SaveAsync(Tests.Described.Hat("""{"weightClass":9}"""), Stop));
        Assert.Contains("hat.weightClass", refused.Message, StringComparison.Ordinal);
        Assert.Equal(3, (await shelf.Hats.ListAsync(Stop)).Count);
    }

    [Fact]
    public async Task A_printed_hat_comes_back_with_its_lengths()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Hats.SaveAsync(
            Tests.Described.Hat("""
                {"name":"Typed in","weightClass":3,"printed":{"unit":"yd","allowanceIncluded":true,
                 "sizes":[{"size":"C","headCm":52,"parts":[{"part":"stripe 1","yarn":"A","length":10},{"yarn":"M","length":2.5}]}]}}
                """),
            Stop);
        var hat = Assert.IsType<PrintedHat>(await shelf.Hats.FindAsync(id, Stop));
        Assert.True(hat.AllowanceIncluded);
        Assert.Equal([("stripe 1", "A", 9.144m), (null, "M", 2.286m)], hat.Sizes[0].Lines.Select(l => (l.Part, l.Yarn, l.Length)));
    }

    private static Said Described() => Tests.Described.Hat(
        """{"name":"Bobbin","weightClass":3,"construction":"brim-up-round","gauge":{"stitchesPer10cm":22,"rowsPer10cm":30},"sizes":[{"size":"C","headCm":52}]}""");
}
