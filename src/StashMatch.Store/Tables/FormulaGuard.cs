namespace StashMatch.Store;

/// <summary>Keeps a spreadsheet from taking a text for a formula: an apostrophe before it on the way out, taken off on the way in. Numbers are left alone.</summary>
internal static class FormulaGuard
{
    private const char Mark = '\'';

    /// <summary>The text as a table carries it.</summary>
    public static string Out(string text) => IsRisky(text) ? Mark + text : text;

    /// <summary>The text a table carried: the opposite of <see cref="Out"/>, whatever the text.</summary>
    public static string In(string cell) => cell.Length > 0 && cell[0] == Mark && IsRisky(cell) ? cell[1..] : cell;

    // One that already begins with apostrophes before a formula's sign gets one more, so that taking one off gives it back.
    private static bool IsRisky(string text)
    {
        var at = 0;
        while (at < text.Length && (text[at] == Mark || char.IsWhiteSpace(text[at])))
        {
            if (text[at] is '\t' or '\r' or '\n')
            {
                return true;
            }

            at++;
        }

        return at < text.Length && text[at] is '=' or '+' or '-' or '@' or '＝' or '＋' or '－' or '＠';
    }
}
