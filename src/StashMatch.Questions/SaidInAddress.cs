using System.Globalization;

namespace StashMatch.Questions;

/// <summary>
/// What was said, as the names and texts of an address: numbers as typed, several by naming a field again, whole numbers also with commas.
/// What has fields of its own is its texts in the fields' order with a tilde between: <c>locks=brim~oat</c>.
/// </summary>
public static class SaidInAddress
{
    private const char Between = '~';

    /// <summary>Reads an address; names nobody knows are left alone, as addresses carry more than one question.</summary>
    public static Said Read(IEnumerable<(string Name, string Value)> pairs, IReadOnlyList<Field> fields)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentNullException.ThrowIfNull(fields);
        var all = pairs.Where(p => p.Value.Length > 0).ToList();
        return Said.Of(fields.Select(f => (f, Read(f, [.. all.Where(p => f.Is(p.Name)).Select(p => p.Value)]))).Where(f => !f.Item2.IsNothing));
    }

    /// <summary>Writes the names and texts, in the order of the fields.</summary>
    public static IEnumerable<(string Name, string Value)> Write(Said said, IReadOnlyList<Field> fields)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(fields);
        foreach (var field in fields)
        {
            if (said[field].Each is { } each && field.Kind == FieldKind.Whole)
            {
                yield return (field.Name, string.Join(',', each.Select(e => e.Words)));
            }
            else
            {
                foreach (var one in said[field].Each ?? (said[field].IsNothing ? [] : [said[field]]))
                {
                    yield return (field.Name, Spell(one, field));
                }
            }
        }
    }

    /// <summary>An address: a path, and after a question mark each name and its text.</summary>
    public static string Of(string path, IEnumerable<(string Name, string Value)> pairs) =>
        $"{path}?" + string.Join('&', pairs.Where(p => p.Value.Length > 0).Select(p => $"{p.Name}={Uri.EscapeDataString(p.Value)}"));

    /// <summary>Several texts as one; a tilde within one of them does not part it.</summary>
    public static string Together(params IEnumerable<string> texts) =>
        string.Join(Between, texts.Select(t => t.Replace("%", "%25", StringComparison.Ordinal).Replace("~", "%7E", StringComparison.Ordinal)));

    /// <summary>The texts put together as one.</summary>
    public static IReadOnlyList<string> Apart(string together)
    {
        ArgumentNullException.ThrowIfNull(together);
        return [.. together.Split(Between).Select(Uri.UnescapeDataString)];
    }

    /// <summary>Reads one field from the texts an address gives it.</summary>
    public static Said Read(Field field, IReadOnlyList<string> values)
    {
        ArgumentNullException.ThrowIfNull(field);
        return (field.IsList, values) switch
        {
            (_, []) => Said.Nothing,
            (false, [var one, ..]) => ReadOne(field, one),
            _ when field.Kind == FieldKind.Whole => Said.Several(values.SelectMany(v => v.Split(',')).Take(field.MostOfThem!.Value + 1).Select(v => Said.Typed(v.Trim()))),
            _ => Said.Several(values.Distinct(StringComparer.Ordinal).Take(field.MostOfThem!.Value + 1).Select(v => ReadOne(field, v))),
        };
    }

    private static Said ReadOne(Field field, string value)
    {
        if (field.Kind != FieldKind.Fields || field.OrText)
        {
            return Said.Typed(value);
        }

        // The last field takes what is left over, tildes and all: so it was spelled before tildes within a text were marked.
        var texts = Apart(value);
        var inside = field.Inside.Where(f => !f.IsAside).ToList();
        return inside is [{ IsList: true, OrOne: false } list]
            ? Said.Of((list, Said.Several(texts.Select(Said.Typed))))
            : Said.Of(inside.Select((f, i) => (f, Said.Typed(i < inside.Count - 1 ? texts.ElementAtOrDefault(i) : string.Join(Between, texts.Skip(i))))).Where(f => !f.Item2.IsNothing));
    }

    /// <summary>One value of a field as an address spells it.</summary>
    public static string Spell(Said said, Field field)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(field);
        return said.Words ?? Together(field.Inside.Where(f => !f.IsAside).SelectMany(f => said[f].Each?.Select(e => e.Words ?? "") ?? [said[f].Words ?? ""]));
    }
}
