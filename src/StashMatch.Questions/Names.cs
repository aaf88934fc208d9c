using System.Text;

namespace StashMatch.Questions;

/// <summary>The words for a member of an enumeration, everywhere: lower case with hyphens.</summary>
public static class Names
{
    /// <summary>Every word of an enumeration with its member, in the members' order.</summary>
    public static IReadOnlyDictionary<string, T> All<T>()
        where T : struct, Enum => Table<T>.ByWord;

    /// <summary>OwnColours is "own-colours".</summary>
    public static string Of<T>(T value)
        where T : struct, Enum
    {
        var name = new StringBuilder();
        foreach (var letter in value.ToString())
        {
            if (char.IsUpper(letter) && name.Length > 0)
            {
                name.Append('-');
            }

            name.Append(char.ToLowerInvariant(letter));
        }

        return name.ToString();
    }

    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly IReadOnlyDictionary<string, T> ByWord = new OrderedDictionary<string, T>(
            Enum.GetValues<T>().Select(v => KeyValuePair.Create(Of(v), v)), StringComparer.Ordinal);
    }
}
