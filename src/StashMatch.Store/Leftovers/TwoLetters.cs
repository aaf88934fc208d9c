namespace StashMatch.Store;

/// <summary>
/// The code on a leftover's tag: two letters from its name, a capital and a small one, the first free pair in a fixed order; never one of the trade's
/// abbreviations.
/// </summary>
public static class TwoLetters
{
    // Wrong side, right side, slip, right-hand and left-hand needle, cast on, bind off, yarn over, place and slip marker, main and contrast colour, stitch,
    // purlwise, weight, knit and purl through the back loop.
    private static readonly HashSet<string> TradeWords =
        new(["Ws", "Rs", "Sl", "Rh", "Lh", "Co", "Bo", "Yo", "Pm", "Sm", "Mc", "Cc", "St", "Pu", "Wt", "Kb", "Pb"], StringComparer.Ordinal);

    private static int Pairs => (26 * 26) - TradeWords.Count;

    /// <summary>Whether two letters are one of the trade's abbreviations, which no tag bears.</summary>
    public static bool IsTradeWord(string code) => TradeWords.Contains(code);

    /// <summary>A code for a name that is not among those taken; once every pair is taken, the first pair of the name again.</summary>
    public static string For(string name, IReadOnlySet<string> taken)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(taken);
        var words = name.Split([' ', '-', '\'', '/'], StringSplitOptions.RemoveEmptyEntries)
            .Select(w => string.Concat(w.ToUpperInvariant().Where(char.IsAsciiLetterUpper)))
            .Where(w => w.Length > 0).ToList();
        var letters = string.Concat(words);
        if (letters.Length == 0)
        {
            letters = "YARN";
        }

        var candidates = Candidates(words, letters).Where(c => !TradeWords.Contains(c));
        return (taken.Count < Pairs ? candidates.FirstOrDefault(c => !taken.Contains(c)) : null) ?? candidates.First();
    }

    // Two words: their first letters. Then the first letter with each later one, then with the whole alphabet, then every pair.
    private static IEnumerable<string> Candidates(List<string> words, string letters)
    {
        if (words.Count > 1)
        {
            yield return Pair(words[0][0], words[1][0]);
        }

        foreach (var second in letters.Skip(1))
        {
            yield return Pair(letters[0], second);
        }

        for (var first = 0; first < 27; first++)
        {
            for (var second = 'A'; second <= 'Z'; second++)
            {
                yield return Pair(first == 0 ? letters[0] : (char)('A' + first - 1), second);
            }
        }
    }

    private static string Pair(char first, char second) => $"{first}{char.ToLowerInvariant(second)}";
}
