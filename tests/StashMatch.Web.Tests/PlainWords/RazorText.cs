using System.Text.RegularExpressions;

namespace StashMatch.Web.Tests.PlainWords;

/// <summary>What a Razor file says by itself, in text and in attributes people read or hear.</summary>
internal static partial class RazorText
{
    public static IEnumerable<(int Line, string Text)> In(string razor)
    {
        var markup = Statements().Replace(Code().Replace(Comment().Replace(razor, Blank), Blank), Blank);
        foreach (Match told in Attribute().Matches(markup))
        {
            yield return (LineOf(markup, told.Index), told.Groups["text"].Value.Trim());
        }

        // What stands between tags, without what is filled in.
        foreach (Match told in Between().Matches(Tag().Replace(FilledIn().Replace(markup, Blank), m => "<" + Blank(m) + ">")))
        {
            var text = Marks().Replace(told.Groups["text"].Value, " ").Trim();
            if (text.Any(char.IsLetter))
            {
                yield return (LineOf(markup, told.Index), Spaces().Replace(text, " "));
            }
        }
    }

    private static string Blank(Match m) => string.Concat(m.Value.Select(c => c == '\n' ? '\n' : ' '));

    private static int LineOf(string text, int at) => text.AsSpan(0, Math.Min(at, text.Length)).Count('\n') + 1;

    [GeneratedRegex(@"@\*.*?\*@", RegexOptions.Singleline, 5000)]
    private static partial Regex Comment();

    [GeneratedRegex(
        @"^@code \{.*\z|<style>.*?</style>|^@(page|using|attribute|implements|inherits|layout|inject|namespace)\b[^\n]*",
        RegexOptions.Singleline | RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        5000)]
    private static partial Regex Code();

    [GeneratedRegex(
        "\\s(aria-label|placeholder|title|alt|Label|Title|Caption|Hint|Called)=\"(?<text>[^\"@]*[a-z][^\"@]*)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Attribute();

    // @Words.Of(x), @(…) with brackets inside, and Razor's own statements.
    [GeneratedRegex(
        @"@\((?>[^()]+|\((?<deep>)|\)(?<-deep>))*(?(deep)(?!))\)|@[\w.]+(\[[^\]]*\])?(\((?>[^()]+|\((?<d2>)|\)(?<-d2>))*(?(d2)(?!))\))?",
        RegexOptions.ExplicitCapture,
        5000)]
    private static partial Regex FilledIn();

    [GeneratedRegex("<[/!]?[A-Za-z](\"[^\"]*\"|[^>\"])*>", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Tag();

    [GeneratedRegex(">(?<text>[^<]*)<", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Between();

    // @if (…), @foreach (…) and their like, and what is declared between them.
    [GeneratedRegex(
        @"(@|\belse )(if|foreach|for|switch|while)\s*\((?>[^()]+|\((?<deep>)|\)(?<-deep>))*(?(deep)(?!))\)"
            + @"|@?\belse\b(?=\s*\{)|\bvar \(?\w[^;]*;|\bcase [^:]*:|\bbreak;",
        RegexOptions.ExplicitCapture,
        5000)]
    private static partial Regex Statements();

    [GeneratedRegex(@"[{}]|&\w+;", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Marks();

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Spaces();
}
