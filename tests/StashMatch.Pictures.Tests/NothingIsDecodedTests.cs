using SixLabors.ImageSharp;
using Xunit;

namespace StashMatch.Pictures.Tests;

/// <summary>No bytes of a picture are ever decoded: shown from the compiled program itself.</summary>
public sealed class NothingIsDecodedTests
{
    public static TheoryData<string> Ours =>
        [.. Directory.GetFiles(AppContext.BaseDirectory, "StashMatch.*.dll").Select(Path.GetFileName).OfType<string>().Where(f => !f.Contains("Tests", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Ours))]
    public void Nothing_of_ours_calls_a_reader_of_pictures(string file)
    {
        Assert.Empty(CalledMembers.OfPictureReaders(Path.Combine(AppContext.BaseDirectory, file)));
    }

    [Fact]
    public void The_test_sees_calls_where_there_are_some()
    {
        Assert.Contains(Ours, o => o.Data == "StashMatch.Pictures.dll");
        Assert.Contains(CalledMembers.In(typeof(PixelBlock).Assembly.Location), c => c.Type.EndsWith("PngEncoder", StringComparison.Ordinal));
        Assert.Contains(CalledMembers.In(typeof(NothingIsDecodedTests).Assembly.Location), c => c is { Type: "SixLabors.ImageSharp.Image", Member: "DetectFormat" });
    }

    [Fact]
    public void The_library_as_we_let_it_in_knows_no_format_at_all()
    {
        Assert.Empty(RawPixels.Only.ImageFormats);
        Assert.Null(Image.DetectFormat(RawPixels.Only, Thumbnail.Of(Colours.Photos.Ball("#5B7A3A", "#EDE6D6"))));
        Assert.ThrowsAny<ImageFormatException>(() => Image.Load(RawPixels.Only, Thumbnail.Of(Colours.Photos.Ball("#5B7A3A", "#EDE6D6"))));
    }

    [Fact]
    public void The_library_may_take_little_memory() =>
        Assert.ThrowsAny<Exception>(() => new Image<SixLabors.ImageSharp.PixelFormats.Rgba32>(RawPixels.Only, 20_000, 20_000).Dispose());

    [Fact]
    public void It_is_the_last_free_line() => Assert.Equal(new Version(2, 0), new Version(typeof(Image).Assembly.GetName().Version!.Major, 0));
}
