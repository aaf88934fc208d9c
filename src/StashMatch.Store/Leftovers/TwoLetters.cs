namespace StashMatch.Store;

/// <summary>The code on a leftover's tag: two letters from its name, a capital and a small one, the first free pair in a fixed order.</summary>
public static class TwoLetters
{
    private const int Pairs = 26 * 26;

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

        return (taken.Count < Pairs ? Candidates(words, letters).FirstOrDefault(c => !taken.Contains(c)) : null) ?? Pair(letters[0], letters.Length > 1 ? letters[1] : 'A');
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
