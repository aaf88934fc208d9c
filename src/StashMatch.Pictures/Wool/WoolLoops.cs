using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>
/// Which loop of yarn lies uppermost at a place of the fabric. Each leg of a stitch is a bean that dives under at both ends; the highest wins.
/// Lengths in mm; "wale" is along the row, "course" from row to row. One for each thread: it keeps what it last found.
/// </summary>
internal sealed class WoolLoops
{
    /// <summary>How high the loop lies, 0 (a gap) to about 1.</summary>
    public double Height { get; private set; }

    /// <summary>Its slope along the row.</summary>
    public double SlopeWale { get; private set; }

    /// <summary>Its slope from row to row.</summary>
    public double SlopeCourse { get; private set; }

    /// <summary>Which leg it is.</summary>
    public int Leg { get; private set; }

    /// <summary>How far along the leg, and across it.</summary>
    public double AlongLeg { get; private set; }

    public double AcrossLeg { get; private set; }

    /// <summary>The row it belongs to.</summary>
    public int Row { get; private set; }

    /// <summary>The stitch of the row.</summary>
    public int Stitch { get; private set; }

    public void Clear() => (Height, SlopeWale, SlopeCourse, Leg, AlongLeg, AcrossLeg) = (0, 0, 0, 0, 0, 0);

    /// <summary>A knit stitch: two legs in a V. <paramref name="w"/> and <paramref name="c"/> count stitches and rows; rows from <paramref name="none"/>
    /// up to <paramref name="upTo"/> are not knitted.</summary>
    public void Knit(double w, double c, double wide, double high, int seed, int none = 0, int upTo = 0)
    {
        var (j, k0) = ((int)Math.Floor(w), (int)Math.Floor(c));
        var x = (w - j - 0.5) * wide;
        var side = x < 0 ? -1 : 1;
        for (var k = k0 - 1; k <= k0 + 1; k++)
        {
            // A leg reaches no further than a row and a quarter from its middle.
            if ((k >= none && k < upTo) || Math.Abs(c - k - 0.5) > 1.25)
            {
                continue;
            }

            var (q, p, tension) = (Hash(j, k, seed), Hash(k, j, seed + side), Hash(k, 1, seed + 5) - 0.5);
            var (cos, sin) = Leaning((p - 0.5) * 0.16);
            var off = (((p - 0.5) * 0.24) + (tension * 0.22)) * high;
            if (Bean((x * side) - (0.262 * wide) - ((q - 0.5) * 0.12 * wide * side), ((c - k - 0.5) * high) - off, cos, sin,
                high * 0.86, wide * (0.232 + (0.035 * q) + (0.02 * tension)), 0.90 + (0.10 * q), (j * 131) + (k * 7) + side))
            {
                (Row, Stitch) = (k, j);
            }
        }

        SlopeWale *= side;
    }

    /// <summary>Purl bumps: short arcs that lie across, each row a little aside of the last.</summary>
    public void Purl(double w, double c, double wide, double high, int seed, double proud = 0.62)
    {
        var (j0, k0) = ((int)Math.Floor(w), (int)Math.Floor(c));
        for (var k = k0 - 1; k <= k0 + 1; k++)
        {
            for (var j = j0 - 1; j <= j0 + 1; j++)
            {
                var q = Hash(j, k, seed + 77);
                if (Bean((w - j - 0.5) * wide, (c - k - 0.5 + ((q - 0.5) * 0.2)) * high, 1, 0, high * 0.5, wide * 0.62, proud, (j * 131) + (k * 7)))
                {
                    (Row, Stitch) = (k, j);
                }
            }
        }
    }

    /// <summary>Garter: every second row a ridge of purl bumps, curved up and down in turn, between them a furrow.</summary>
    public void Garter(double w, double c, double wide, double high, int seed)
    {
        var (j0, k0) = ((int)Math.Floor(w * 2), (int)Math.Floor(c / 2));
        for (var k = k0 - 1; k <= k0 + 1; k++)
        {
            for (var j = j0 - 1; j <= j0 + 1; j++)
            {
                var q = Hash(j, k, seed + 78);
                var bow = (j & 1) == 0 ? 0.34 : -0.34;
                if (Bean(((w * 2) - j - 0.5) * wide / 2, ((c - (2 * k) - 1 + ((q - 0.5) * 0.3) + (bow * 0.9)) * high), 1, 0, high * 0.62, wide * 0.36,
                    0.95 + (0.1 * q), (j * 131) + (k * 7)))
                {
                    (Row, Stitch) = (2 * k, j >> 1);
                }
            }
        }
    }

    /// <summary>
    /// The two crossed rows of a braid: strands in turn, two columns that lean together into arrows. <paramref name="t"/> counts stitches
    /// along it, <paramref name="q"/> goes from −1 to 1 across it, <paramref name="half"/> is half its width. True: the second strand; null: what was
    /// found before lies higher.
    /// </summary>
    public bool? Braid(double t, double q, double wide, double half, int seed)
    {
        var (side, k0, second, before) = (q < 0 ? -1 : 1, (int)Math.Floor(t), false, Height);
        var (along, across) = (wide * 0.74, half * 0.55);
        var far = Math.Sqrt((along * along) + (across * across));
        for (var k = k0 - 2; k <= k0 + 1; k++)
        {
            var j = Hash(k, side, seed) - 0.5;
            var lean = Math.Atan2(across, along) + (j * 0.14);
            if (Bean((q * side * half) - (half * 0.47), ((t - k - 0.2) * wide) - (j * 0.3), Math.Cos(lean), Math.Sin(lean), far * 1.06,
                wide * across / far * 0.62, 1.16 + ((k & 1) * 0.05), (k * 9) + side))
            {
                (second, Stitch) = ((k & 1) == 1, k);
            }
        }

        if (Height == before)
        {
            return null;
        }

        // The bean was laid along the braid: across it is from row to row.
        (SlopeWale, SlopeCourse) = (SlopeCourse, SlopeWale * side);
        return second;
    }

    /// <summary>A lone leg that leans over a decrease line, or lies along an edge.</summary>
    public bool Bar(double dx, double dy, double lean, double halfLength, double halfWidth, double proud, int leg) =>
        Bean(dx, dy, Math.Cos(lean), Math.Sin(lean), halfLength, halfWidth, proud, leg);

    // Cosine and sine of 0.40 and a little more or less, by the first terms of their series: legs are looked at by the million.
    private static (double Cos, double Sin) Leaning(double more)
    {
        const double cos = 0.9210609940028851;
        const double sin = 0.3894183423086505;
        var (even, odd) = (1 - (more * more / 2), more - (more * more * more / 6));
        return ((cos * even) - (sin * odd), (sin * even) + (cos * odd));
    }

    private bool Bean(double dx, double dy, double cos, double sin, double halfLength, double halfWidth, double proud, int leg)
    {
        var (a, b) = ((dx * sin) + (dy * cos), (dx * cos) - (dy * sin));
        var (e, f) = (a / halfLength, b / halfWidth);
        var e2 = e * e;
        var q = 1 - (f * f) - (e2 * e2);
        if (q <= 0.0004)
        {
            return false;
        }

        var h = Math.Sqrt(q);
        if (proud * h <= Height)
        {
            return false;
        }

        Height = proud * h;
        var steep = proud / Math.Max(h, 0.35);
        var (across, along) = (-f / halfWidth * steep, -2 * e * e2 / halfLength * steep);
        (SlopeWale, SlopeCourse) = ((across * cos) + (along * sin), (along * cos) - (across * sin));
        (Leg, AlongLeg, AcrossLeg) = (leg, a, b);
        return true;
    }
}
