using StashMatch.Knitting.Hats;
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

    public static TheoryData<string, HatDescription> Wrong() => new()
    {
        { "hat.weightClass", Described() with { WeightClass = 8 } },
        { "hat.construction", Described() with { Construction = "inside-out" } },
        { "hat.gauge.stitchesPer10cm", Described() with { Gauge = new(81, 30) } },
        { "hat.gauge.rowsPer10cm", Described() with { Gauge = new(22, double.NaN) } },
        { "hat.brim.depthCm", Described() with { Brim = new(0, null, null, null, null) } },
        { "hat.brim.fit", Described() with { Brim = new(5, null, "loose", null, null) } },
        { "hat.brim.rib", Described() with { Brim = new(5, null, null, 3, null) } },
        { "hat.brim.bindOff", Described() with { Brim = new(5, null, null, null, "knotted") } },
        { "hat.braids.where", Described() with { Braids = new("beside-brim-too", null) } },
        { "hat.braids.strands", Described() with { Braids = new("between-stripes", "string") } },
        { "hat.crown.decreaseLines", Described() with { Crown = new(2, null) } },
        { "hat.crown.yarn", Described() with { Crown = new(8, "other") } },
        { "hat.crown", Described() with { Construction = "side-to-side", Crown = new(8, null) } },
        { "hat.stripeCounts.least", Described() with { StripeCounts = new(0, 4) } },
        { "hat.stripeCounts.most", Described() with { StripeCounts = new(6, 4) } },
        { "hat.sizes", Described() with { Sizes = [] } },
        { "hat.sizes[0].headCm", Described() with { Sizes = [new("C", null, null, null, null)] } },
        { "hat.sizes[0].heightCm", Described() with { Sizes = [new("C", null, null, 46, null)] } },
        { "hat.sizes[1].size", Described() with { Sizes = [new("C", 52, null, null, null), new("C", 52, null, null, null)] } },
        { "hat.sizes[0].stitches", Described() with { Sizes = [new("C", 52, null, null, -2)] } },
        { "hat.usage.factor", Described() with { Usage = new(9, null) } },
        { "hat.usage.spreadPercent", Described() with { Usage = new(1.1, 60) } },
        { "hat.printed.sizes", Described() with { Printed = new("m", null, null) } },
        { "hat.printed.sizes[0].parts", Described() with { Printed = new("m", null, [new("C", null, [new("stripe 2", "A", 3)])]) } },
        { "hat.printed.sizes[0].parts[0].length", Described() with { Printed = new("m", null, [new("C", null, [new("stripe 1", "A", -3)])]) } },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void What_cannot_be_read_is_named(string field, HatDescription description)
    {
        var errors = new FieldErrors();
        Assert.Null(HatDescriptionReader.Read(description, errors, "hat."));
        Assert.Contains(field, errors.ByField.Keys);
    }

    private static HatDescription Described() => new()
    {
        Name = "Bobbin",
        WeightClass = 3,
        Construction = "brim-up-round",
        Gauge = new(22, 30),
        Sizes = [new("C", 52, null, null, null)],
    };
}
