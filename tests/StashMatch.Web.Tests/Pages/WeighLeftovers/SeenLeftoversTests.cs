using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pages.WeighLeftovers;
using Xunit;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class SeenLeftoversTests : IDisposable
{
    private readonly HomeApp _app = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private LeftoverStore Store => _app.Services.GetRequiredService<LeftoverStore>();

    [Fact]
    public async Task Two_pages_hold_the_same_leftovers_until_one_changes()
    {
        _app.Client.Dispose();
        var seen = new SeenLeftovers();
        await WeighAsync("Moss");
        await WeighAsync("Oat");
        var (first, second) = (await SeeAsync(seen), await SeeAsync(seen));
        Assert.Same(first, second);
        await Store.ReweighAsync("moss", new Weighing(Grams.From(7), default, Grams.From(1)), Stop);
        var third = await SeeAsync(seen);
        Assert.Equal(7m, third.Single(l => l.Of.Id == "moss").Grams);
        Assert.Equal(20m, first.Single(l => l.Of.Id == "moss").Grams);
        Assert.Same(first.Single(l => l.Of.Id == "oat"), third.Single(l => l.Of.Id == "oat"));
    }

    [Fact]
    public async Task Whatever_is_done_with_a_leftover_is_seen_by_the_next_page()
    {
        _app.Client.Dispose();
        var seen = new SeenLeftovers();
        var plans = _app.Services.GetRequiredService<PlanStore>();
        await WeighAsync("Moss");
        await SeeAsync(seen);
        foreach (var act in new Func<Task>[]
        {
            () => Store.UseAsync("moss", Grams.From(1), cancel: Stop),
            () => Store.EditAsync("moss", d => d with { Note = "soft" }, Stop),
            () => Store.UndoAsync("moss", Stop),
            () => plans.SaveAsync(new NewPlan("Hat", "practice-hat", "C", 4, "own-colours", [new PlannedPart("moss", "brim", 1_000)]), Stop),
            () => _app.Services.GetRequiredService<PictureStore>().KeepAsync("moss", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], Stop),
            () => Store.KnitUpAsync("moss", Stop),
            () => Store.RemoveAsync("moss", Stop),
            () => Store.UndoAsync("moss", Stop),
        })
        {
            await act();
            Assert.Equal(await Store.ListAsync(Stop), (await SeeAsync(seen)).Select(l => l.Of));
        }
    }

    public void Dispose() => _app.Dispose();

    private async Task<IReadOnlyList<StashMatch.Web.Pieces.Listed>> SeeAsync(SeenLeftovers seen) => seen.See(await Store.ListAsync(Stop));

    private Task<string> WeighAsync(string name) => Store.WeighAsync(
        new NewLeftover(name, new Weighing(Grams.From(20), default, Grams.From(1)), new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed)), cancel: Stop);
}
