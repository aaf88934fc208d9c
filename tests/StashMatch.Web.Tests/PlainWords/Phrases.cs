using System.Text.RegularExpressions;

namespace StashMatch.Web.Tests.PlainWords;

/// <summary>A list of phrases not to be used, each with what to say instead.</summary>
internal sealed class Phrases
{
    private readonly List<(Regex Old, string Say)> _list;

    private Phrases(IEnumerable<string> lines) =>
        _list = [.. lines.Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split(" = ", 2)).Select(p => (ToRegex(p[0]), $"“{p[0]}”: say {p[1]}"))];

    public int Count => _list.Count;

    public static Phrases Read(string name) => new(File.ReadLines(Path.Combine(AppContext.BaseDirectory, "PlainWords", name)));

    /// <summary>What is wrong with a text; nothing where nothing is.</summary>
    public IEnumerable<string> In(string text) => _list.Where(p => p.Old.IsMatch(text)).Select(p => p.Say);

    private static Regex ToRegex(string phrase) =>
        new(
            $@"(?<![\w-]){Regex.Escape(phrase).Replace(@"\*", @"\w*", StringComparison.Ordinal)}(?![\w-])",
            RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
            TimeSpan.FromSeconds(5));
}
