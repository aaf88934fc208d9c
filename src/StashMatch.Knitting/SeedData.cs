using System.Text.Json;
using System.Text.Json.Serialization;

namespace StashMatch.Knitting;

/// <summary>Reads the sourced tables that are built into this assembly.</summary>
internal static class SeedData
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    public static IReadOnlyList<T> Rows<T>(string name)
    {
        using var stream = typeof(SeedData).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The table {name} is not built in.");
        return JsonSerializer.Deserialize<List<T>>(stream, Json) ?? [];
    }
}
