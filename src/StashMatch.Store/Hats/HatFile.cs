using System.Diagnostics.CodeAnalysis;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StashMatch.Store;

/// <summary>
/// A hat to share: a JSON file of two members, <c>stashMatchHat</c>, the version of the file, and <c>hat</c>, the description as the open
/// interface takes it. Readers take their own version and older ones, and refuse a newer one unread.
/// </summary>
public static class HatFile
{
    /// <summary>The version written.</summary>
    public const int Version = 1;

    /// <summary>The largest file read, characters.</summary>
    public const int MostCharacters = 1_000_000;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        NewLine = "\n",
        MaxDepth = 16,
    };

    /// <summary>The file of a hat.</summary>
    public static string Write(Said hat)
    {
        ArgumentNullException.ThrowIfNull(hat);
        var file = new JsonObject { ["stashMatchHat"] = Version, ["hat"] = SaidInJson.Write(hat, HatFields.All) };
        return file.ToJsonString(Json) + "\n";
    }

    /// <summary>Reads a file.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="hat">The hat, when the answer is true: one that can be made a hat of.</param>
    /// <param name="message">What stands in the way otherwise, in plain words.</param>
    public static bool TryRead(string? text, [NotNullWhen(true)] out Said? hat, [NotNullWhen(false)] out string? message)
    {
        (hat, message) = (null, null);
        var errors = new FieldErrors();
        if (string.IsNullOrWhiteSpace(text) || text.Length > MostCharacters)
        {
            message = "The file is empty, or too long for a hat.";
            return false;
        }

        try
        {
            using var file = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = 16 });
            if (file.RootElement.ValueKind != JsonValueKind.Object
                || !file.RootElement.TryGetProperty("stashMatchHat", out var version) || version.ValueKind != JsonValueKind.Number)
            {
                message = "This is not a hat file: stashMatchHat and a version are missing.";
            }
            else if (!version.TryGetInt32(out var number) || number > Version)
            {
                message = $"This hat is from a newer StashMatch: version {Shorten(version.GetRawText())}, and this one reads up to {Version}. "
                    + "Nothing was changed. Update StashMatch, or ask for an older file.";
            }
            else if (number < 1)
            {
                message = $"There is no version {number} of a hat file.";
            }
            else if (!file.RootElement.TryGetProperty("hat", out var described) || described.ValueKind != JsonValueKind.Object)
            {
                message = "The file has a version but no hat.";
            }
            else
            {
                hat = SaidInJson.Read(described, HatFields.All, errors);
            }
        }
        catch (JsonException e)
        {
            message = e.Path is { Length: > 1 } path ? $"The hat's {path.TrimStart('$', '.')} cannot be read." : "This is not a StashMatch file.";
        }

        if (hat is null)
        {
            message ??= "The file has no hat in it.";
            return false;
        }

        if (!errors.Any && HatText.Read(new Reading(hat, errors)) is not null)
        {
            return true;
        }

        (hat, message) = (null, "The hat cannot be read: " + string.Join("; ", errors.ByField.Take(3).Select(e => $"{e.Key} {e.Value[0]}")) + ".");
        return false;
    }

    private static string Shorten(string text) => text.Length <= 20 ? text : text[..20] + "…";
}
