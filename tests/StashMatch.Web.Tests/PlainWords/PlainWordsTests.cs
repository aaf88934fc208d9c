using System.Runtime.CompilerServices;
using Xunit;

namespace StashMatch.Web.Tests.PlainWords;

/// <summary>Say it as one knitter would say it to another across a table.</summary>
public sealed class PlainWordsTests
{
    private const int MostWords = 15;

    private static readonly Phrases Old = Phrases.Read("old-phrases.txt");
    private static readonly Phrases American = Phrases.Read("british.txt");

    [Fact]
    public void No_old_phrase_is_said_on_a_screen_in_print_or_in_a_message()
    {
        Assert.True(Old.Count > 100);
        AssertNone(Everything().SelectMany(t => Old.In(t.Text).Select(wrong => $"{t.Where}: {wrong} in “{t.Text}”")));
    }

    [Fact]
    public void Everything_is_spelled_in_British_English() =>
        AssertNone(Everything().SelectMany(t => American.In(t.Text).Select(wrong => $"{t.Where}: {wrong} in “{t.Text}”")));

    [Fact]
    public void No_sentence_of_a_screen_has_more_than_15_words()
    {
        var texts = Words().ToList();
        Assert.True(texts.Count > 600);
        AssertNone(texts.SelectMany(t => Sayable.Sentences(t.Text).Where(s => Sayable.WordsIn(s) > MostWords)
            .Select(s => $"{t.Where}: {Sayable.WordsIn(s)} words in “{s}”")));
    }

    [Fact]
    public void No_page_has_sentences_of_its_own_in_its_markup() =>
        AssertNone(Markup().Where(t => Sayable.WordsIn(t.Text) > 3).Select(t => $"{t.Where}: “{t.Text}”"));

    [Theory]
    [InlineData("$\"{who} has {(n == 1 ? \"one ball\" : $\"{n} balls\")}. Weigh it.\"", "Moss has Moss balls. Weigh it.|Moss has one ball. Weigh it.")]
    [InlineData("a switch { 1 => \"one\", _ => \"two \" + \"words\" }", "one|two words")]
    [InlineData("x ?? \"none\"", "Moss|none")]
    public void All_that_a_text_can_say_is_looked_at(string expression, string said) =>
        Assert.Equal(said.Split('|'), Sayable.In($"class C {{ string A = {expression}; }}").Select(t => t.Text).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("<p>One two three four.</p>", "One two three four.")]
    [InlineData("<p>@W.Said(x, (y)) <b aria-label=\"Look at me\">@n</b></p>", "Look at me")]
    [InlineData("@if (a > b)\n{\n  <li>told @(c ? \"x\" : \"y\")</li>\n}\n@code { string s = \"no\"; }", "told")]
    public void What_markup_says_by_itself_is_seen(string razor, string said) => Assert.Equal([said], RazorText.In(razor).Select(t => t.Text));

    [Theory]
    [InlineData("There is enough, with your reserve.", 6)]
    [InlineData("Keep 10 % and 12.5 m / 13.7 yd – no more.", 6)]
    public void Words_are_counted_as_people_count_them(string sentence, int words) => Assert.Equal(words, Sayable.WordsIn(sentence));

    private static void AssertNone(IEnumerable<string> wrong)
    {
        var all = wrong.Distinct(StringComparer.Ordinal).ToList();
        Assert.True(all.Count == 0, $"{all.Count}:\n{string.Join('\n', all.Take(200))}");
    }

    private static IEnumerable<(string Where, string Text)> Everything() => Messages().Concat(Markup());

    // The classes of words.
    private static IEnumerable<(string Where, string Text)> Words() =>
        Texts(Files("*Words.cs").Append(Path.Combine(Root(), "src", "StashMatch.Web", "Pieces", "Terms.cs"))
            .Where(f => !f.EndsWith("ColourWords.cs", StringComparison.Ordinal)));

    // Every text in the program that is more than a word.
    private static IEnumerable<(string Where, string Text)> Messages() =>
        Texts(Files("*.cs")
            .Where(f => !f.Contains("Migrations", StringComparison.Ordinal) && !f.EndsWith("HelpWords.cs", StringComparison.Ordinal) && !IsTalkToOurselves(f)))
            .Where(t => t.Text.Contains(' ', StringComparison.Ordinal) && t.Text.Count(char.IsLetter) > 3);

    // What only we read: rules broken inside the matcher.
    private static bool IsTalkToOurselves(string file) => Path.GetFileName(file) is "Checker.cs";

    private static IEnumerable<(string Where, string Text)> Texts(IEnumerable<string> files) =>
        files.SelectMany(f => Sayable.In(File.ReadAllText(f)).Select(t => ($"{Path.GetFileName(f)}({t.Line})", t.Text)));

    private static IEnumerable<(string Where, string Text)> Markup() =>
        Files("*.razor").SelectMany(f => RazorText.In(File.ReadAllText(f)).Select(t => ($"{Path.GetFileName(f)}({t.Line})", t.Text)));

    private static IEnumerable<string> Files(string pattern) => Directory.EnumerateFiles(Path.Combine(Root(), "src"), pattern, SearchOption.AllDirectories)
        .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"))
        .Order(StringComparer.Ordinal);

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", ".."));
}
