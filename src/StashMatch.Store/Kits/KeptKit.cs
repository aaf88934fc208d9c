using System.Text.Json;
using System.Text.Json.Nodes;

namespace StashMatch.Store;

/// <summary>
/// A kit as its row keeps it: JSON of the fields of <see cref="KitText"/>, with the version of the layout beside them. What has no version is of
/// the time before there was one, which had the same fields.
/// </summary>
internal static class KeptKit
{
    /// <summary>The version written.</summary>
    public const int Version = 1;

    private const string VersionName = "version";

    public static string Write(Said kit)
    {
        var json = SaidInJson.Write(kit, KitText.Fields);
        json.Insert(0, VersionName, JsonValue.Create(Version));
        return json.ToJsonString();
    }

    public static Said Read(string text)
    {
        using var json = JsonDocument.Parse(text);
        return SaidInJson.Read(json.RootElement, KitText.Fields, new FieldErrors());
    }
}
