using StashMatch.Knitting.Hats;
using Xunit;

namespace StashMatch.Store.Tests.Knitter;

public sealed class KnitterStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_testers_said_of_a_hat_is_its_usage_alone_and_the_knitters_own_stays_for_all_others()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Knitter.AddAsync("a swatch", new Calibration(1.30, 0.02), Stop);
        var own = await shelf.Knitter.UsageAsync(Stop);
        await shelf.Knitter.TakeOverAsync("side-to-side-sample", "2 testers", new Usage(1.02, 0.06), Stop);
        Assert.Equal(own, await shelf.Knitter.UsageAsync(Stop));
        Assert.Equal(new Usage(1.02, 0.06, true), await UsageOfAsync(shelf, "side-to-side-sample"));
        Assert.Equal(own, await UsageOfAsync(shelf, "brim-up-sample"));
        Assert.Equal(Usage.PrintedBare, await UsageOfAsync(shelf, "practice-hat"));
        Assert.Equal(new Usage(1.02, 0.06, true), ((HatDesign)(await shelf.Hats.ListAsync(Stop)).Single(h => h.Id == "side-to-side-sample").Hat).Usage);
    }

    [Fact]
    public async Task Switched_off_or_forgotten_it_counts_no_more_and_taking_over_again_takes_its_place()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Knitter.TakeOverAsync("practice-hat", "2 testers", new Usage(0.97, 0.05), Stop);
        await shelf.Knitter.TakeOverAsync("practice-hat", "3 testers", new Usage(1.01, 0.04), Stop);
        var known = Assert.Single(await shelf.Knitter.ListAsync(Stop));
        Assert.Equal(("3 testers", "practice-hat"), (known.From, known.HatId));
        Assert.Equal(new Usage(1.01, 0.04, true), await UsageOfAsync(shelf, "practice-hat"));
        await shelf.Knitter.SwitchAsync(known.Id, true, Stop);
        Assert.Equal(Usage.PrintedBare, await UsageOfAsync(shelf, "practice-hat"));
        Assert.True((await shelf.Knitter.OfHatAsync("practice-hat", Stop))!.SwitchedOff);
        await shelf.Knitter.SwitchAsync(known.Id, false, Stop);
        Assert.Equal(1.01, (await UsageOfAsync(shelf, "practice-hat")).Factor);
        await shelf.Knitter.RemoveAsync(known.Id, Stop);
        Assert.Equal(Usage.PrintedBare, await UsageOfAsync(shelf, "practice-hat"));
    }

    [Fact]
    public async Task A_hat_that_names_its_own_factor_keeps_it_and_a_hat_forgotten_takes_its_testers_along()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Hats.SaveAsync(
            Described.Hat("""
                {"name":"Nest","weightClass":1,"construction":"brim-up-round","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},"sizes":[{"size":"C","headCm":52}],
                 "usage":{"factor":1.05,"spreadPercent":5}}
                """), Stop);
        await shelf.Knitter.TakeOverAsync(id, "2 testers", new Usage(1.2, 0.06), Stop);
        Assert.Equal(1.05, (await UsageOfAsync(shelf, id)).Factor);
        Assert.True(await shelf.Hats.RemoveAsync(id, Stop));
        Assert.Empty(await shelf.Knitter.ListAsync(Stop));
    }

    private static async Task<Usage> UsageOfAsync(Shelf shelf, string id)
    {
        var hat = (await shelf.Hats.FindAsync(id, Stop))!;
        Assert.True(hat.TryNeeds(hat.SizeNames[0], hat.CountsFor(hat.SizeNames[0])[0], out var needs, out _));
        return needs.Usage;
    }
}
