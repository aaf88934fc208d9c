using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>What panel and tube have in common.</summary>
internal static class Flat
{
    /// <summary>Drawing units to a centimetre of knitting.</summary>
    public const double PerCm = 16;

    /// <summary>Half the width of a cast-on or bound-off edge, which lies on its stitches and adds nothing to them.</summary>
    public const double HalfEdge = 2.2;

    public static FlatHat Lay(RowPlan plan)
    {
        var hat = plan.Construction == Construction.SideToSide ? FlatPanel.Lay(plan) : FlatTube.Lay(plan);
        return hat with { Numbers = plan.Parts.Select((p, i) => (p.Name, Number: i + 1)).ToDictionary(p => p.Name, p => p.Number, StringComparer.Ordinal) };
    }

    /// <summary>Knit ribs stand up, purl ribs lie in the shade.</summary>
    public static IEnumerable<Line> Ribs(double left, double top, double right, double bottom, double stitch)
    {
        for (var x = left; x < right - (1.5 * stitch); x += 2 * stitch)
        {
            yield return new(LineKind.Valley, Polygon.Box(x + (1.18 * stitch), top + 1, x + (1.92 * stitch), bottom - 1));
            yield return new(LineKind.Ridge, [new(x + (0.42 * stitch), top + 2), new(x + (0.42 * stitch), bottom - 2)]);
        }
    }

    /// <summary>A point for every three units or so from <paramref name="from"/> to <paramref name="to"/>.</summary>
    public static IReadOnlyList<Point> Along(double from, double to, Func<double, Point> at)
    {
        var steps = Math.Max(2, (int)Math.Ceiling(Math.Abs(to - from) / 3));
        return [.. Enumerable.Range(0, steps + 1).Select(i => at(from + ((to - from) * i / steps)))];
    }

    /// <summary>The yarn beside itself where the brim is folded.</summary>
    public static IReadOnlyList<Point> Doubled(double fold, Func<double, Point> at) =>
        Along(fold - 22, fold + 22, y => at(y) with { X = at(y).X + (5 * Math.Sqrt(Math.Max(0, 1 - Math.Pow((y - fold) / 22, 4)))) });

    /// <summary>The pieces of a braid's two strands; <paramref name="lie"/> puts along and across where they lie.</summary>
    public static IEnumerable<Piece> Braid(int number, double length, double depth, double stitch, Func<Point, Point> lie)
    {
        var chevrons = Polygon.Chevrons(length, depth, stitch).ToList();
        foreach (var strand in "ab")
        {
            yield return new(
                PartNames.Strand(number, strand),
                [.. chevrons.Where(c => c.Strand == strand).Select(c => (IReadOnlyList<Point>)[.. c.Outline.Select(lie)])],
                []);
        }
    }
}
