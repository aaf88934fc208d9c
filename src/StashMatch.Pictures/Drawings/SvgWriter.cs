using System.Globalization;
using System.Text;

namespace StashMatch.Pictures;

/// <summary>Writes elements; every value and text is escaped, characters XML cannot hold are left out.</summary>
internal sealed class SvgWriter
{
    private const long Fine = 20;
    private readonly StringBuilder text = new();
    private readonly Stack<string> open = new();

    public static string Number(double value)
    {
        var written = Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);
        return written == "-0" ? "0" : written;
    }

    public static string Path(IEnumerable<IReadOnlyList<Point>> lines, bool close)
    {
        var path = new StringBuilder();
        foreach (var line in lines.Where(l => l.Count > 1))
        {
            // Corners after the first are steps from the one before, in twentieths, which is much shorter.
            var (x, y) = (0L, 0L);
            for (var i = 0; i < line.Count; i++)
            {
                var (toX, toY) = ((long)Math.Round(line[i].X * Fine), (long)Math.Round(line[i].Y * Fine));
                var (dx, dy) = (Short(toX - x), Short(toY - y));
                path.Append(i switch { 0 => "M", 1 => "l", _ => dx[0] == '-' ? "" : " " }).Append(dx).Append(dy[0] == '-' ? "" : " ").Append(dy);
                (x, y) = (toX, toY);
            }

            if (close)
            {
                path.Append('Z');
            }
        }

        return path.ToString();

        static string Short(long step)
        {
            var written = Number(step / (double)Fine);
            return written.StartsWith("0.", StringComparison.Ordinal) ? written[1..] : written.StartsWith("-0.", StringComparison.Ordinal) ? "-" + written[2..] : written;
        }
    }

    public SvgWriter Open(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        text.Append('>');
        open.Push(name);
        return this;
    }

    public SvgWriter Leaf(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        text.Append("/>");
        return this;
    }

    public SvgWriter Words(string words)
    {
        Escape(words);
        return this;
    }

    public SvgWriter Close()
    {
        text.Append("</").Append(open.Pop()).Append('>');
        return this;
    }

    public override string ToString() => text.ToString();

    private void Start(string name, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        text.Append('<').Append(name);
        foreach (var (attribute, value) in attributes)
        {
            if (value is not null)
            {
                text.Append(' ').Append(attribute).Append("=\"");
                Escape(value);
                text.Append('"');
            }
        }
    }

    private void Escape(string value)
    {
        foreach (var rune in value.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '<' => text.Append("&lt;"),
                '>' => text.Append("&gt;"),
                '&' => text.Append("&amp;"),
                '"' => text.Append("&quot;"),
                '\'' => text.Append("&#39;"),
                '\t' or '\n' or '\r' => text.Append(' '),
                < 0x20 or 0xFFFE or 0xFFFF or (>= 0x7F and < 0xA0) => text,
                _ => text.Append(rune.ToString()),
            };
        }
    }
}
