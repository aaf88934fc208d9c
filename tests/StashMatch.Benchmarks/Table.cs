using System.Diagnostics;

namespace StashMatch.Benchmarks;

/// <summary>Prints tables; figures in milliseconds.</summary>
internal static class Table
{
    public static void Head(string title, params string[] columns)
    {
        Console.WriteLine();
        Console.WriteLine($"**{title}**");
        Console.WriteLine();
        Row(columns);
        Row([.. columns.Select(_ => "---")]);
    }

    public static void Row(params string[] cells) => Console.WriteLine($"| {string.Join(" | ", cells)} |");

    public static void Races(string name, IReadOnlyList<Race> races) => Row(
        name,
        $"{races.Count}",
        Figure(Median(races.Select(r => r.Ours))),
        Figure(races.Max(r => r.Ours)),
        Figure(Median(races.Select(r => r.Theirs))),
        Times(Median(races.Select(r => r.Ratio))),
        Times(races.Min(r => r.Ratio)),
        Share(races.Count(r => r.TheyProved), races.Count),
        Share(races.Count(r => r.WeProved), races.Count),
        races.All(r => r.Agree) ? "yes" : $"{races.Count(r => !r.Agree)} differ");

    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted[sorted.Count / 2];
    }

    public static double Percentile(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToList();
        return sorted[Math.Min(sorted.Count - 1, (int)(share * sorted.Count))];
    }

    public static string Figure(double milliseconds) => milliseconds switch { < 0.1 => $"{milliseconds:0.0000}", < 1 => $"{milliseconds:0.000}", < 10 => $"{milliseconds:0.00}", < 100 => $"{milliseconds:0.0}", _ => $"{milliseconds:0}" };

    public static string Times(double ratio) => ratio switch { < 10 => $"{ratio:0.0} ×", _ => $"{ratio:0} ×" };

    public static string Share(int part, int whole) => $"{100.0 * part / whole:0.#} %";

    /// <summary>The date as the machine's own clock command gives it.</summary>
    public static string Today()
    {
        using var date = Process.Start(new ProcessStartInfo("date", "+%Y-%m-%d") { RedirectStandardOutput = true, UseShellExecute = false })!;
        return date.StandardOutput.ReadToEnd().Trim();
    }
}
