using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>Braids on the worn hat.</summary>
internal static class Rope
{
    /// <summary>Radius of the small view from above.</summary>
    public const double AboveRadius = 48;

    /// <summary>A braid round the hat, one chevron a stitch.</summary>
    public static IEnumerable<Piece> Round(WornSurface body, string a, string b, double from, double to, int stitches) =>
        Plait(a, b, stitches, (along, across) => ((along - 0.5) * 2 * Math.PI, from + ((to - from) * across)), body);

    /// <summary>A braid from the brim to the top, one chevron a stitch.</summary>
    public static IEnumerable<Piece> Up(WornSurface body, int number, double left, double right, int stitches) => Plait(
        PartNames.Strand(number, 'a'), PartNames.Strand(number, 'b'), stitches,
        (along, across) => (left + ((right - left) * across), body.Start + ((body.End - body.Start) * along)), body);

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

    // Two leaves that lean together in a point, the strands in turn.
    private static IEnumerable<Piece> Plait(
        string a, string b, int stitches, Func<double, double, (double Angle, double Length)> place, WornSurface body)
    {
        var (ofA, ofB) = (new List<IReadOnlyList<Point>>(), new List<IReadOnlyList<Point>>());
        var step = 1.0 / stitches;
        Point On(double along, double across)
        {
            var (angle, length) = place(Math.Clamp(along * step, 0, 1), across);
            return body.Seen(angle, length);
        }

        for (var i = -2; i < stitches; i++)
        {
            var (angle, length) = place(Math.Clamp((i + 1) * step, 0, 1), 0.5);
            if (Math.Abs(angle) > body.Reach(length) + 0.03)
            {
                continue;
            }

            Point[] chevron =
            [
                On(i, 0), On(i + 0.45, 0.24), On(i + 1.15, 0.5), On(i + 0.45, 0.76), On(i, 1),
                On(i + 0.92, 1), On(i + 1.6, 0.77), On(i + 2.15, 0.5), On(i + 1.6, 0.23), On(i + 0.92, 0),
            ];
            if (Polygon.Area(chevron) > 0.05)
            {
                (i % 2 == 0 ? ofA : ofB).Add(chevron);
            }
        }

        return [new(a, ofA, []), new(b, ofB, [])];
    }
}
