namespace StashMatch.Pictures;

/// <summary>From where a hat is seen, and how large. The ground is transparent.</summary>
/// <param name="Width">The picture's width in pixels, 16 to 2400.</param>
/// <param name="Yaw">How far the hat is turned, radians; a positive turn brings what is on the left to the front.</param>
/// <param name="Tilt">How far from above it is seen, radians, 0 to π/2.</param>
/// <param name="OnDark">Whether it lies on a dark ground: fibre ends at the rim then catch a little more light.</param>
/// <param name="PerCm">Pixels to a centimetre, to show several hats at one scale, the hat in the middle of the width; null: as large as the width lets it
/// be.</param>
/// <param name="Height">Its height in pixels, 16 to 2400: the hat then stands in the middle, as large as both let it be; null: as high as the hat needs,
/// however it is turned.</param>
public sealed record WoolView(int Width, double Yaw = WoolView.Turned, double Tilt = WoolView.Front, bool OnDark = false, double? PerCm = null,
    int? Height = null)
{
    /// <summary>A little turned, so that no side is like the other; the seam is at the back.</summary>
    public const double Turned = -0.26;

    /// <summary>The tilt of the view from the front.</summary>
    public const double Front = 17 * Math.PI / 180;

    /// <summary>The tilt of the view from above.</summary>
    public const double Above = 76 * Math.PI / 180;

    /// <summary>The tilt while a hat is being knitted side to side: the present stripe in front, all others in sight.</summary>
    public const double Half = 50 * Math.PI / 180;

    // Nobody's caller can ask for a picture that cannot be painted.
    internal void Check()
    {
        if (Width is < 16 or > 2400 || Height is < 16 or > 2400 || !double.IsFinite(Yaw) || Tilt is not (>= 0 and <= Math.PI / 2)
            || PerCm is not (null or (> 0.5 and < 200)))
        {
            throw new InvalidOperationException(
                "A picture is 16 to 2400 pixels wide and high, of a hat turned by some angle, seen from 0 to π/2 above, at 0.5 to 200 pixels to a centimetre.");
        }
    }
}
