namespace StashMatch.Pictures;

/// <summary>The side of a body of revolution: distance from the middle and height, evenly spaced along the fabric. In cm.</summary>
internal sealed class WoolProfile
{
    private readonly double[] radius;
    private readonly double[] height;
    private readonly int last;

    public WoolProfile(IReadOnlyList<(double Radius, double Height)> points, int steps, double start)
    {
        var along = new double[points.Count];
        for (var i = 1; i < along.Length; i++)
        {
            along[i] = along[i - 1] + Far(points[i - 1], points[i]);
        }

        (last, radius, height, Start, Length) = (steps, new double[steps + 1], new double[steps + 1], start, along[^1]);
        for (var (i, k) = (0, 0); i <= steps; i++)
        {
            var s = Length * i / steps;
            while (k < along.Length - 2 && along[k + 1] < s)
            {
                k++;
            }

            var share = along[k + 1] > along[k] ? (s - along[k]) / (along[k + 1] - along[k]) : 0;
            radius[i] = Grain.Mix(points[k].Radius, points[k + 1].Radius, share);
            height[i] = Grain.Mix(points[k].Height, points[k + 1].Height, share);
        }
    }

    public double Start { get; }

    public double Length { get; }

    public double End => Start + Length;

    public double Top => height[last];

    public static double Far((double Radius, double Height) a, (double Radius, double Height) b) =>
        Math.Sqrt(((a.Radius - b.Radius) * (a.Radius - b.Radius)) + ((a.Height - b.Height) * (a.Height - b.Height)));

    public double Radius(double s)
    {
        var (i, share) = Find(s);
        return radius[i] + ((radius[i + 1] - radius[i]) * share);
    }

    /// <summary>Radius and height at a place, and the direction of the fabric there, of length 1.</summary>
    public (double Radius, double Height, double Out, double Up) At(double s)
    {
        var (i, share) = Find(s);
        var (dr, dz) = (radius[i + 1] - radius[i], height[i + 1] - height[i]);
        var far = Math.Sqrt((dr * dr) + (dz * dz));
        far = far == 0 ? 1 : far;
        return (radius[i] + (dr * share), height[i] + (dz * share), dr / far, dz / far);
    }

    private (int At, double Share) Find(double s)
    {
        var q = Grain.Clamp((s - Start) / Length * last, 0, last - 1e-6);
        var i = (int)q;
        return (i, q - i);
    }
}
