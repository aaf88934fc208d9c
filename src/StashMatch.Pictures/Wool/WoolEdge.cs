using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>The edge of a hat is no line: short fibres stand off it, most at the rim and most on hairy yarn, and a soft copy lies beneath.</summary>
internal sealed class WoolEdge(WoolHat hat, WoolSheet sheet, WoolFrame frame, WoolSamples samples, int fine)
{
    // At a picture of usual size; fewer in a small one, where each is as wide as it can be drawn.
    private const int Most = 5200;
    private const double UsualPerCm = 23;

    /// <summary>Lays the fibres over the painted hat.</summary>
    public void Fibres(IReadOnlyList<WoolMesh> meshes)
    {
        var size = Math.Min(1, frame.PerCm / UsualPerCm);
        var (tries, most, made) = ((int)(26000 * size), (int)(Most * size), 0);
        for (var i = 0; i < tries && made < most; i++)
        {
            var mesh = meshes.Count > 1 && Hash(i, 1, 71) < 0.34 ? meshes[^1] : meshes[0];
            var at = (Math.Min(mesh.Round - 1, (int)(Hash(i, 2, 71) * mesh.Round)) * (mesh.Up + 1)) + Math.Min(mesh.Up - 1, (int)(Hash(i, 3, 71) * mesh.Up));
            var (nx, ny, nz) = samples.Seen(mesh.NormalX[at], mesh.NormalY[at], mesh.NormalZ[at]);
            var rim = nz < 0.22;
            if (nz < -0.02 || (!rim && Hash(i, 4, 71) > 0.30))
            {
                continue;
            }

            // Somewhere within the field, not at its corner.
            var (a, b) = (Hash(i, 9, 71), Hash(i, 10, 71));
            var (c, d) = (at + mesh.Up + 1, at + 1);
            float Between(float[] all) => (float)(all[at] + (a * (all[c] - all[at])) + (b * (all[d] - all[at])));
            var (x, y, z) = samples.Seen(Between(mesh.X), Between(mesh.Y), Between(mesh.Z));
            if (Fibre(i, frame.X + (x * frame.PerCm), frame.Y - (y * frame.PerCm), z, nx, ny, rim))
            {
                made++;
            }
        }
    }

    /// <summary>In a small picture stitches run into each other a little, as they do seen from further off.</summary>
    public void Blend()
    {
        var (w, h, p, share) = (sheet.Width, sheet.Height, sheet.Pixels, 0.06 * (1 - Smooth(24, 44, frame.PerCm)));
        if (share <= 0)
        {
            return;
        }

        var before = (byte[])p.Clone();
        for (var y = 1; y < h - 1; y++)
        {
            for (var x = 1; x < w - 1; x++)
            {
                var o = ((y * w) + x) * 4;
                int left = o - 4, right = o + 4, up = o - (w * 4), down = o + (w * 4);
                if (before[o + 3] < 255 || before[left + 3] < 255 || before[right + 3] < 255 || before[up + 3] < 255 || before[down + 3] < 255)
                {
                    continue;
                }

                for (var k = 0; k < 3; k++)
                {
                    p[o + k] = (byte)((before[o + k] * (1 - (4 * share)))
                        + (share * (before[left + k] + before[right + k] + before[up + k] + before[down + k])) + 0.5);
                }
            }
        }
    }

    /// <summary>A blurred copy of the hat beneath it.</summary>
    public void Soften()
    {
        var (w, h, p) = (sheet.Width, sheet.Height, sheet.Pixels);
        var sigma = Clamp(1.3 * frame.PerCm / UsualPerCm, 0.5, 2.6);
        var reach = (int)Math.Ceiling(sigma * 2.5);
        var weights = Enumerable.Range(-reach, (2 * reach) + 1).Select(i => Math.Exp(-i * i / (2 * sigma * sigma))).ToArray();
        var sum = weights.Sum();
        var before = (byte[])p.Clone();
        bool Wool(int x, int y) => x >= 0 && y >= 0 && x < w && y < h && before[(((y * w) + x) * 4) + 3] > 0;
        for (var y = 0; y < h; y++)
        {
            for (var x = 0; x < w; x++)
            {
                var o = ((y * w) + x) * 4;
                if (before[o + 3] == 255 || !(Wool(x, y) || Wool(x - reach, y) || Wool(x + reach, y) || Wool(x, y - reach) || Wool(x, y + reach)))
                {
                    continue;
                }

                double r = 0, g = 0, b = 0, a = 0;
                for (var j = Math.Max(-reach, -y); j <= reach && y + j < h; j++)
                {
                    for (var i = Math.Max(-reach, -x); i <= reach && x + i < w; i++)
                    {
                        var q = o + (((j * w) + i) * 4);
                        var share = weights[i + reach] * weights[j + reach] * before[q + 3];
                        (r, g, b, a) = (r + (share * before[q]), g + (share * before[q + 1]), b + (share * before[q + 2]), a + share);
                    }
                }

                if (a > 0)
                {
                    Under(o, r / a, g / a, b / a, 0.55 * a / (sum * sum * 255));
                }
            }
        }
    }

    private bool Fibre(int i, double x0, double y0, float z, double nx, double ny, bool rim)
    {
        var (px, py) = ((int)x0, (int)y0);
        if (px < 0 || py < 0 || px >= sheet.Width || py >= sheet.Height)
        {
            return false;
        }

        var at = (py * sheet.Width) + px;
        var area = sheet.Areas[at];
        if (area == WoolSheet.Nothing || sheet.Pixels[(at * 4) + 3] < 100 || samples.Depth[(py * fine * samples.Width) + (px * fine)] > z + 0.35)
        {
            return false;
        }

        var halo = hat.Yarns[hat.Areas[area].Yarn].Halo;
        var h = Hash(i, 5, 71);
        halo = hat.Areas[area].Fabric == WoolFabric.PomPom ? 1 : halo;
        if (Hash(i, 11, 71) > (rim ? 0.30 + (0.9 * halo) : halo))
        {
            return false;
        }

        // 0.6 to 3 mm; mohair stands off twice as far as cotton.
        var far = (rim ? 0.06 + (0.10 * h) + (h > 0.94 ? 0.13 : 0) : 0.10 + (0.16 * h)) * (0.55 + (1.1 * halo)) * frame.PerCm;
        var bend = (Hash(i, 6, 71) - 0.5) * 3.6;
        var a = Math.Atan2(-ny, nx) + ((Hash(i, 7, 71) - 0.5) * 1.9);
        var (x1, y1) = (x0 + (Math.Cos(a) * far * 0.7), y0 + (Math.Sin(a) * far * 0.7));
        var (x2, y2) = (x0 + (((Math.Cos(a) * 0.55) + (Math.Cos(a + bend) * 0.5)) * far), y0 + (((Math.Sin(a) * 0.55) + (Math.Sin(a + bend) * 0.5)) * far));
        var (r, g, b) = (sheet.Pixels[at * 4], sheet.Pixels[(at * 4) + 1], sheet.Pixels[(at * 4) + 2]);
        var lift = rim ? 1.06 : 1.14;
        var (red, green, blue) = (Math.Min(255, (r * lift) + 7), Math.Min(255, (g * lift) + 7), Math.Min(255, (b * lift) + 7));
        var ink = (rim ? 0.16 + (0.26 * Hash(i, 8, 71)) : 0.13) * Clamp(frame.PerCm / UsualPerCm, 0.55, 1.6);

        // A bent line, laid down in steps of half a pixel.
        var steps = Math.Max(2, (int)(far * 2));
        for (var k = 0; k <= steps; k++)
        {
            var t = (double)k / steps;
            var (wa, wb, wc) = ((1 - t) * (1 - t), 2 * t * (1 - t), t * t);
            Dot((wa * x0) + (wb * x1) + (wc * x2), (wa * y0) + (wb * y1) + (wc * y2), red, green, blue, ink * 0.62 * (1 - (0.4 * t)));
        }

        return true;
    }

    private void Dot(double x, double y, double red, double green, double blue, double ink)
    {
        var (i, j) = ((int)Math.Floor(x - 0.5), (int)Math.Floor(y - 0.5));
        var (f, g) = (x - 0.5 - i, y - 0.5 - j);
        Lay(i, j, red, green, blue, ink * (1 - f) * (1 - g));
        Lay(i + 1, j, red, green, blue, ink * f * (1 - g));
        Lay(i, j + 1, red, green, blue, ink * (1 - f) * g);
        Lay(i + 1, j + 1, red, green, blue, ink * f * g);
    }

    private void Lay(int x, int y, double red, double green, double blue, double ink)
    {
        if (x < 0 || y < 0 || x >= sheet.Width || y >= sheet.Height)
        {
            return;
        }

        var (o, p) = (((y * sheet.Width) + x) * 4, sheet.Pixels);
        var below = p[o + 3] / 255.0 * (1 - ink);
        var all = ink + below;
        if (all > 0)
        {
            p[o] = (byte)((((red * ink) + (p[o] * below)) / all) + 0.5);
            p[o + 1] = (byte)((((green * ink) + (p[o + 1] * below)) / all) + 0.5);
            p[o + 2] = (byte)((((blue * ink) + (p[o + 2] * below)) / all) + 0.5);
            p[o + 3] = (byte)((all * 255) + 0.5);
        }
    }

    private void Under(int o, double red, double green, double blue, double share)
    {
        var p = sheet.Pixels;
        var (over, below) = (p[o + 3] / 255.0, share * (1 - (p[o + 3] / 255.0)));
        var all = over + below;
        p[o] = (byte)((((p[o] * over) + (red * below)) / all) + 0.5);
        p[o + 1] = (byte)((((p[o + 1] * over) + (green * below)) / all) + 0.5);
        p[o + 2] = (byte)((((p[o + 2] * over) + (blue * below)) / all) + 0.5);
        p[o + 3] = (byte)((all * 255) + 0.5);
    }
}
