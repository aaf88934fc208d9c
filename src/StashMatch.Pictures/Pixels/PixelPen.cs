namespace StashMatch.Pictures;

/// <summary>Lays what is drawn down as pixels.</summary>
/// <param name="canvas">The sheet.</param>
/// <param name="corner">Where on it the drawing's upper left corner lies.</param>
/// <param name="scale">Pixels to a unit of the drawing.</param>
/// <param name="ink">The page's own ink.</param>
internal sealed class PixelPen(Canvas canvas, Point corner, double scale, string ink) : IPen
{
    private readonly Dictionary<string, Func<double, double, Ink>> named = new(StringComparer.Ordinal);
    private Point origin;
    private Box? within;

    public void Begin(Box view, string title) => origin = new(view.Left, view.Top);

    public void Have(IReadOnlyList<Tile> tiles, IReadOnlyList<Shade> shades)
    {
        foreach (var tile in tiles)
        {
            named[tile.Name] = Repeated(tile);
        }

        foreach (var shade in shades)
        {
            named[shade.Name] = Thinned(shade);
        }
    }

    public void OpenPart(string part, string kind, string title)
    {
        // A part is drawn like anything else; only a page can point at it.
    }

    public void OpenAside(bool untouched)
    {
        // The same.
    }

    public void Close()
    {
        // Nothing was begun that must be ended.
    }

    public void Shape(string? name, IReadOnlyList<IReadOnlyList<Point>> lines, bool close, Fill? fill, Stroke? stroke, Point shift = default, bool untouched = false)
    {
        IReadOnlyList<IReadOnlyList<Point>> placed = [.. lines.Where(l => l.Count > 1).Select(l => (IReadOnlyList<Point>)[.. l.Select(p => Place(new(p.X + shift.X, p.Y + shift.Y)))])];
        if (fill is not null)
        {
            Lay(placed, fill);
        }

        if (stroke is not null)
        {
            var dash = stroke.Dash is { } d ? new Dash(d.On * scale, d.Off * scale) : null;
            var drawn = placed.SelectMany(l => Nib.Draw(l, close, stroke.Width * scale, dash, stroke.RoundEnds)).ToList();
            Lay(drawn, new(stroke.Hex, stroke.Opacity));
        }
    }

    public void Layers(string name, IReadOnlyList<IReadOnlyList<Point>> outlines, params IReadOnlyList<Fill> fills)
    {
        foreach (var fill in fills)
        {
            Shape(null, outlines, close: true, fill, null);
        }
    }

    public void Ellipse(string? name, Point middle, double across, double down, Fill? fill, Stroke? stroke) =>
        Shape(name, [Nib.Round(middle, across, down)], close: true, fill, stroke);

    public void Text(string? name, string words, Point middle, double size, Fill fill, bool bold = false, bool upright = false)
    {
        var half = Letters.Width(words, size, bold) / 2;
        Lay(
            [.. Letters.Outlines(words, size, bold).Select(o => (IReadOnlyList<Point>)[.. o.Select(p => Place(upright
                ? new(middle.X + p.Y, middle.Y - (p.X - half))
                : new(middle.X + p.X - half, middle.Y + p.Y)))])],
            fill);
    }

    public void Within(string name, Box box, Action draw)
    {
        var (from, to) = (Place(new(box.Left, box.Top)), Place(new(box.Right, box.Bottom)));
        within = new(from.X, from.Y, to.X, to.Y);
        draw();
        within = null;
    }

    private void Lay(IReadOnlyList<IReadOnlyList<Point>> placed, Fill fill)
    {
        if (fill.Named is { } name)
        {
            var at = named[name];
            canvas.Fill(placed, (x, y) => at(((x - corner.X) / scale) + origin.X, ((y - corner.Y) / scale) + origin.Y), within);
        }
        else
        {
            var plain = Ink.Of(fill.Hex ?? ink, fill.Opacity);
            canvas.Fill(placed, (_, _) => plain, within);
        }
    }

    private Point Place(Point p) => new(corner.X + ((p.X - origin.X) * scale), corner.Y + ((p.Y - origin.Y) * scale));

    // A place's tile is looked up and each of its lines laid over the one before, smoothed at its edges.
    private Func<double, double, Ink> Repeated(Tile tile)
    {
        var lines = tile.Lines.Select(l => (
            Points: l.Points.Select(p => new Point(p.X + l.Shift.X, p.Y + l.Shift.Y)).ToArray(), Half: l.Stroke.Width / 2, Ink: Ink.Of(l.Stroke.Hex ?? ink, l.Stroke.Opacity))).ToArray();
        var turn = Math.Sqrt(0.5);
        return (x, y) =>
        {
            var (u, v) = tile.Turned ? ((x + y) * turn, (y - x) * turn) : (x, y);
            var at = new Point(u - (Math.Floor(u / tile.Width) * tile.Width), v - (Math.Floor(v / tile.Height) * tile.Height));
            var sum = new Ink(0, 0, 0, 0);
            foreach (var (points, half, over) in lines)
            {
                var far = double.MaxValue;
                for (var i = 1; i < points.Length; i++)
                {
                    far = Math.Min(far, Distance(at, points[i - 1], points[i]));
                }

                sum = Over(sum, over with { Opacity = over.Opacity * Math.Clamp(((half - far) * scale) + 0.5, 0, Math.Min(1, 2 * half * scale)) });
            }

            return sum;
        };
    }

    private static Func<double, double, Ink> Thinned(Shade shade)
    {
        var full = Ink.Of(shade.Hex);
        return (x, y) =>
        {
            var at = Math.Clamp((shade.Round ? Math.Sqrt(Math.Pow(x - shade.From.X, 2) + Math.Pow(y - shade.From.Y, 2)) : x - shade.From.X) / shade.Reach, 0, 1);
            var i = 1;
            while (i < shade.Stops.Count - 1 && shade.Stops[i].At < at)
            {
                i++;
            }

            var (a, b) = (shade.Stops[i - 1], shade.Stops[i]);
            return full with { Opacity = a.Opacity + ((b.Opacity - a.Opacity) * Math.Clamp((at - a.At) / (b.At - a.At), 0, 1)) };
        };
    }

    private static Ink Over(Ink below, Ink above)
    {
        var opacity = above.Opacity + (below.Opacity * (1 - above.Opacity));
        byte Mix(byte low, byte high) => opacity <= 0 ? high : (byte)((((high * above.Opacity) + (low * below.Opacity * (1 - above.Opacity))) / opacity) + 0.5);
        return new(Mix(below.Red, above.Red), Mix(below.Green, above.Green), Mix(below.Blue, above.Blue), opacity);
    }

    private static double Distance(Point p, Point a, Point b)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var t = Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / ((dx * dx) + (dy * dy)), 0, 1);
        return Math.Sqrt(Math.Pow(p.X - a.X - (t * dx), 2) + Math.Pow(p.Y - a.Y - (t * dy), 2));
    }
}
