using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>Braids on the worn hat: two strands twisted round each other along the band.</summary>
internal static class Rope
{
    /// <summary>Radius of the small view from above.</summary>
    public const double AboveRadius = 48;

    private const double Pitch = 9;

    /// <summary>A rope round the hat.</summary>
    public static IEnumerable<Piece> Round(WornSurface body, string a, string b, double from, double to, double r)
    {
        var cells = 2 * (int)Math.Max(4, Math.Round(Math.PI * r / Pitch));
        var step = 2 * Math.PI / cells;
        return Twist(a, b, -1, cells, (cell, across) => (
            body, ((cell + Soft(across)) * step) - Math.PI, from + ((to - from) * across)));
    }

    /// <summary>A rope from the brim to the top.</summary>
    public static IEnumerable<Piece> Up(WornSurface body, int number, double left, double right)
    {
        var cells = (int)Math.Ceiling((body.End - body.Start) / Pitch);
        return Twist(PartNames.Strand(number, 'a'), PartNames.Strand(number, 'b'), -1, cells, (cell, across) => (
            body, left + ((right - left) * across), Math.Clamp(body.Start + ((cell + Soft(across)) * Pitch), body.Start, body.End)));
    }

    /// <summary>A braid seen from above: its strands in turn from the top outwards.</summary>
    public static IEnumerable<Piece> Wedges(int number, Point middle, double left, double right)
    {
        const int cells = 8;
        var step = AboveRadius / cells;
        foreach (var (strand, odd) in new[] { ('a', 0), ('b', 1) })
        {
            yield return new(
                PartNames.Strand(number, strand),
                [.. Enumerable.Range(0, cells / 2).Select(i => Wedge(middle, left, right, ((2 * i) + odd) * step, ((2 * i) + odd + 1) * step))],
                []);
        }
    }

    /// <summary>A piece of pie about the top, the front at the bottom.</summary>
    public static IReadOnlyList<Point> Wedge(Point middle, double left, double right, double inner, double outer)
    {
        var steps = Math.Max(1, (int)Math.Ceiling((right - left) / 0.12));
        Point At(double radius, int i)
        {
            var angle = left + ((right - left) * i / steps);
            return new(middle.X + (radius * Math.Sin(angle)), middle.Y + (radius * Math.Cos(angle)));
        }

        var rim = Enumerable.Range(0, steps + 1).Select(i => At(outer, i));
        return inner <= 0 ? [middle, .. rim] : [.. rim, .. Enumerable.Range(0, steps + 1).Reverse().Select(i => At(inner, i))];
    }

    private static double Soft(double t) => t * t * (3 - (2 * t)) * 1.25;

    private static IEnumerable<Piece> Twist(
        string a, string b, int first, int last, Func<double, double, (WornSurface Body, double Angle, double Length)> place)
    {
        const int steps = 4;
        var (ofA, ofB) = (new List<IReadOnlyList<Point>>(), new List<IReadOnlyList<Point>>());
        for (var cell = first - 1; cell <= last; cell++)
        {
            var outline = new List<Point>();
            for (var i = 0; i <= steps; i++)
            {
                outline.Add(Seen(place(cell, (double)i / steps)));
            }

            for (var i = steps; i >= 0; i--)
            {
                outline.Add(Seen(place(cell + 1, (double)i / steps)));
            }

            if (Polygon.Area(outline) > 0.05)
            {
                (cell % 2 == 0 ? ofA : ofB).Add(outline);
            }
        }

        return [new(a, ofA, []), new(b, ofB, [])];
    }

    private static Point Seen((WornSurface Body, double Angle, double Length) at) => at.Body.Seen(at.Angle, at.Length);
}
