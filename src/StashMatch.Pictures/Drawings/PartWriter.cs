namespace StashMatch.Pictures;

/// <summary>Writes parts, lines and the patterns both drawings use.</summary>
internal sealed class PartWriter(SvgWriter svg, Palette palette, string id)
{
    public static string SafeId(string id) =>
        string.Concat(id.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-')) is { Length: > 0 } safe && char.IsAsciiLetter(safe[0])
            ? safe
            : "hat-" + string.Concat(id.Where(char.IsAsciiLetterOrDigit));

    public string Url(string name) => $"url(#{id}-{name})";

    public void Begin(double left, double top, double width, double height, string title)
    {
        svg.Open(
            "svg",
            ("xmlns", "http://www.w3.org/2000/svg"),
            ("class", "hat"),
            ("viewBox", $"{N(left)} {N(top)} {N(width)} {N(height)}"),
            ("role", "img"),
            ("aria-labelledby", id + "-title"),
            ("font-family", "inherit"));
        svg.Open("title", ("id", id + "-title")).Words(title).Close();
    }

    /// <summary>Hatches for gaps and shortfalls, and one stitch after another.</summary>
    public void Patterns(double width, double height, bool sideways)
    {
        Hatch("hatch", null);
        Hatch("short", "#fff");
        svg.Open("pattern", ("id", id + "-knit"), ("width", N(width)), ("height", N(height)), ("patternUnits", "userSpaceOnUse"));
        var stitch = sideways
            ? $"M{N(width)} 0L{N(width * 0.1)} {N(height / 2)}L{N(width)} {N(height)}"
            : $"M0 {N(height * 0.1)}L{N(width / 2)} {N(height)}L{N(width)} {N(height * 0.1)}";
        svg.Leaf("path", ("d", stitch), ("fill", "none"), ("stroke", "#000"), ("stroke-opacity", "0.17"), ("stroke-width", N(Math.Min(width, height) * 0.24)));
        svg.Leaf(
            "path",
            ("d", stitch),
            ("fill", "none"),
            ("stroke", "#fff"),
            ("stroke-opacity", "0.16"),
            ("stroke-width", N(Math.Min(width, height) * 0.2)),
            ("transform", sideways ? $"translate({N(width * 0.42)} 0)" : $"translate(0 {N(-height * 0.42)})"));
        svg.Close();
    }

    public void OpenPart(string part)
    {
        var kind = palette.IsOpen(part) ? "part open" : palette.IsShort(part) ? "part short" : "part";
        svg.Open("g", ("class", kind), ("data-part", part), ("tabindex", "-1"));
        svg.Open("title").Words(palette.Title(part)).Close();
    }

    public void Fill(Piece piece, bool knit, bool strand)
    {
        var d = SvgWriter.Path(piece.Outlines, close: true);
        if (d.Length == 0)
        {
            return;
        }

        var part = piece.Part;
        if (palette.IsOpen(part))
        {
            Gap(d, "hatch", strand);
            return;
        }

        if (palette.Hex(part) is { } hex)
        {
            svg.Leaf("path", ("class", "yarn"), ("d", d), ("fill", hex), ("stroke", strand ? "#000" : hex), ("stroke-opacity", strand ? "0.3" : null), ("stroke-width", "0.6"));
        }
        else
        {
            svg.Leaf("path", ("class", "paper"), ("d", d), ("fill", "currentColor"), ("fill-opacity", "0.07"), ("stroke", "currentColor"), ("stroke-width", "0.8"));
        }

        if (knit)
        {
            svg.Leaf("path", ("d", d), ("fill", Url("knit")));
        }

        if (palette.IsShort(part))
        {
            Gap(d, "short", strand);
        }
    }

    /// <summary>A part whose leftover does not reach: knitted as far as it goes, open after that.</summary>
    public void AsFarAsItGoes(Piece piece, bool strand, double lacks, Way way)
    {
        var points = piece.Outlines.SelectMany(o => o).ToList();
        if (points.Count == 0)
        {
            return;
        }

        var (left, right) = (points.Min(p => p.X), points.Max(p => p.X));
        var (top, bottom) = (points.Min(p => p.Y), points.Max(p => p.Y));
        var (x, up, down) = (right - (lacks * (right - left)), top + (lacks * (bottom - top)), bottom - (lacks * (bottom - top)));
        var (knitted, open) = way switch
        {
            Way.Right => ((left, top, x, bottom), (x, top, right, bottom)),
            Way.Up => ((left, up, right, bottom), (left, top, right, up)),
            _ => ((left, top, right, down), (left, down, right, bottom)),
        };
        var d = SvgWriter.Path(piece.Outlines, close: true);
        Only("knitted", knitted, () =>
        {
            svg.Leaf("path", ("class", "yarn"), ("d", d), ("fill", palette.Hex(piece.Part) ?? "currentColor"), ("fill-opacity", palette.Hex(piece.Part) is null ? "0.07" : null), ("stroke", strand ? "#000" : null), ("stroke-opacity", strand ? "0.3" : null), ("stroke-width", "0.6"));
            if (!strand)
            {
                svg.Leaf("path", ("d", d), ("fill", Url("knit")));
            }
        });
        Only("open", open, () => Gap(d, "hatch", strand));
        if (!strand)
        {
            var (from, to) = way == Way.Right ? (new Point(x, top), new Point(x, bottom)) : (new Point(left, way == Way.Up ? up : down), new Point(right, way == Way.Up ? up : down));
            svg.Leaf("path", Plain("gap", SvgWriter.Path([[from, to]], close: false), "1", "1.2", "5 3"));
        }

        void Only(string what, (double Left, double Top, double Right, double Bottom) box, Action draw)
        {
            var name = $"{id}-{what}-{SafeId(piece.Part)}";
            svg.Open("clipPath", ("id", name));
            svg.Leaf("rect", ("x", N(box.Left - 1)), ("y", N(box.Top - 1)), ("width", N(Math.Max(0, box.Right - box.Left + (box.Right == right ? 2 : 1)))), ("height", N(Math.Max(0, box.Bottom - box.Top + (box.Bottom == bottom ? 2 : 1)))));
            svg.Close();
            svg.Open("g", ("clip-path", $"url(#{name})"));
            draw();
            svg.Close();
        }
    }

    public void Lines(string? part, IEnumerable<Line> lines)
    {
        var open = part is not null && palette.IsOpen(part);
        foreach (var kind in lines.Where(l => l.Points.Count > 1 && !(open && (l.Kind is LineKind.Stitch or LineKind.Ridge))).GroupBy(l => l.Kind))
        {
            Stroke(part, kind.Key, SvgWriter.Path(kind.Select(l => l.Points), close: false));
        }
    }

    public void Yarn(string part, string d, double width, string? dashes = null)
    {
        if (palette.IsOpen(part))
        {
            svg.Leaf("path", Plain("gap", d, "0.7", "1", "2 4"));
            return;
        }

        svg.Leaf("path", Plain("ink", d, "0.55", N(width + 1.3), dashes));
        svg.Leaf("path", ("class", "thread"), ("d", d), ("fill", "none"), ("stroke", palette.Hex(part) ?? "currentColor"), ("stroke-width", N(width)), ("stroke-dasharray", dashes), ("stroke-linejoin", "round"));
    }

    private static string N(double value) => SvgWriter.Number(value);

    private static (string, string?)[] Plain(string name, string d, string opacity, string width, string? dashes = null) =>
    [
        ("class", name), ("d", d), ("fill", "none"), ("stroke", "currentColor"), ("stroke-opacity", opacity), ("stroke-width", width),
        ("stroke-dasharray", dashes), ("stroke-linejoin", "round"),
    ];

    private void Stroke(string? part, LineKind kind, string d)
    {
        switch (kind)
        {
            case LineKind.Thread:
                Yarn(part ?? "", d, 1.6, "6 4");
                break;
            case LineKind.Edge:
                var colour = part is null ? null : palette.Hex(part);
                svg.Leaf("path", Plain("ink", d, "0.6", "4.4"));
                if (colour is not null)
                {
                    svg.Leaf("path", ("d", d), ("fill", "none"), ("stroke", colour), ("stroke-width", "3.2"), ("stroke-dasharray", "5 0.8"));
                }

                break;
            case LineKind.Fold:
                svg.Leaf("path", ("d", d), ("fill", "none"), ("stroke", "#fff"), ("stroke-opacity", "0.6"), ("stroke-width", "2.6"));
                svg.Leaf("path", ("class", "fold"), ("d", d), ("fill", "none"), ("stroke", "#000"), ("stroke-opacity", "0.75"), ("stroke-width", "1.2"), ("stroke-dasharray", "7 4"));
                break;
            case LineKind.Valley:
                var bare = part is null || palette.IsOpen(part);
                svg.Leaf("path", ("class", bare ? "gap" : null), ("d", d), ("fill", bare ? "currentColor" : "#000"), ("fill-opacity", bare ? "0.1" : "0.24"));
                break;
            case LineKind.Ridge:
                svg.Leaf("path", ("d", d), ("fill", "none"), ("stroke", "#fff"), ("stroke-opacity", "0.17"), ("stroke-width", "2"), ("stroke-linecap", "round"));
                break;
            case LineKind.Stitch:
                var deep = part is not null && palette.IsDark(part);
                svg.Leaf("path", ("class", "stitches"), ("d", d), ("fill", "none"), ("stroke", deep ? "#fff" : "#000"), ("stroke-opacity", deep ? "0.15" : "0.19"), ("stroke-width", "1.2"), ("stroke-linecap", "round"), ("stroke-linejoin", "round"));
                break;
            case LineKind.Gore:
                svg.Leaf("path", ("d", d), ("fill", "none"), ("stroke", "#000"), ("stroke-opacity", "0.35"), ("stroke-width", "1.1"));
                svg.Leaf("path", ("d", d), ("fill", "none"), ("stroke", "#fff"), ("stroke-opacity", "0.25"), ("stroke-width", "0.9"), ("transform", "translate(1.2 0)"));
                break;
            case LineKind.Pleat:
                svg.Leaf("path", ("d", d), ("fill", "none"), ("stroke", "#000"), ("stroke-opacity", "0.22"), ("stroke-width", "1.8"), ("stroke-linecap", "round"));
                break;
            case LineKind.Shadow:
                svg.Leaf("path", ("d", d), ("fill", "none"), ("stroke", "#000"), ("stroke-opacity", "0.3"), ("stroke-width", "6"), ("stroke-linecap", "round"));
                break;
            default:
                svg.Leaf("path", Plain("ink", d, "0.4", "0.7", "1.5 2.5"));
                break;
        }
    }

    private void Gap(string d, string hatch, bool fine) => svg.Leaf(
        "path",
        ("class", "gap"),
        ("d", d),
        ("fill", Url(hatch)),
        ("stroke", "currentColor"),
        ("stroke-width", fine ? "0.5" : "1.2"),
        ("stroke-dasharray", fine ? "2 1.5" : "5 3"));

    private void Hatch(string name, string? under)
    {
        svg.Open("pattern", ("id", $"{id}-{name}"), ("width", "8"), ("height", "8"), ("patternUnits", "userSpaceOnUse"), ("patternTransform", "rotate(45)"));
        if (under is not null)
        {
            svg.Leaf("path", ("d", "M4 0V8"), ("stroke", under), ("stroke-opacity", "0.6"), ("stroke-width", "3"));
        }

        svg.Leaf("path", ("class", under is null ? "gap" : null), ("d", "M4 0V8"), ("stroke", under is null ? "currentColor" : "#000"), ("stroke-opacity", under is null ? "0.32" : "0.7"), ("stroke-width", "1"));
        svg.Close();
    }
}
