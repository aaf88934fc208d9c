using Microsoft.EntityFrameworkCore;
using Xunit;

namespace StashMatch.Store.Tests.Leftovers;

public sealed class PictureStoreTests
{
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 1, 2, 3];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_picture_is_kept_replaced_and_taken_off()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var pictures = shelf.Pictures;
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        Assert.False((await shelf.Leftovers.FindAsync(id, Stop))!.HasPicture);
        Assert.True(await pictures.KeepAsync(id, Png, Stop));
        Assert.True((await shelf.Leftovers.FindAsync(id, Stop))!.HasPicture);
        Assert.Equal(Png, await pictures.FindAsync(id, Stop));
        Assert.True(await pictures.KeepAsync(id, [.. Png, 4], Stop));
        Assert.Equal(12, (await pictures.FindAsync(id, Stop))!.Length);
        Assert.True(await pictures.KeepAsync(id, null, Stop));
        Assert.Null(await pictures.FindAsync(id, Stop));
        Assert.False(await pictures.KeepAsync("nobody", Png, Stop));
    }

    [Fact]
    public async Task Only_a_small_png_is_kept()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await Assert.ThrowsAsync<ArgumentException>(() => shelf.Pictures.KeepAsync(id, "<svg onload=alert(1)>"u8.ToArray(), Stop));
        await Assert.ThrowsAsync<ArgumentException>(() => shelf.Pictures.KeepAsync(id, [.. Png, .. new byte[PictureStore.MostBytes]], Stop));
    }

    [Fact]
    public async Task A_picture_goes_along_with_everything_and_goes_when_everything_goes()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await shelf.Pictures.KeepAsync(id, Png, Stop);
        var file = await shelf.Everything.WriteAsync(Stop);
        await shelf.Everything.DeleteAsync(backupsToo: false, Stop);
        await using (var context = shelf.Open())
        {
            Assert.Equal(0, await context.Set<Store.Data.PictureRow>().CountAsync(Stop));
        }

        Assert.False((await shelf.Everything.ReadAsync(file, Stop)).Any);
        Assert.Equal(Png, await shelf.Pictures.FindAsync(id, Stop));
        Assert.Equal(file, await shelf.Everything.WriteAsync(Stop));
    }
}
