using System.Text.Json;

namespace StashMatch.Store.Tests;

/// <summary>Hats and kits as they are said in JSON.</summary>
internal static class Described
{
    /// <summary>A plain hat, side to side.</summary>
    public const string Plain = """{"name":"Mine","weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40}}""";

    public static Said Hat(string json) => Read(json, HatFields.All);

    public static Said Kit(string json) => Read(json, KitText.Fields);

    private static Said Read(string json, IReadOnlyList<Field> fields)
    {
        var errors = new FieldErrors();
        using var read = JsonDocument.Parse(json);
        var said = SaidInJson.Read(read.RootElement, fields, errors);
        errors.ThrowIfAny(nameof(json));
        return said;
    }
}
