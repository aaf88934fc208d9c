using Xunit;

namespace StashMatch.Store.Tests.Phones;

public sealed class PhoneStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_phone_comes_in_until_it_is_shut_out_and_then_never_again()
    {
        await using var shelf = await Shelf.ReadyAsync();
        Assert.False(await shelf.Phones.MayComeInAsync(Guid.NewGuid(), Stop));
        var (kitchen, other) = (await shelf.Phones.PairAsync("kitchen phone", Stop), await shelf.Phones.PairAsync(new string('x', 200), Stop));
        Assert.True(await shelf.Phones.MayComeInAsync(kitchen, Stop));
        Assert.Equal(2, (await shelf.Phones.ListAsync(Stop)).Count);
        Assert.True(await shelf.Phones.RevokeAsync(kitchen, Stop));
        Assert.False(await shelf.Phones.RevokeAsync(kitchen, Stop));
        Assert.False(await shelf.Phones.MayComeInAsync(kitchen, Stop));
        Assert.Equal((other, 80), (Assert.Single(await shelf.Phones.ListAsync(Stop)).Id, (await shelf.Phones.ListAsync(Stop))[0].Name.Length));
    }
}
