namespace StashMatch.Questions;

/// <summary>Grams as people type them, with or without the word behind: "12", "12 g", "12 grams".</summary>
public static class GramText
{
    // The longest first.
    private static readonly string[] Words = ["grammes", "gramme", "grams", "gram", "gr", "g"];

    /// <summary>The text without the word; as it is where that leaves nothing.</summary>
    public static string Bare(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var bare = typed.TrimEnd();
        var unit = Array.Find(Words, w => bare.EndsWith(w, StringComparison.OrdinalIgnoreCase));
        return unit is not null && bare.Length > unit.Length ? bare[..^unit.Length] : typed;
    }
}
