using Xunit;
using static StashMatch.Pictures.Tests.Colours.Photos;

namespace StashMatch.Pictures.Tests.Colours;

public sealed class PixelBlockTests
{
    [Theory]
    [InlineData(8, 8)]
    [InlineData(160, 160)]
    [InlineData(160, 9)]
    public void A_block_within_bounds_is_read_pixel_by_pixel(int width, int height)
    {
        var block = Block(width, height, (x, _) => Colour(x < 0.5 ? "#102030" : "#A0B0C0"));
        Assert.Equal((width, height), (block.Width, block.Height));
        Assert.Equal("#102030", block[0, height - 1].Hex);
        Assert.Equal("#A0B0C0", block[width - 1, 0].Hex);
    }

    [Theory]
    [InlineData(7, 8)]
    [InlineData(161, 8)]
    [InlineData(160, 161)]
    [InlineData(0, 0)]
    public void A_block_out_of_bounds_is_refused(int width, int height)
    {
        var bytes = Bytes(width, height, (_, _) => default);
        Assert.False(PixelBlock.TryRead(bytes, out _, out var message));
        Assert.StartsWith("the photo", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(195)]
    [InlineData(197)]
    public void A_length_that_is_not_what_its_width_and_height_say_is_refused(int length)
    {
        var bytes = new byte[length];
        if (length >= 4)
        {
            (bytes[0], bytes[2]) = (8, 8);
        }

        Assert.False(PixelBlock.TryRead(bytes, out _, out var message));
        Assert.StartsWith("the photo", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_width_said_larger_than_any_block_takes_no_memory()
    {
        byte[] bytes = [255, 255, 255, 255, 1, 2, 3];
        Assert.False(PixelBlock.TryRead(bytes, out _, out _));
    }
}
