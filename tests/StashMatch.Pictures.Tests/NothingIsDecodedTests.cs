using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using SixLabors.ImageSharp;
using Xunit;

namespace StashMatch.Pictures.Tests;

/// <summary>No bytes of a picture are ever decoded: shown from the compiled program itself.</summary>
public sealed class NothingIsDecodedTests
{
    private static readonly string[] Forbidden = ["Load", "Identify", "DetectFormat", "LoadAsync", "IdentifyAsync", "IdentifyWithFormatAsync", "LoadWithFormatAsync", "DetectFormatAsync", "Decode", "DecodeAsync", "SetDecoder", "AddImageFormat", "AddImageFormatDetector", "get_Default"];

    public static TheoryData<string> Ours =>
        [.. Directory.GetFiles(AppContext.BaseDirectory, "StashMatch.*.dll").Select(Path.GetFileName).OfType<string>().Where(f => !f.Contains("Tests", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Ours))]
    public void Nothing_of_ours_calls_a_reader_of_pictures(string file)
    {
        var called = Called(Path.Combine(AppContext.BaseDirectory, file));
        Assert.DoesNotContain(called, c => c.Type.StartsWith("SixLabors.", StringComparison.Ordinal) && (Forbidden.Contains(c.Member, StringComparer.Ordinal) || c.Type.Contains("Decoder", StringComparison.Ordinal)));
        Assert.DoesNotContain(called, c => c.Type.StartsWith("SkiaSharp", StringComparison.Ordinal) || c.Type.StartsWith("System.Drawing.Bitmap", StringComparison.Ordinal) || c.Type.StartsWith("System.Drawing.Image", StringComparison.Ordinal));
    }

    [Fact]
    public void The_test_sees_calls_where_there_are_some()
    {
        Assert.Contains(Ours, o => o.Data == "StashMatch.Pictures.dll");
        Assert.Contains(Called(typeof(PixelBlock).Assembly.Location), c => c.Type.EndsWith("PngEncoder", StringComparison.Ordinal));
        Assert.Contains(Called(typeof(NothingIsDecodedTests).Assembly.Location), c => c is { Type: "SixLabors.ImageSharp.Image", Member: "DetectFormat" });
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

    private static List<(string Type, string Member)> Called(string assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly));
        var data = file.GetMetadataReader();
        var called = new List<(string, string)>();
        foreach (var handle in data.TypeReferences)
        {
            called.Add((Name(data, handle), ""));
        }

        foreach (var handle in data.MemberReferences)
        {
            var member = data.GetMemberReference(handle);
            if (member.Parent.Kind == HandleKind.TypeReference)
            {
                called.Add((Name(data, (TypeReferenceHandle)member.Parent), data.GetString(member.Name)));
            }
        }

        return called;
    }

    private static string Name(MetadataReader data, TypeReferenceHandle handle)
    {
        var type = data.GetTypeReference(handle);
        return $"{data.GetString(type.Namespace)}.{data.GetString(type.Name)}".TrimStart('.');
    }
}
