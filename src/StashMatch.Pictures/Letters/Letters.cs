using System.Globalization;
using System.Text;

namespace StashMatch.Pictures;

/// <summary>Outlines of letters, plain and bold, of the typeface the pages are set in. Kept as text, a letter a line: weight, number, advance, path, in thousandths of the size.</summary>
internal static class Letters
{
    private const int Steps = 5;
    private const double Unit = 1000;
    private static readonly Dictionary<(bool Bold, int Rune), Letter> Known = Read();

    /// <summary>How wide words are at a size.</summary>
    public static double Width(string words, double size, bool bold = false) => Set(words, bold).Sum(l => l.Advance) * size / Unit;

    /// <summary>The outlines of words, from 0 on the baseline to the right, y downwards.</summary>
    public static IEnumerable<IReadOnlyList<Point>> Outlines(string words, double size, bool bold = false)
    {
        var at = 0.0;
        foreach (var letter in Set(words, bold))
        {
            foreach (var outline in letter.Outlines)
            {
                yield return [.. outline.Select(p => new Point((at + p.X) * size / Unit, -p.Y * size / Unit))];
            }

            at += letter.Advance;
        }
    }

    /// <summary>As much of the words as has room, with an ellipsis where some is left out.</summary>
    public static string Cut(string words, double size, double room, bool bold = false)
    {
        if (Width(words, size, bold) <= room)
        {
            return words;
        }

        var kept = new StringInfo(words);
        for (var n = kept.LengthInTextElements - 1; n > 0; n--)
        {
            var less = kept.SubstringByTextElements(0, n).TrimEnd() + "…";
            if (Width(less, size, bold) <= room)
            {
                return less;
            }
        }

        return "…";
    }

    // Where we have no outline of a letter, an empty frame stands for it.
    private static IEnumerable<Letter> Set(string words, bool bold)
    {
        foreach (var rune in words.EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark)
            {
                continue;
            }

            yield return Known.GetValueOrDefault((bold, Rune.IsWhiteSpace(rune) ? ' ' : rune.Value)) ?? Frame;
        }
    }

    private static Letter Frame { get; } = new(620,
    [
        [new(60, 0), new(60, 668), new(560, 668), new(560, 0)],
        [new(115, 55), new(505, 55), new(505, 613), new(115, 613)],
    ]);

    private static Dictionary<(bool, int), Letter> Read()
    {
        using var stream = typeof(Letters).Assembly.GetManifestResourceStream("letters.txt") ?? throw new InvalidOperationException("The letters are not in the program.");
        using var lines = new StreamReader(stream, Encoding.UTF8);
        var known = new Dictionary<(bool, int), Letter>();
        while (lines.ReadLine() is { } line)
        {
            var parts = line.Split(' ', 4);
            if (line.Length > 0 && line[0] != '#')
            {
                known[(parts[0] == "700", int.Parse(parts[1], NumberStyles.HexNumber, CultureInfo.InvariantCulture))] = new(int.Parse(parts[2], CultureInfo.InvariantCulture), OutlinesOf(parts[3]));
            }
        }

        // The typeface's nought has a stroke through it, which reads as another letter in a weight: an O drawn in to its width stands for it.
        foreach (var bold in new[] { false, true })
        {
            if (known.TryGetValue((bold, '0'), out var nought) && known.TryGetValue((bold, 'O'), out var round))
            {
                var narrow = (double)nought.Advance / round.Advance;
                known[(bold, '0')] = nought with { Outlines = [.. round.Outlines.Select(o => (IReadOnlyList<Point>)[.. o.Select(p => p with { X = p.X * narrow })])] };
            }
        }

        return known;
    }

    private static List<IReadOnlyList<Point>> OutlinesOf(string path)
    {
        var (outlines, outline, at) = (new List<IReadOnlyList<Point>>(), new List<Point>(), 0);
        Point Next() => new(Number(path, ref at), Number(path, ref at));
        while (at < path.Length)
        {
            switch (path[at++])
            {
                case 'M':
                case 'L':
                    outline.Add(Next());
                    break;
                case 'Q':
                    var (a, b, c) = (outline[^1], Next(), Next());
                    for (var i = 1; i <= Steps; i++)
                    {
                        var t = (double)i / Steps;
                        var (wa, wb, wc) = ((1 - t) * (1 - t), 2 * t * (1 - t), t * t);
                        outline.Add(new((wa * a.X) + (wb * b.X) + (wc * c.X), (wa * a.Y) + (wb * b.Y) + (wc * c.Y)));
                    }

                    break;
                default:
                    outlines.Add(outline);
                    outline = [];
                    break;
            }
        }

        return outlines;
    }

    private static int Number(string path, ref int at)
    {
        var start = path[at] == ' ' ? ++at : at;
        while (at < path.Length && (char.IsAsciiDigit(path[at]) || (path[at] == '-' && at == start)))
        {
            at++;
        }

        return int.Parse(path.AsSpan(start, at - start), CultureInfo.InvariantCulture);
    }

    private sealed record Letter(int Advance, IReadOnlyList<IReadOnlyList<Point>> Outlines);
}
