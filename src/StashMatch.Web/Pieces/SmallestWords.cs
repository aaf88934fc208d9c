using StashMatch.Knitting.Quantities;

namespace StashMatch.Web.Pieces;

/// <summary>What is said of the smallest kit, on the page and by the open interface.</summary>
public static class SmallestWords
{
    public const string NoneCanBeKnitted = "None of these sizes and stripe counts can be knitted.";
    public const string NoneFound = "No kit was found in the time allowed. Try fewer sizes or stripe counts.";

    public static string TooLong(string part, Metres planned) => $"No number of these is enough: {Words.The(part)} needs {Shown.BothUp(planned)} in one piece.";

    public static string Proven(bool proven) => proven ? "Nothing lighter is enough." : "This is the lightest found; a lighter one may exist.";

    /// <summary>Which skeins it is made of.</summary>
    public static string Skeins(IEnumerable<string> skeins, string total) => $"{string.Join(" and ", skeins)}: {total} in all.";
}
