using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Looks a JSON body over before it is read: every field must be one there is, at every depth, and every text one that can be written down.</summary>
internal static class BodyCheck
{
    private const int MostFaults = 50;

    /// <summary>Looks over a part of a body.</summary>
    /// <param name="part">The part.</param>
    /// <param name="type">What it is to be read as; null for any JSON, of which only the texts are looked at.</param>
    /// <param name="at">Where it stands: "hat", "leftovers[0]"; empty for the whole body.</param>
    /// <param name="errors">Takes a message under each field that is wrong.</param>
    public static void Look(JsonElement part, Type? type, string at, FieldErrors errors)
    {
        if (errors.ByField.Count >= MostFaults)
        {
            return;
        }

        var known = type is null ? null : Body.Json.GetTypeInfo(type);
        switch (part.ValueKind)
        {
            case JsonValueKind.Object:
                LookInside(part, known, at, errors);
                break;
            case JsonValueKind.Array:
                var (i, of) = (0, known?.Kind == JsonTypeInfoKind.Enumerable ? known.ElementType : null);
                foreach (var one in part.EnumerateArray())
                {
                    Look(one, of, $"{at}[{i++}]", errors);
                }

                break;
            case JsonValueKind.String when !IsText(part):
                errors.Add(Field(at), "has an unreadable character in it: half of a pair that stands for one");
                break;
            default:
                break;
        }
    }

    /// <summary>Whether every text in a part can be written down: no half of a surrogate pair, no broken UTF-8.</summary>
    public static bool IsText(JsonElement part)
    {
        try
        {
            switch (part.ValueKind)
            {
                case JsonValueKind.String:
                    part.GetString();
                    return true;
                case JsonValueKind.Object:
                    return part.EnumerateObject().All(p => p.Name.Length >= 0 && IsText(p.Value));
                case JsonValueKind.Array:
                    return part.EnumerateArray().All(IsText);
                default:
                    return true;
            }
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }

    private static void LookInside(JsonElement part, JsonTypeInfo? known, string at, FieldErrors errors)
    {
        var fields = known?.Kind == JsonTypeInfoKind.Object ? known.Properties.ToDictionary(p => p.Name, p => p.PropertyType, StringComparer.Ordinal) : null;
        foreach (var member in part.EnumerateObject())
        {
            string name;
            try
            {
                name = member.Name;
            }
            catch (InvalidOperationException)
            {
                errors.Add(Field(at), "has a field with an unreadable character in its name");
                continue;
            }

            var inside = at.Length == 0 ? name : $"{at}.{name}";
            if (fields is null)
            {
                Look(member.Value, null, inside, errors);
            }
            else if (fields.TryGetValue(name, out var type))
            {
                Look(member.Value, type, inside, errors);
            }
            else if (errors.ByField.Count < MostFaults)
            {
                errors.Add(Field(inside), Like(name, fields.Keys) is { } like
                    ? $"is not a field there is. Did you mean {like}?"
                    : $"is not a field there is; there are {string.Join(", ", fields.Keys.Order(StringComparer.Ordinal).Take(24))}");
            }
        }
    }

    private static string Field(string at) => at.Length switch
    {
        0 => "body",
        > 120 => at[..120] + "…",
        _ => at,
    };

    private static string? Like(string name, IEnumerable<string> fields) => name.Length > 40 ? null
        : fields.Select(f => (Field: f, Apart: Apart(name.ToUpperInvariant(), f.ToUpperInvariant()))).Where(f => f.Apart <= Math.Max(1, f.Field.Length / 4))
            .OrderBy(f => f.Apart).ThenBy(f => f.Field, StringComparer.Ordinal).Select(f => f.Field).FirstOrDefault();

    // How many letters must be put in, taken out, changed, or swapped with the next.
    private static int Apart(string a, string b)
    {
        var apart = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                var least = i == 0 || j == 0 ? i + j
                    : Math.Min(Math.Min(apart[i - 1, j], apart[i, j - 1]) + 1, apart[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                apart[i, j] = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] ? Math.Min(least, apart[i - 2, j - 2] + 1) : least;
            }
        }

        return apart[a.Length, b.Length];
    }
}
