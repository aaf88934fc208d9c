namespace StashMatch.Pictures;

/// <summary>Where a hat lies on a picture: pixels to a centimetre and the pixel of the form's own origin. It is the same however the hat is turned.</summary>
internal readonly record struct WoolFrame(int Width, int Height, double PerCm, double X, double Y)
{
    // Room for fibres, in cm.
    private const double Room = 0.35;

    public static WoolFrame Of(IReadOnlyList<WoolMesh> meshes, WoolView view)
    {
        var (sin, cos, far, low, high) = (Math.Sin(view.Tilt), Math.Cos(view.Tilt), 0.0, double.MaxValue, double.MinValue);
        foreach (var mesh in meshes)
        {
            for (var q = 0; q < mesh.X.Length; q++)
            {
                double x = mesh.X[q], z = mesh.Z[q], y = mesh.Y[q];
                var r = Math.Sqrt((x * x) + (z * z));
                (far, high, low) = (Math.Max(far, r), Math.Max(high, (y * cos) + (r * sin)), Math.Min(low, (y * cos) - (r * sin)));
            }
        }

        var needed = high - low + (2 * Room);
        var perCm = view.PerCm ?? Math.Min(view.Width / (2 * (far + Room)), view.Height / needed ?? double.MaxValue);
        var above = view.Height is { } fixedHeight ? (fixedHeight - (needed * perCm)) / 2 : 0;
        return new(view.Width, view.Height ?? (int)Math.Ceiling(needed * perCm), perCm, view.Width / 2.0, ((high + Room) * perCm) + above);
    }
}
