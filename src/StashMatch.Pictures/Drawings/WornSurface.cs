namespace StashMatch.Pictures;

/// <summary>
/// A surface of revolution seen from the front and a little from above: a place is told by its angle from the front, in radians, right
/// positive, and its length along the surface from the lower edge upwards.
/// </summary>
internal sealed class WornSurface
{
    private const double Tilt = 17 * Math.PI / 180;
    private static readonly double Rise = Math.Cos(Tilt);
    private static readonly double Lean = Math.Sin(Tilt);

    private readonly double[] radius;
    private readonly double[] height;
    private readonly double[] along;
    private readonly bool frontOnly;

    private WornSurface(IReadOnlyList<(double Radius, double Height)> profile, double start, bool frontOnly)
    {
        this.frontOnly = frontOnly;
        radius = [.. profile.Select(p => p.Radius)];
        height = [.. profile.Select(p => p.Height)];
        along = new double[profile.Count];
        along[0] = start;
        for (var i = 1; i < along.Length; i++)
        {
            along[i] = along[i - 1] + Math.Sqrt(Math.Pow(radius[i] - radius[i - 1], 2) + Math.Pow(height[i] - height[i - 1], 2));
        }
    }

    /// <summary>Where the surface starts and ends.</summary>
    public double Start => along[0];

    /// <summary>The length at its upper end.</summary>
    public double End => along[^1];

    /// <summary>The body of a hat: straight sides, then a soft dome; <paramref name="length"/> from brim to top, starting <paramref name="below"/> further down.</summary>
    public static WornSurface Body(double r, double length, double below)
    {
        var dome = Math.Min(0.80 * r, 0.62 * length);
        var arc = ArcOf(r, dome);
        while (arc > length * 0.97 && dome > 1)
        {
            dome *= 0.94;
            arc = ArcOf(r, dome);
        }

        var side = Math.Max(0.03 * length, length - arc);
        var profile = new List<(double, double)>();
        for (var i = 0; i <= 16; i++)
        {
            var t = i / 16.0;
            profile.Add((r * (1 - (0.035 * (1 - t) * (1 - t))), -below + (t * (side + below))));
        }

        profile.AddRange(Dome(r, dome).Skip(1).Select(p => (p.Radius, p.Height + side)));
        return new(profile, -below, frontOnly: false);
    }

    /// <summary>A brim; its lower edge is at 0, its upper edge at the body's.</summary>
    public static WornSurface Cuff(double r, double depth, bool folded)
    {
        var profile = new List<(double, double)>();
        for (var i = 0; i <= 24; i++)
        {
            var t = (1 - Math.Cos(Math.PI * i / 24)) / 2;
            var bulge = folded ? (0.056 * (1 - t)) - 0.012 + (0.042 * Math.Pow(Math.Sin(Math.PI * t), 0.55)) : (0.03 * Math.Pow(1 - t, 2)) - 0.022;
            profile.Add((r * (1 + bulge), depth * (t - 1)));
        }

        return new(profile, 0, frontOnly: true);
    }

    /// <summary>How far round to either side the surface is seen at a height; π near the top, where the far side shows.</summary>
    public double Reach(double length)
    {
        if (frontOnly)
        {
            return Math.PI / 2;
        }

        var i = Math.Clamp(Find(length), 0, along.Length - 2);
        var (out1, out2) = (Slope(i), Slope(Math.Min(i + 1, along.Length - 2)));
        var share = Math.Clamp((length - along[i]) / (along[i + 1] - along[i]), 0, 1);
        var ratio = (out1 + ((out2 - out1) * share)) * Lean / Rise;
        return ratio >= 1 ? Math.PI : Math.Acos(-Math.Max(ratio, -0.3));
    }

    /// <summary>Half as far across as the surface is at a height.</summary>
    public double RadiusAt(double length) => At(Math.PI / 2, length).X;

    public Point At(double angle, double length)
    {
        var i = Math.Clamp(Find(length), 0, along.Length - 2);
        var share = Math.Clamp((length - along[i]) / (along[i + 1] - along[i]), 0, 1);
        var r = radius[i] + ((radius[i + 1] - radius[i]) * share);
        var z = height[i] + ((height[i + 1] - height[i]) * share);
        return new(r * Math.Sin(angle), (-z * Rise) + (r * Math.Cos(angle) * Lean));
    }

    /// <summary>The place, drawn back to the edge of what is seen.</summary>
    public Point Seen(double angle, double length)
    {
        var reach = Reach(length);
        return At(Math.Clamp(angle, -reach, reach), length);
    }

    /// <summary>What is seen of a patch of the surface; empty where nothing is.</summary>
    public IReadOnlyList<Point> Patch(double left, double right, double from, double to)
    {
        const int steps = 36;
        var rungs = new List<(double Length, double Low, double High)>();
        for (var i = 0; i <= steps; i++)
        {
            var length = from + ((to - from) * i / steps);
            var reach = Reach(length);
            var (low, high) = (Math.Max(left, -reach), Math.Min(right, reach));
            if (low < high)
            {
                rungs.Add((length, low, high));
            }
        }

        if (rungs.Count < 2)
        {
            return [];
        }

        var (first, last) = (rungs[0], rungs[^1]);
        return
        [
            .. Across(first.Length, first.Low, first.High),
            .. rungs.Skip(1).SkipLast(1).Select(r => At(r.High, r.Length)),
            .. Across(last.Length, last.High, last.Low),
            .. rungs.Skip(1).SkipLast(1).Reverse().Select(r => At(r.Low, r.Length)),
        ];
    }

    /// <summary>The edge of what is seen of the whole: the lower edge in front, then up the right side, over the top and down the left.</summary>
    public IReadOnlyList<Point> Silhouette()
    {
        const int steps = 400;
        var heights = Enumerable.Range(0, steps + 1).Select(i => Start + ((End - Start) * i / steps)).TakeWhile(s => Reach(s) < Math.PI).ToList();
        var rungs = heights.Where((_, i) => i % 8 == 0 || i > heights.Count - 16).ToList();
        return
        [
            .. Across(Start, -Reach(Start), Reach(Start)),
            .. rungs.Select(s => At(Reach(s), s)),
            At(Math.PI, Math.Min(End, heights[^1] + ((End - Start) / steps))),
            .. Enumerable.Reverse(rungs).Select(s => At(-Reach(s), s)),
        ];
    }

    public IEnumerable<Point> Across(double length, double from, double to)
    {
        var steps = Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / 0.09));
        return Enumerable.Range(0, steps + 1).Select(i => At(from + ((to - from) * i / steps), length));
    }

    private static double ArcOf(double r, double dome)
    {
        var points = Dome(r, dome).ToList();
        return points.Zip(points.Skip(1), (a, b) => Math.Sqrt(Math.Pow(a.Radius - b.Radius, 2) + Math.Pow(a.Height - b.Height, 2))).Sum();
    }

    private static IEnumerable<(double Radius, double Height)> Dome(double r, double dome)
    {
        const double soft = 0.84;
        for (var i = 0; i <= 60; i++)
        {
            var a = i * Math.PI / 120;
            yield return (i == 60 ? 0 : r * Math.Pow(Math.Cos(a), soft), dome * Math.Pow(Math.Sin(a), soft));
        }
    }

    private int Find(double length)
    {
        var i = Array.BinarySearch(along, length);
        return i >= 0 ? i : ~i - 1;
    }

    // How much the surface faces up against how much it faces out.
    private double Slope(int i)
    {
        var (dr, dz) = (radius[i + 1] - radius[i], height[i + 1] - height[i]);
        return Math.Abs(dz) < 1e-9 ? 1e9 : -dr / dz;
    }
}
