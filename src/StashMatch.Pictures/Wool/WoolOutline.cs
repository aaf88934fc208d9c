using System.Globalization;
using System.Text;

namespace StashMatch.Pictures;

/// <summary>The outline of an area of a map, with its holes, as an SVG path.</summary>
internal static class WoolOutline
{
    // How far a corner may lie off the line between its neighbours and still be left out, in fields of the map.
    private const double Straight = 0.9;

    public static string Path(byte[] map, int width, int height, byte id, double scale)
    {
        bool In(int x, int y) => x >= 0 && y >= 0 && x < width && y < height && map[(y * width) + x] == id;

        // Every side between inside and outside, the inside on its right; from its first corner to its last.
        var sides = new Dictionary<(int X, int Y), List<(int X, int Y)>>();
        void Side(int x0, int y0, int x1, int y1)
        {
            if (!sides.TryGetValue((x0, y0), out var from))
            {
                sides[(x0, y0)] = from = [];
            }

            from.Add((x1, y1));
        }

        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                if (!In(x, y))
                {
                    continue;
                }

                if (!In(x, y - 1))
                {
                    Side(x, y, x + 1, y);
                }

                if (!In(x + 1, y))
                {
                    Side(x + 1, y, x + 1, y + 1);
                }

                if (!In(x, y + 1))
                {
                    Side(x + 1, y + 1, x, y + 1);
                }

                if (!In(x - 1, y))
                {
                    Side(x, y + 1, x, y);
                }
            }
        }

        var path = new StringBuilder();
        foreach (var start in sides.Keys.ToList())
        {
            while (sides[start].Count > 0)
            {
                var loop = new List<(int X, int Y)>();
                var at = start;
                do
                {
                    loop.Add(at);
                    var next = sides[at][^1];
                    sides[at].RemoveAt(sides[at].Count - 1);
                    at = next;
                }
                while (at != start);
                Write(path, loop, scale);
            }
        }

        return path.ToString();
    }

    private static void Write(StringBuilder path, List<(int X, int Y)> loop, double scale)
    {
        // Specks are not worth a corner.
        if (loop.Count < 12)
        {
            return;
        }

        var kept = new bool[loop.Count];
        var far = loop.Count / 2;
        (kept[0], kept[far]) = (true, true);
        Keep(loop, kept, 0, far);
        Keep(loop, kept, far, loop.Count);
        var first = true;
        for (var i = 0; i < loop.Count; i++)
        {
            if (kept[i])
            {
                path.Append(first ? 'M' : 'L').Append(CultureInfo.InvariantCulture, $"{loop[i].X * scale:0} {loop[i].Y * scale:0}");
                first = false;
            }
        }

        path.Append('Z');
    }

    // Keeps the corner that lies furthest off the line, then looks at both halves.
    private static void Keep(List<(int X, int Y)> loop, bool[] kept, int from, int to)
    {
        var (a, b) = (loop[from], loop[to % loop.Count]);
        var (most, at) = (Straight, -1);
        double dx = b.X - a.X, dy = b.Y - a.Y;
        var length = Math.Max(1e-9, Math.Sqrt((dx * dx) + (dy * dy)));
        for (var i = from + 1; i < to; i++)
        {
            var off = Math.Abs(((loop[i].X - a.X) * dy) - ((loop[i].Y - a.Y) * dx)) / length;
            if (off > most)
            {
                (most, at) = (off, i);
            }
        }

        if (at >= 0)
        {
            kept[at] = true;
            Keep(loop, kept, from, at);
            Keep(loop, kept, at, to);
        }
    }
}
