namespace StashMatch.Pictures;

/// <summary>What is seen at each sample of a picture: which place of which surface, and how it faces. The nearest wins.</summary>
internal sealed class WoolSamples
{
    private readonly WoolFrame frame;
    private readonly int fine;
    private readonly double sinYaw;
    private readonly double cosYaw;
    private readonly double sinTilt;
    private readonly double cosTilt;

    public WoolSamples(IReadOnlyList<WoolMesh> meshes, WoolView view, WoolFrame frame, int fine)
    {
        (this.frame, this.fine) = (frame, fine);
        (sinYaw, cosYaw, sinTilt, cosTilt) = (Math.Sin(view.Yaw), Math.Cos(view.Yaw), Math.Sin(view.Tilt), Math.Cos(view.Tilt));
        (Width, Height) = (frame.Width * fine, frame.Height * fine);
        var n = Width * Height;
        (Depth, Angle, Along, Dip) = (new float[n], new float[n], new float[n], new float[n]);
        (NormalX, NormalY, NormalZ, Surface) = (new float[n], new float[n], new float[n], new byte[n]);
        Array.Fill(Depth, float.MinValue);
        foreach (var mesh in meshes)
        {
            Draw(mesh);
        }
    }

    public int Width { get; }

    public int Height { get; }

    public float[] Depth { get; }

    public float[] Angle { get; }

    public float[] Along { get; }

    public float[] Dip { get; }

    public float[] NormalX { get; }

    public float[] NormalY { get; }

    public float[] NormalZ { get; }

    /// <summary>The surface's number; 0 where nothing is.</summary>
    public byte[] Surface { get; }

    /// <summary>A place or direction of the hat as it is seen: to the right, up, towards us.</summary>
    public (float X, float Y, float Z) Seen(float x, float y, float z)
    {
        var (right, near) = ((x * cosYaw) + (z * sinYaw), (z * cosYaw) - (x * sinYaw));
        return ((float)right, (float)((y * cosTilt) - (near * sinTilt)), (float)((y * sinTilt) + (near * cosTilt)));
    }

    private void Draw(WoolMesh mesh)
    {
        var n = mesh.X.Length;
        var (places, normals) = (new (float X, float Y, float Z)[n], new (float X, float Y, float Z)[n]);
        var scale = frame.PerCm * fine;
        for (var q = 0; q < n; q++)
        {
            var (x, y, z) = Seen(mesh.X[q], mesh.Y[q], mesh.Z[q]);
            places[q] = ((float)((frame.X * fine) + (x * scale)), (float)((frame.Y * fine) - (y * scale)), z);
            normals[q] = Seen(mesh.NormalX[q], mesh.NormalY[q], mesh.NormalZ[q]);
        }

        for (var i = 0; i < mesh.Round; i++)
        {
            for (var j = 0; j < mesh.Up; j++)
            {
                var a = (i * (mesh.Up + 1)) + j;
                var b = a + mesh.Up + 1;
                Triangle(mesh, places, normals, (a, i, j), (b, i + 1, j), (b + 1, i + 1, j + 1));
                Triangle(mesh, places, normals, (a, i, j), (b + 1, i + 1, j + 1), (a + 1, i, j + 1));
            }
        }
    }

    private void Triangle(
        WoolMesh mesh, (float X, float Y, float Z)[] places, (float X, float Y, float Z)[] normals, (int At, int I, int J) a, (int At, int I, int J) b,
            (int At, int I, int J) c)
    {
        var (p, q, r) = (places[a.At], places[b.At], places[c.At]);
        double x0 = p.X, y0 = p.Y, x1 = q.X, y1 = q.Y, x2 = r.X, y2 = r.Y;
        var area = ((x1 - x0) * (y2 - y0)) - ((x2 - x0) * (y1 - y0));
        if (area >= -1e-9)
        {
            return; // it faces away
        }

        var left = Math.Max(0, (int)Math.Floor(Math.Min(x0, Math.Min(x1, x2)) - 0.5));
        var right = Math.Min(Width - 1, (int)Math.Ceiling(Math.Max(x0, Math.Max(x1, x2)) - 0.5));
        var top = Math.Max(0, (int)Math.Floor(Math.Min(y0, Math.Min(y1, y2)) - 0.5));
        var bottom = Math.Min(Height - 1, (int)Math.Ceiling(Math.Max(y0, Math.Max(y1, y2)) - 0.5));
        double a0 = (y1 - y2) / area, b0 = (x2 - x1) / area, c0 = ((x1 * y2) - (x2 * y1)) / area;
        double a1 = (y2 - y0) / area, b1 = (x0 - x2) / area, c1 = ((x2 * y0) - (x0 * y2)) / area;
        var (ua, ub, uc) = (mesh.Angle(a.I), mesh.Angle(b.I), mesh.Angle(c.I));
        var (va, vb, vc) = (mesh.From + (mesh.Step * a.J), mesh.From + (mesh.Step * b.J), mesh.From + (mesh.Step * c.J));
        var (na, nb, nc) = (normals[a.At], normals[b.At], normals[c.At]);
        for (var y = top; y <= bottom; y++)
        {
            for (var x = left; x <= right; x++)
            {
                double px = x + 0.5, py = y + 0.5;
                var e0 = (a0 * px) + (b0 * py) + c0;
                var e1 = (a1 * px) + (b1 * py) + c1;
                var e2 = 1 - e0 - e1;
                if (e0 < -1e-4 || e1 < -1e-4 || e2 < -1e-4)
                {
                    continue;
                }

                var z = (float)((e0 * p.Z) + (e1 * q.Z) + (e2 * r.Z));
                var at = (y * Width) + x;
                if (z <= Depth[at])
                {
                    continue;
                }

                Depth[at] = z;
                Angle[at] = (float)((e0 * ua) + (e1 * ub) + (e2 * uc));
                Along[at] = (float)((e0 * va) + (e1 * vb) + (e2 * vc));
                NormalX[at] = (float)((e0 * na.X) + (e1 * nb.X) + (e2 * nc.X));
                NormalY[at] = (float)((e0 * na.Y) + (e1 * nb.Y) + (e2 * nc.Y));
                NormalZ[at] = (float)((e0 * na.Z) + (e1 * nb.Z) + (e2 * nc.Z));
                Dip[at] = (float)((e0 * mesh.Dip[a.At]) + (e1 * mesh.Dip[b.At]) + (e2 * mesh.Dip[c.At]));
                Surface[at] = (byte)mesh.Surface;
            }
        }
    }
}
