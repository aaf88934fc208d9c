namespace StashMatch.Pictures;

/// <summary>Plain geometry the drawings share.</summary>
internal static class Polygon
{
    public static double Area(IReadOnlyList<Point> outline)
    {
        var twice = 0.0;
        for (var i = 0; i < outline.Count; i++)
        {
            var (a, b) = (outline[i], outline[(i + 1) % outline.Count]);
            twice += (a.X * b.Y) - (b.X * a.Y);
        }

        return Math.Abs(twice) / 2;
    }

    public static IReadOnlyList<Point> Box(double left, double top, double right, double bottom) =>
        [new(left, top), new(right, top), new(right, bottom), new(left, bottom)];

    /// <summary>Points along a bent line from <paramref name="a"/> to <paramref name="d"/>, drawn towards <paramref name="b"/> and <paramref name="c"/>.</summary>
    public static IEnumerable<Point> Curve(Point a, Point b, Point c, Point d, int steps = 14)
    {
        for (var i = 0; i <= steps; i++)
        {
            var t = (double)i / steps;
            var u = 1 - t;
            var (wa, wb, wc, wd) = (u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t);
            yield return new((wa * a.X) + (wb * b.X) + (wc * c.X) + (wd * d.X), (wa * a.Y) + (wb * b.Y) + (wc * c.Y) + (wd * d.Y));
        }
    }

    /// <summary>What of a convex outline lies between two upright lines.</summary>
    public static IReadOnlyList<Point> Between(IReadOnlyList<Point> outline, double least, double most) =>
        Cut(Cut(outline, p => p.X - least, least), p => most - p.X, most);

    /// <summary>
    /// A braid's chevrons, x along the band and y across it from the row knitted first: the over row slants one way, the under row back.
    /// Even ones are of strand a, odd ones of strand b; together they fill the band.
    /// </summary>
    public static IEnumerable<(char Strand, IReadOnlyList<Point> Outline)> Chevrons(double length, double depth, double pitch)
    {
        var half = depth / 2;
        for (var i = -2; i * pitch < length; i++)
        {
            var x = i * pitch;
            IReadOnlyList<Point>[] halves =
            [
                [new(x, 0), new(x + pitch, 0), new(x + (2 * pitch), half), new(x + pitch, half)],
                [new(x + pitch, half), new(x + (2 * pitch), half), new(x + pitch, depth), new(x, depth)],
            ];
            foreach (var whole in halves)
            {
                var cut = Between(whole, 0, length);
                if (cut.Count > 2 && Area(cut) > 1e-6)
                {
                    yield return (i % 2 == 0 ? 'a' : 'b', cut);
                }
            }
        }
    }

    private static List<Point> Cut(IReadOnlyList<Point> outline, Func<Point, double> inside, double at)
    {
        var kept = new List<Point>();
        for (var i = 0; i < outline.Count; i++)
        {
            var (a, b) = (outline[i], outline[(i + 1) % outline.Count]);
            var (ia, ib) = (inside(a), inside(b));
            if (ia >= 0)
            {
                kept.Add(a);
            }

            if ((ia > 0 && ib < 0) || (ia < 0 && ib > 0))
            {
                kept.Add(new(at, a.Y + ((b.Y - a.Y) * ia / (ia - ib))));
            }
        }

        return kept;
    }
}
