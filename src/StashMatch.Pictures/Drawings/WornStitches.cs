namespace StashMatch.Pictures;

/// <summary>Knit stitches on the worn hat, one drawn for every two by two, bent with the fabric.</summary>
internal static class WornStitches
{
    private const double Least = 1.3;

    /// <summary>Stitches lying on their side, of rows that run from brim to top.</summary>
    public static IEnumerable<Line> Sideways(WornSurface body, double left, double right, int rows, int stitches)
    {
        var (columns, high) = (Math.Max(1, (int)Math.Round(rows / 2.0)), Math.Max(1, stitches / 2));
        var (half, rise) = ((right - left) / columns / 2, (body.End - Math.Max(0, body.Start)) / high / 2);
        for (var i = 0; i < columns; i++)
        {
            var angle = Wrap(left + ((i + 0.5) / columns * (right - left)));
            for (var up = rise; up < body.End; up += 2 * rise)
            {
                if (Shows(body, angle, half, up))
                {
                    yield return new(LineKind.Stitch,
                        [body.At(angle + (half * 0.88), up - (rise * 0.92)), body.At(angle - (half * 0.7), up), body.At(angle + (half * 0.88), up + (rise * 0.92))]);
                }
            }
        }
    }

    /// <summary>Stitches standing up; in the crown each gore's run beside each other and end at its lines of decreases.</summary>
    public static IEnumerable<Line> Upright(WornSurface body, double from, double to, int around, int gores, double crown)
    {
        var cell = body.RadiusAt(0) * 2 * Math.PI / around * 2 * 0.72;
        var rows = Math.Max(1, (int)Math.Round((to - from) / cell));
        var rise = (to - from) / rows / 2;
        for (var k = 0; k < rows; k++)
        {
            var up = from + ((k + 0.5) / rows * (to - from));
            foreach (var (angle, half) in Columns(up, body.End, around, gores, crown))
            {
                if (Shows(body, angle, half, up))
                {
                    yield return new(LineKind.Stitch,
                        [body.At(angle - (half * 0.92), up + (rise * 0.88)), body.At(angle, up - (rise * 0.7)), body.At(angle + (half * 0.92), up + (rise * 0.88))]);
                }
            }
        }
    }

    private static IEnumerable<(double Angle, double Half)> Columns(double up, double top, int around, int gores, double crown)
    {
        if (up < crown || gores < 2)
        {
            var columns = Math.Max(4, around / 2);
            for (var i = 0; i < columns; i++)
            {
                yield return (-Math.PI + ((i + 0.5) / columns * 2 * Math.PI), Math.PI / columns);
            }

            yield break;
        }

        var each = around * (top - up) / Math.Max(1e-9, top - crown) / gores / 2;
        var (gore, half) = (2 * Math.PI / gores, Math.PI / gores / each);
        for (var g = 0; g < gores; g++)
        {
            var middle = -Math.PI + (g * gore);
            for (var i = 0.5; i <= (each / 2) - 0.3; i++)
            {
                yield return (Wrap(middle + (i * 2 * half)), half);
                yield return (Wrap(middle - (i * 2 * half)), half);
            }
        }
    }

    private static bool Shows(WornSurface body, double angle, double half, double up) =>
        Math.Abs(angle) < body.Reach(up) - 0.03 && Math.Abs(body.At(angle + half, up).X - body.At(angle - half, up).X) > Least;

    private static double Wrap(double angle) => angle - (2 * Math.PI * Math.Round(angle / (2 * Math.PI)));
}
