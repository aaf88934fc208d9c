using System.Buffers.Binary;
using StashMatch.Knitting.Colours;
using Xunit;
using static StashMatch.Pictures.Tests.Colours.Photos;

namespace StashMatch.Pictures.Tests.Colours;

public sealed class ThumbnailTests
{
    [Theory]
    [InlineData(160, 120, 64)]
    [InlineData(120, 160, 64)]
    [InlineData(30, 40, 30)]
    public void It_is_a_small_square_png(int width, int height, int side)
    {
        var png = Thumbnail.Of(Block(width, height, (_, _) => Colour("#5B7A3A")));
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
        Assert.Equal((side, side), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        Assert.True(png.Length < 1000);
    }

    [Fact]
    public void Even_the_noisiest_photo_stays_within_bounds()
    {
        var noise = new Random(7);
        var png = Thumbnail.Of(Block(160, 160, (_, _) => YarnColour.FromRgb((byte)noise.Next(256), (byte)noise.Next(256), (byte)noise.Next(256)), 255));
        Assert.InRange(png.Length, 4_000, Thumbnail.MostBytes);
        Assert.True(Thumbnail.MostBytes > Thumbnail.Side * ((Thumbnail.Side * 3) + 1) + 1024);
    }

    [Fact]
    public void The_same_block_gives_the_same_bytes() =>
        Assert.Equal(Thumbnail.Of(Ball("#5B7A3A", "#EDE6D6")), Thumbnail.Of(Ball("#5B7A3A", "#EDE6D6")));
}
