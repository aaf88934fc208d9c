using System.Globalization;
using System.Text.Json;

namespace StashMatch.Web.OpenInterface;

/// <summary>Where JSON that is not sound stops being so.</summary>
internal static class JsonFault
{
    /// <summary>The field that was being read: <c>leftovers[0].grams</c>; "body" where it was none.</summary>
    public static string FieldOf(ReadOnlySpan<byte> json)
    {
        var path = new Stack<(string Name, int Index)>();
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = 16 });
        try
        {
            while (reader.Read())
            {
                Step(ref reader, path);
            }
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // Here it stops: the path so far is the answer.
        }

        var field = string.Concat(path.Reverse().Select(p => p.Index >= 0 ? string.Create(CultureInfo.InvariantCulture, $"[{p.Index}]") : $".{p.Name}")).TrimStart('.');
        return field.Length > 0 ? field : "body";
    }

    private static void Step(ref Utf8JsonReader reader, Stack<(string Name, int Index)> path)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                path.Pop();
                path.Push((reader.GetString() ?? "", -1));
                return;
            case JsonTokenType.StartObject:
                path.Push(("", -1));
                return;
            case JsonTokenType.StartArray:
                path.Push(("", 0));
                return;
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                path.Pop();
                break;
        }

        if (path.TryPeek(out var top) && top.Index >= 0)
        {
            path.Pop();
            path.Push(("", top.Index + 1));
        }
    }
}
