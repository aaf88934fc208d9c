using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace StashMatch.Pictures.Tests;

/// <summary>What a compiled assembly calls outside itself, read from its own tables.</summary>
public static class CalledMembers
{
    private static readonly string[] Forbidden = ["Load", "Identify", "DetectFormat", "LoadAsync", "IdentifyAsync", "IdentifyWithFormatAsync", "LoadWithFormatAsync", "DetectFormatAsync", "Decode", "DecodeAsync", "SetDecoder", "AddImageFormat", "AddImageFormatDetector", "get_Default"];

    /// <summary>Calls that would read a picture from bytes.</summary>
    public static IEnumerable<(string Type, string Member)> OfPictureReaders(string assembly) => In(assembly).Where(c =>
        (c.Type.StartsWith("SixLabors.", StringComparison.Ordinal) && (Forbidden.Contains(c.Member, StringComparer.Ordinal) || c.Type.Contains("Decoder", StringComparison.Ordinal)))
        || c.Type.StartsWith("SkiaSharp", StringComparison.Ordinal) || c.Type.StartsWith("System.Drawing.Bitmap", StringComparison.Ordinal) || c.Type.StartsWith("System.Drawing.Image", StringComparison.Ordinal));

    /// <summary>Every type and member it refers to.</summary>
    public static IReadOnlyList<(string Type, string Member)> In(string assembly)
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
