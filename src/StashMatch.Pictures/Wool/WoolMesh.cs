using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>A surface of the hat cut into small fields: places, normals and how deep in a fold, as it stands before it is turned.</summary>
internal sealed class WoolMesh
{
    public WoolMesh(WoolForm form, WoolSurface surface, int round, int up)
    {
        var profile = form.Of(surface);
        var (from, to) = (profile.Start, profile.End - (surface == WoolSurface.Body ? 0.02 : 0));
        (Surface, Round, Up, From, Step) = (surface, round, up, from, (to - from) / up);
        var n = (round + 1) * (up + 1);
        (X, Y, Z, Dip) = (new float[n], new float[n], new float[n], new float[n]);
        (NormalX, NormalY, NormalZ) = (new float[n], new float[n], new float[n]);
        for (var (i, q) = (0, 0); i <= round; i++)
        {
            for (var j = 0; j <= up; j++, q++)
            {
                var at = form.At(surface, Angle(i), from + (Step * j));
                (X[q], Y[q], Z[q], Dip[q]) = ((float)at.X, (float)at.Y, (float)at.Z, (float)at.Dip);
            }
        }

        for (var i = 0; i <= round; i++)
        {
            for (var j = 0; j <= up; j++)
            {
                Normal(i, j);
            }
        }
    }

    public WoolSurface Surface { get; }

    public int Round { get; }

    public int Up { get; }

    public double From { get; }

    public double Step { get; }

    public float[] X { get; }

    public float[] Y { get; }

    public float[] Z { get; }

    public float[] Dip { get; }

    public float[] NormalX { get; }

    public float[] NormalY { get; }

    public float[] NormalZ { get; }

    /// <summary>All surfaces of a hat, fine enough for a picture at so many pixels to a centimetre.</summary>
    public static List<WoolMesh> Of(WoolForm form, WoolHat hat, double perCm)
    {
        // A field is about two pixels wide in a large picture and never finer than the ribs need.
        var fine = Clamp(perCm / 28, 0.25, 1);
        var ribs = hat.Brim is { } brim ? brim.Ribs * (fine < 0.6 ? 5 : 8) : 0;
        var round = Even(Math.Max(360 * fine, hat.Brim is { Folded: false } ? ribs : 0));
        var meshes = new List<WoolMesh> { new(form, WoolSurface.Body, round, Even(120 * fine)) };
        if (form.Cuff is not null)
        {
            meshes.Add(new(form, WoolSurface.Cuff, Even(Math.Max(360 * fine, ribs)), Even(40 * fine)));
        }

        if (form.PomPom is not null)
        {
            meshes.Add(new(form, WoolSurface.PomPom, Even(90 * fine), Even(40 * fine)));
        }

        return meshes;
    }

    public double Angle(int i) => (((double)i / Round) - 0.5) * Grain.Round;

    private static int Even(double n) => (int)((n / 2) + 0.5) * 2;

    private void Normal(int i, int j)
    {
        int At(int a, int b) => (a * (Up + 1)) + b;
        var q = At(i, j);
        var (a, b) = (At(i == 0 ? Round - 1 : i - 1, j), At(i == Round ? 1 : i + 1, j));
        var (c, d) = (j == 0 ? q : q - 1, j == Up ? q : q + 1);
        double ax = X[b] - X[a], ay = Y[b] - Y[a], az = Z[b] - Z[a], bx = X[d] - X[c], by = Y[d] - Y[c], bz = Z[d] - Z[c];
        double nx = (ay * bz) - (az * by), ny = (az * bx) - (ax * bz), nz = (ax * by) - (ay * bx);
        var far = Math.Sqrt((nx * nx) + (ny * ny) + (nz * nz));
        if (far < 1e-7)
        {
            (nx, ny, nz, far) = (0, 1, 0, 1);
        }

        (NormalX[q], NormalY[q], NormalZ[q]) = ((float)(nx / far), (float)(ny / far), (float)(nz / far));
    }
}
