namespace StashMatch.Pictures;

/// <summary>Makes the outlines of drawn lines; all wind the same way, so that where a line crosses itself it is no darker.</summary>
internal static class Nib
{
    private const double RoundFrom = 1.2;

    /// <summary>The outlines of a line so wide.</summary>
    public static IEnumerable<IReadOnlyList<Point>> Draw(IReadOnlyList<Point> line, bool close, double width, Dash? dash, bool roundEnds)
    {
        IReadOnlyList<Point> whole = close && line.Count > 1 && line[0] != line[^1] ? [.. line, line[0]] : line;
        foreach (var stretch in dash is null ? [whole] : Dashes(whole, dash))
        {
            for (var i = 1; i < stretch.Count; i++)
            {
                var (a, b) = (stretch[i - 1], stretch[i]);
                var length = Math.Sqrt(Math.Pow(b.X - a.X, 2) + Math.Pow(b.Y - a.Y, 2));
                if (length > 1e-9)
                {
                    var (x, y) = ((b.Y - a.Y) / length * width / 2, (a.X - b.X) / length * width / 2);
                    yield return [new(a.X + x, a.Y + y), new(a.X - x, a.Y - y), new(b.X - x, b.Y - y), new(b.X + x, b.Y + y)];
                }

                if (width >= RoundFrom && (roundEnds || i + 1 < stretch.Count || (close && dash is null)))
                {
                    yield return Round(b, width / 2);
                }
            }

            if (width >= RoundFrom && roundEnds)
            {
                yield return Round(stretch[0], width / 2);
            }
        }
    }

    /// <summary>A ring of corners about a point, fine enough to look round.</summary>
    public static IReadOnlyList<Point> Round(Point middle, double across, double? down = null)
    {
        var steps = Math.Clamp((int)(across * 2), 8, 72);
        return [.. Enumerable.Range(0, steps).Select(i => new Point(
            middle.X + (across * Math.Cos(-2 * Math.PI * i / steps)), middle.Y + ((down ?? across) * Math.Sin(-2 * Math.PI * i / steps))))];
    }

    private static IEnumerable<IReadOnlyList<Point>> Dashes(IReadOnlyList<Point> line, Dash dash)
    {
        var (on, left, drawn) = (true, dash.On, new List<Point> { line[0] });
        for (var i = 1; i < line.Count; i++)
        {
            var (at, to) = (line[i - 1], line[i]);
            var rest = Math.Sqrt(Math.Pow(to.X - at.X, 2) + Math.Pow(to.Y - at.Y, 2));
            while (rest > left)
            {
                at = new(at.X + ((to.X - at.X) * left / rest), at.Y + ((to.Y - at.Y) * left / rest));
                rest -= left;
                if (on)
                {
                    yield return [.. drawn, at];
                }

                (on, left, drawn) = (!on, on ? dash.Off : dash.On, [at]);
            }

            left -= rest;
            drawn.Add(to);
        }

        if (on && drawn.Count > 1)
        {
            yield return drawn;
        }
    }
}
