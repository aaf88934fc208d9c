using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Questions;

/// <summary>What was said, as JSON: numbers are numbers, and a name nobody knows is refused at whatever depth it stands.</summary>
public static class SaidInJson
{
    /// <summary>Reads an object; what is of the wrong kind or unknown goes to <paramref name="errors"/> under its path: <c>leftovers[0].label.grams</c>.</summary>
    public static Said Read(JsonElement json, IReadOnlyList<Field> fields, FieldErrors errors, string at = "")
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(errors);
        if (json.ValueKind != JsonValueKind.Object)
        {
            errors.Add(at.Length == 0 ? "body" : at.TrimEnd('.'), "must be a JSON object");
            return Said.Nothing;
        }

        var seen = new List<(Field, Said)>();
        foreach (var property in json.EnumerateObject())
        {
            if (NameOf(property) is not { } name)
            {
                errors.Add(at.Length == 0 ? "body" : at.TrimEnd('.'), "has a field with an unreadable character in its name");
                continue;
            }

            var field = fields.FirstOrDefault(f => f.Name == name);
            if (field is null)
            {
                errors.Add(Short(at + name), Unknown(name, fields));
            }
            else if (seen.Exists(s => ReferenceEquals(s.Item1, field)))
            {
                errors.Add(at + name, "is there twice");
            }
            else
            {
                seen.Add((field, property.Value.ValueKind == JsonValueKind.Null ? Said.Nothing : ReadField(property.Value, field, errors, at + name)));
            }
        }

        return Said.Of(seen);
    }

    /// <summary>Writes what was said; a number that cannot be read stays the text it was.</summary>
    public static JsonObject Write(Said said, IReadOnlyList<Field> fields)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(fields);
        var json = new JsonObject();
        foreach (var field in fields.Where(f => !said[f].IsNothing))
        {
            json[field.Name] = said[field].Each is { } each ? new JsonArray([.. each.Select(e => WriteOne(e, field))]) : WriteOne(said[field], field);
        }

        return json;
    }

    // Half a character, escaped, is sound JSON and yet no text.
    private static Said ReadText(JsonElement json, FieldErrors errors, string at)
    {
        try
        {
            return Said.Exact(json.GetString());
        }
        catch (InvalidOperationException)
        {
            errors.Add(at, "has an unreadable character in it");
            return Said.Nothing;
        }
    }

    /// <summary>Whether every text in it can be written down: no half of a character, no broken bytes.</summary>
    public static bool IsText(JsonElement json)
    {
        var errors = new FieldErrors();
        CheckTexts(json, errors, "");
        return !errors.Any;
    }

    private static void CheckTexts(JsonElement json, FieldErrors errors, string at)
    {
        switch (json.ValueKind)
        {
            case JsonValueKind.String:
                ReadText(json, errors, at);
                break;
            case JsonValueKind.Array:
                foreach (var (one, i) in json.EnumerateArray().Select((one, i) => (one, i)))
                {
                    CheckTexts(one, errors, string.Create(CultureInfo.InvariantCulture, $"{at}[{i}]"));
                }

                break;
            case JsonValueKind.Object:
                foreach (var property in json.EnumerateObject())
                {
                    if (NameOf(property) is not { } name)
                    {
                        errors.Add(Short(at), "has a field with an unreadable character in its name");
                    }
                    else
                    {
                        CheckTexts(property.Value, errors, at.Length == 0 ? name : $"{at}.{name}");
                    }
                }

                break;
        }
    }

    private static string Unknown(string name, IReadOnlyList<Field> fields)
    {
        var names = fields.Select(f => f.Name).ToList();
        return Nearest.Of(name, names) is { } meant
            ? $"is not a field there is. Did you mean {meant}?"
            : $"is not a field there is; there are {string.Join(", ", names.Order(StringComparer.Ordinal).Take(24))}";
    }

    private static string Short(string place) => place.Length <= 120 ? place : place[..120] + "…";

    private static string? NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static JsonNode? WriteOne(Said said, Field field) => field.Kind switch
    {
        _ when said.IsNothing => null,
        FieldKind.Fields when said.Words is null => Write(said, field.Inside),
        FieldKind.YesNo => JsonValue.Create(said.Words?.Trim().ToUpperInvariant() is "YES" or "TRUE" or "1" or "X"),
        FieldKind.Anything => JsonNode.Parse(said.Words!),
        FieldKind.Whole or FieldKind.Number when said.IsExact && decimal.TryParse(said.Words, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) => JsonValue.Create(number),
        FieldKind.Whole or FieldKind.Number when TypedNumber.TryRead(said.Words, out var typed, out _) => JsonValue.Create(typed),
        FieldKind.Text when field.Words.Count > 0 && !said.IsExact => JsonValue.Create(said.Words!.Trim().ToLowerInvariant()),
        _ => JsonValue.Create(said.Words),
    };

    private static Said ReadField(JsonElement json, Field field, FieldErrors errors, string at)
    {
        if (!field.IsList || (field.OrOne && json.ValueKind == JsonValueKind.String))
        {
            return ReadOne(json, field, errors, at);
        }

        if (json.ValueKind != JsonValueKind.Array)
        {
            errors.Add(at, "must be a list");
            return Said.Nothing;
        }

        if (json.GetArrayLength() > field.MostOfThem)
        {
            errors.Add(at, field.MustBeSoMany);
            return Said.Nothing;
        }

        return Said.Several([.. json.EnumerateArray().Select((one, i) => ReadOne(one, field, errors, string.Create(CultureInfo.InvariantCulture, $"{at}[{i}]")))]);
    }

    private static Said ReadOne(JsonElement json, Field field, FieldErrors errors, string at)
    {
        switch (field.Kind, json.ValueKind)
        {
            case (FieldKind.Anything, _):
                CheckTexts(json, errors, at);
                return Said.Exact(json.GetRawText());
            case (FieldKind.Text, JsonValueKind.String):
            case (FieldKind.Fields, JsonValueKind.String) when field.OrText:
                return ReadText(json, errors, at);
            case (FieldKind.Whole or FieldKind.Number, JsonValueKind.Number):
                return Said.Exact(json.GetRawText());
            case (FieldKind.YesNo, JsonValueKind.True or JsonValueKind.False):
                return Said.Exact(json.ValueKind == JsonValueKind.True ? "yes" : "no");
            case (FieldKind.Fields, JsonValueKind.Object):
                return Read(json, field.Inside, errors, at + ".");
            default:
                errors.Add(at, field.Kind switch
                {
                    FieldKind.Text => "must be text, in quotes",
                    FieldKind.Whole or FieldKind.Number => "must be a number, written without quotes",
                    FieldKind.YesNo => "must be true or false",
                    _ => field.OrText ? "must be a text or an object" : "must be an object",
                });
                return Said.Nothing;
        }
    }
}
