using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>What the proof came to: told with every run, and kept beside the benchmarks' figures by the long form.</summary>
internal static class ProofFigures
{
    private const string Title = "## Proof of the matcher";
    private const string Head = "| what | figure | aim |\n| --- | --- | --- |";
    private static readonly Lock Gate = new();

    /// <summary>Tells a figure; the long form writes it as a row, in place of the one of the same name.</summary>
    public static void Tell(string what, string figure, string aim)
    {
        TestContext.Current.TestOutputHelper?.WriteLine($"{what}: {figure} (aim: {aim})");
        if (!Long.Form)
        {
            return;
        }

        lock (Gate)
        {
            var path = PathOf();
            var text = File.Exists(path) ? File.ReadAllText(path) : "# Figures\n";
            var from = text.IndexOf(Title, StringComparison.Ordinal);
            var to = from < 0 ? -1 : text.IndexOf("\n## ", from + Title.Length, StringComparison.Ordinal);
            var (before, section, after) = from < 0 ? (text.TrimEnd() + "\n\n", "", "") : (text[..from], to < 0 ? text[from..] : text[from..to], to < 0
                ? "" : text[to..]);
            var rows = section.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(2).Where(l => !l.StartsWith($"| {what} |",
                StringComparison.Ordinal));
            var told = rows.Append($"| {what} | {figure} | {aim} |").Order(StringComparer.Ordinal);
            File.WriteAllText(path, $"{before}{Title}\n`tests/run --long` writes this table.\n\n{Head}\n{string.Join('\n', told)}\n{after}");
        }
    }

    private static string PathOf()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "StashMatch.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder!.FullName, "tests", "StashMatch.Benchmarks", "RESULTS.md");
    }
}
