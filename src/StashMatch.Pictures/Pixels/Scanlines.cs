using System.Runtime.InteropServices;

namespace StashMatch.Pictures;

/// <summary>How much of each pixel lies inside outlines: inside is where they wind round a place, whichever way.</summary>
internal static class Scanlines
{
    private const int Fine = 4;

    /// <summary>Calls <paramref name="row"/> for each row of pixels that is touched, with its number, the first pixel touched and the shares from there on, 0 to 1.</summary>
    public static void Cover(IReadOnlyList<IReadOnlyList<Point>> outlines, int width, int height, RowOfShares row)
    {
        var edges = Edges(outlines, height);
        if (edges.Count == 0)
        {
            return;
        }

        var shares = new float[width];
        var (live, crossings, next) = (new List<Edge>(), new List<(double X, int Turn)>(), 0);
        var last = Math.Min(height - 1, (int)Math.Floor(edges.Max(e => e.Bottom)));
        for (var y = Math.Max(0, (int)Math.Floor(edges[0].Top)); y <= last; y++)
        {
            var (from, to) = (width, -1);
            for (var k = 0; k < Fine; k++)
            {
                var at = y + ((k + 0.5) / Fine);
                while (next < edges.Count && edges[next].Top <= at)
                {
                    live.Add(edges[next++]);
                }

                live.RemoveAll(e => e.Bottom <= at);
                crossings.Clear();
                foreach (var edge in CollectionsMarshal.AsSpan(live))
                {
                    crossings.Add((edge.X + ((at - edge.Top) * edge.Lean), edge.Turn));
                }

                crossings.Sort(static (a, b) => a.X.CompareTo(b.X));
                var winds = 0;
                for (var i = 0; i + 1 < crossings.Count; i++)
                {
                    winds += crossings[i].Turn;
                    if (winds != 0)
                    {
                        Span(shares, crossings[i].X, crossings[i + 1].X, ref from, ref to);
                    }
                }
            }

            if (from <= to)
            {
                row(y, from, shares.AsSpan(from, to - from + 1));
                Array.Clear(shares, from, to - from + 1);
            }
        }
    }

    private static void Span(float[] shares, double left, double right, ref int from, ref int to)
    {
        (left, right) = (Math.Max(0, left), Math.Min(shares.Length, right));
        if (right <= left)
        {
            return;
        }

        var (first, last) = ((int)left, Math.Min((int)right, shares.Length - 1));
        (from, to) = (Math.Min(from, first), Math.Max(to, last));
        for (var x = first; x <= last; x++)
        {
            shares[x] += (float)((Math.Min(right, x + 1) - Math.Max(left, x)) / Fine);
        }
    }

    private static List<Edge> Edges(IReadOnlyList<IReadOnlyList<Point>> outlines, int height)
    {
        var edges = new List<Edge>();
        foreach (var outline in outlines)
        {
            for (var i = 0; i < outline.Count; i++)
            {
                var (a, b) = (outline[i], outline[(i + 1) % outline.Count]);
                var (upper, lower, turn) = a.Y < b.Y ? (a, b, 1) : (b, a, -1);
                if (upper.Y < lower.Y && lower.Y > 0 && upper.Y < height)
                {
                    edges.Add(new(upper.Y, lower.Y, upper.X, (lower.X - upper.X) / (lower.Y - upper.Y), turn));
                }
            }
        }

        edges.Sort(static (a, b) => a.Top.CompareTo(b.Top));
        return edges;
    }

    private readonly record struct Edge(double Top, double Bottom, double X, double Lean, int Turn);
}

/// <summary>Takes the shares of one row of pixels.</summary>
internal delegate void RowOfShares(int y, int from, ReadOnlySpan<float> shares);
