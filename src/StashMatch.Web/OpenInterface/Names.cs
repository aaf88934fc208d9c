using System.Text;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.OpenInterface;

/// <summary>The names the open interface uses: every enum member in lower case with hyphens.</summary>
public static class Names
{
    public static IReadOnlyDictionary<string, Arrangement> Arrangements { get; } =
        Enum.GetValues<Arrangement>().ToDictionary(a => Of(a), a => a, StringComparer.Ordinal);

    public static IReadOnlyDictionary<string, ColourOrder> ColourOrders { get; } =
        Enum.GetValues<ColourOrder>().ToDictionary(o => Of(o), o => o, StringComparer.Ordinal);

    public static IReadOnlyDictionary<string, FibreChoice> FibreChoices { get; } =
        Enum.GetValues<FibreChoice>().ToDictionary(f => Of(f), f => f, StringComparer.Ordinal);

    public static IReadOnlyDictionary<string, bool> NextDoor { get; } =
        new Dictionary<string, bool>(StringComparer.Ordinal) { ["differ"] = false, ["blend"] = true };

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
}
