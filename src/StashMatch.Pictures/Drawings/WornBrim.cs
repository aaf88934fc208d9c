using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>The brim on the head: knit ribs stand up, purl ribs lie in the shade, and every rib swells both edges a little.</summary>
internal static class WornBrim
{
    private const double Front = Math.PI / 2;

    /// <summary>A brim of so many ribs all round, on its surface.</summary>
    public static Piece Of(WornSurface cuff, int ribs)
    {
        var (seen, depth) = (Math.Max(4, ribs / 2), cuff.End - cuff.Start);
        var half = Front / seen;
        var rows = Math.Max(2, (int)Math.Round(depth / 8));
        var lines = new List<Line>();
        for (var i = 0; i < seen; i++)
        {
            var knit = -Front + (((2 * i) + 0.85) * half);
            var purl = knit + half;
            lines.Add(new(LineKind.Valley,
                [.. Upwards(cuff, purl - (half * 0.36)), .. Upwards(cuff, purl + (half * 0.36)).Reverse()]));
            lines.Add(new(LineKind.Ridge, [.. Upwards(cuff, knit - (half * 0.25), 0.06)]));
            for (var k = 0; k < rows && Math.Abs(knit) < 1.42; k++)
            {
                var at = cuff.Start + ((k + 0.5) / rows * depth);
                var rise = depth / rows / 2;
                lines.Add(new(LineKind.Stitch,
                    [cuff.At(knit - (half * 0.6), at + (rise * 0.85)), cuff.At(knit, at - (rise * 0.7)), cuff.At(knit + (half * 0.6), at + (rise * 0.85))]));
            }
        }

        return new(PartNames.Brim,
        [[
            .. Edge(cuff, cuff.Start, seen, 1.5), .. Upwards(cuff, Front), .. Edge(cuff, cuff.End, seen, -1.5).Reverse(), .. Upwards(cuff, -Front).Reverse(),
        ]], lines);
    }

    private static IEnumerable<Point> Upwards(WornSurface cuff, double angle, double inset = 0.02)
    {
        const int steps = 8;
        return Enumerable.Range(0, steps + 1).Select(i => cuff.At(angle, cuff.Start + ((cuff.End - cuff.Start) * (inset + ((1 - (2 * inset)) * i / steps)))));
    }

    private static IEnumerable<Point> Edge(WornSurface cuff, double length, int ribs, double swell)
    {
        var steps = ribs * 4;
        return Enumerable.Range(0, steps + 1).Select(i =>
        {
            var at = cuff.At(-Front + (2 * Front * i / steps), length);
            return at with { Y = at.Y + (swell * Math.Abs(Math.Sin(i * Math.PI / 4))) };
        });
    }
}
