using Microsoft.EntityFrameworkCore;
using Xunit;

namespace StashMatch.Store.Tests.Leftovers;

public sealed class NewCodesTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_kept_code_that_is_an_abbreviation_changes_once_and_is_said_once()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Wet slate"), cancel: Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss("Quince"), cancel: Stop);
        await using (var context = shelf.Open())
        {
            await context.Leftovers.Where(r => r.Name == "Wet slate").ExecuteUpdateAsync(r => r.SetProperty(x => x.Code, "Ws"), Stop);
        }

        var codes = shelf.Codes;
        await codes.RenewAsync(Stop);
        Assert.Equal("Wet slate: We, not Ws", await codes.ReadAsync(Stop));
        Assert.Equal(["Qu", "We"], (await shelf.Leftovers.ListAsync(Stop)).Select(l => l.Code).Order());
        await codes.SeenAsync(Stop);
        await codes.RenewAsync(Stop);
        Assert.Null(await codes.ReadAsync(Stop));
    }
}
