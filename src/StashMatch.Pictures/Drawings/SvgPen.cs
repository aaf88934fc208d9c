namespace StashMatch.Pictures;

/// <summary>Writes what is drawn as inline SVG. The page's own ink is <c>currentColor</c>.</summary>
internal sealed class SvgPen(string id) : IPen
{
    private readonly SvgWriter svg = new();
    private (IReadOnlyList<IReadOnlyList<Point>>? Of, bool Close, string Text) last = (null, false, "");

    public static string SafeId(string id) =>
        string.Concat(id.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-')) is { Length: > 0 } safe && char.IsAsciiLetter(safe[0])
            ? safe
            : "hat-" + string.Concat(id.Where(char.IsAsciiLetterOrDigit));

    public override string ToString() => svg.ToString();

    public void Begin(Box view, string title)
    {
        svg.Open(
            "svg",
            ("xmlns", "http://www.w3.org/2000/svg"),
            ("class", "hat"),
            ("viewBox", $"{N(view.Left)} {N(view.Top)} {N(view.Width)} {N(view.Height)}"),
            ("role", "img"),
            ("aria-labelledby", id + "-title"),
            ("font-family", "inherit"));
        svg.Open("title", ("id", id + "-title")).Words(title).Close();
    }

    public void Have(IReadOnlyList<Tile> tiles, IReadOnlyList<Shade> shades)
    {
        svg.Open("defs");
        foreach (var tile in tiles)
        {
            svg.Open(
                "pattern", ("id", $"{id}-{tile.Name}"), ("width", N(tile.Width)), ("height", N(tile.Height)), ("patternUnits", "userSpaceOnUse"),
                ("patternTransform", tile.Turned ? "rotate(45)" : null));
            foreach (var line in tile.Lines)
            {
                Shape(line.Name, [line.Points], close: false, null, line.Stroke, line.Shift);
            }

            svg.Close();
        }

        foreach (var shade in shades)
        {
            if (shade.Round)
            {
                svg.Open("radialGradient", ("id", $"{id}-{shade.Name}"), ("gradientUnits", "userSpaceOnUse"), ("cx", N(shade.From.X)), ("cy", N(shade.From.Y)), ("r", N(shade.Reach)));
            }
            else
            {
                svg.Open("linearGradient", ("id", $"{id}-{shade.Name}"), ("gradientUnits", "userSpaceOnUse"), ("x1", N(shade.From.X)), ("y1", "0"), ("x2", N(shade.From.X + shade.Reach)), ("y2", "0"));
            }

            foreach (var stop in shade.Stops)
            {
                svg.Leaf("stop", ("offset", N(stop.At)), ("stop-color", shade.Hex), ("stop-opacity", N(stop.Opacity)));
            }

            svg.Close();
        }

        svg.Close();
    }

    public void OpenPart(string part, string kind, string title)
    {
        svg.Open("g", ("class", kind), ("data-part", part));
        svg.Open("title").Words(title).Close();
    }

    public void OpenAside(bool untouched) => svg.Open("g", ("aria-hidden", "true"), ("pointer-events", untouched ? "none" : null));

    public void Close() => svg.Close();

    public void Shape(string? name, IReadOnlyList<IReadOnlyList<Point>> lines, bool close, Fill? fill, Stroke? stroke, Point shift = default, bool untouched = false)
    {
        if (PathOf(lines, close) is { Length: > 0 } d)
        {
            svg.Leaf("path", [
                ("class", name), ("d", d), .. Of(fill), .. Of(stroke),
                ("transform", shift == default ? null : $"translate({N(shift.X)} {N(shift.Y)})"), ("pointer-events", untouched ? "none" : null),
            ]);
        }
    }

    public void Layers(string name, IReadOnlyList<IReadOnlyList<Point>> outlines, params IReadOnlyList<Fill> fills)
    {
        svg.Open("defs").Leaf("path", ("id", $"{id}-{name}"), ("d", SvgWriter.Path(outlines, close: true))).Close();
        foreach (var fill in fills)
        {
            svg.Leaf("use", [("href", $"#{id}-{name}"), .. Of(fill)]);
        }
    }

    public void Ellipse(string? name, Point middle, double across, double down, Fill? fill, Stroke? stroke) =>
        svg.Leaf("ellipse", [("class", name), ("cx", N(middle.X)), ("cy", N(middle.Y)), ("rx", N(across)), ("ry", N(down)), .. Of(fill), .. Of(stroke)]);

    public void Text(string? name, string words, Point middle, double size, Fill fill, bool bold = false, bool upright = false) => svg.Open("text", [
        ("class", name), ("x", N(middle.X)), ("y", N(middle.Y)), ("font-size", N(size)), ("font-weight", bold ? "700" : null), ("text-anchor", "middle"), .. Of(fill),
        ("transform", upright ? $"rotate(-90 {N(middle.X)} {N(middle.Y)})" : null),
    ]).Words(words).Close();

    public void Within(string name, Box box, Action draw)
    {
        svg.Open("clipPath", ("id", $"{id}-{SafeId(name)}"));
        svg.Leaf("rect", ("x", N(box.Left)), ("y", N(box.Top)), ("width", N(Math.Max(0, box.Width))), ("height", N(Math.Max(0, box.Height))));
        svg.Close();
        svg.Open("g", ("clip-path", $"url(#{id}-{SafeId(name)})"));
        draw();
        svg.Close();
    }

    private static string N(double value) => SvgWriter.Number(value);

    // One outline is often filled, knitted over and ruled one after the other.
    private string PathOf(IReadOnlyList<IReadOnlyList<Point>> lines, bool close)
    {
        if (!ReferenceEquals(last.Of, lines) || last.Close != close)
        {
            last = (lines, close, SvgWriter.Path(lines, close));
        }

        return last.Text;
    }

    private (string, string?)[] Of(Fill? fill) => fill is null
        ? [("fill", "none")]
        : [("fill", fill.Named is { } named ? $"url(#{id}-{named})" : fill.Hex ?? "currentColor"), ("fill-opacity", Less(fill.Opacity))];

    private static (string, string?)[] Of(Stroke? stroke) => stroke is null
        ? []
        :
        [
            ("stroke", stroke.Hex ?? "currentColor"), ("stroke-opacity", Less(stroke.Opacity)), ("stroke-width", N(stroke.Width)),
            ("stroke-dasharray", stroke.Dash is { } dash ? $"{N(dash.On)} {N(dash.Off)}" : null),
            ("stroke-linecap", stroke.RoundEnds ? "round" : null), ("stroke-linejoin", stroke.RoundCorners ? "round" : null),
        ];

    private static string? Less(double opacity) => opacity < 1 ? N(opacity) : null;
}
