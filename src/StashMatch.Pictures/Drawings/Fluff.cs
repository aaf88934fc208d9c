using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>A pom-pom on the top of the worn hat.</summary>
internal static class Fluff
{
    private const double Radius = 40;
    private const int Tufts = 72;

    /// <summary>A ball of cut ends that sits on <paramref name="top"/>; its tufts stand out by turns, always the same.</summary>
    public static Piece On(Point top)
    {
        var middle = top with { Y = top.Y - (Radius * 0.72) };
        Point Out(double turn, double radius) => new(middle.X + (radius * Math.Cos(turn)), middle.Y + (radius * 0.94 * Math.Sin(turn)));
        var outline = Enumerable.Range(0, Tufts * 2).Select(i =>
            Out(i * Math.PI / Tufts, Radius * (i % 2 == 0 ? 0.9 : 1 + (0.06 * Math.Sin(i * 2.3))))).ToList();
        var ends = new List<Line>();
        foreach (var (ring, count) in new[] { (0.2, 7), (0.42, 16), (0.64, 26), (0.85, 38) })
        {
            for (var i = 0; i < count; i++)
            {
                var turn = ((i + (0.35 * Math.Sin((i * 1.7) + (ring * 40)))) * 2 * Math.PI / count) + (ring * 5);
                ends.Add(new(LineKind.Stitch, [Out(turn, Radius * (ring - 0.1)), Out(turn + 0.1, Radius * (ring + 0.1))]));
            }
        }

        return new(PartNames.PomPom, [outline], ends);
    }
}
