namespace StashMatch.Questions;

/// <summary>Guesses which name was meant.</summary>
internal static class Nearest
{
    private const int MostCharacters = 40;

    /// <summary>The name that is nearest, a quarter of its letters apart at most; null where none is.</summary>
    public static string? Of(string typed, IEnumerable<string> names) => typed.Length > MostCharacters ? null
        : names.Select(n => (Name: n, Apart: Apart(typed.ToUpperInvariant(), n.ToUpperInvariant()))).Where(n => n.Apart <= Math.Max(1, n.Name.Length / 4))
            .OrderBy(n => n.Apart).ThenBy(n => n.Name, StringComparer.Ordinal).Select(n => n.Name).FirstOrDefault();

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
