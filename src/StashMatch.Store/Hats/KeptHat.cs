using System.Text.Json;
using System.Text.Json.Nodes;

namespace StashMatch.Store;

/// <summary>
/// A hat as its row keeps it: JSON of the fields of <see cref="HatFields"/>, with the version of the layout beside them. What has no version is
/// of the time before there was one, which had the same fields.
/// </summary>
internal static class KeptHat
{
    /// <summary>The version written.</summary>
    public const int Version = 1;

    private const string VersionName = "version";

    public static string Write(Said hat)
    {
        var json = SaidInJson.Write(hat, HatFields.All);
        json.Insert(0, VersionName, JsonValue.Create(Version));
        return json.ToJsonString();
    }

    public static Said Read(string text)
    {
        using var json = JsonDocument.Parse(text);
        return Read(json.RootElement);
    }

    // What stands in the file was checked when it was kept; a field a later program added is not for this one.
    public static Said Read(JsonElement json) => SaidInJson.Read(json, HatFields.All, new FieldErrors());
}
