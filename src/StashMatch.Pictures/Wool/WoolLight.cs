using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>
/// Light on the fabric: a key from the upper left and a sky, both fixed to whoever looks, in linear RGB. No highlight: wool has none. Gaps
/// between loops are dark, a veil of fibres lies over the stitches, fibre ends at the rim catch light. One for each thread.
/// </summary>
internal sealed class WoolLight(WoolHat hat, WoolForm form, WoolView view, WoolFrame frame)
{
    private const double KeyX = -0.4584;
    private const double KeyY = 0.6577;
    private const double KeyZ = 0.5979;

    private readonly double deep = Mix(0.66, 0.50, Smooth(18, 44, frame.PerCm));
    private readonly double veiled = Mix(0.12, 0.22, Smooth(18, 44, frame.PerCm));

    // Grain and twist are finer than a pixel of a small picture.
    private readonly double detail = Smooth(16, 46, frame.PerCm);
    private readonly double rimLight = view.OnDark ? 0.24 : 0.17;
    private readonly double sinYaw = Math.Sin(view.Yaw);
    private readonly double cosYaw = Math.Cos(view.Yaw);
    private readonly double sinTilt = Math.Sin(view.Tilt);
    private readonly double cosTilt = Math.Cos(view.Tilt);

    public WoolSpot Spot { get; } = new(hat, form);

    public double Red { get; private set; }

    public double Green { get; private set; }

    public double Blue { get; private set; }

    /// <summary>Lights the place of a sample; false where light falls through between the loops at the very edge.</summary>
    public bool Fall(WoolSamples samples, int at)
    {
        var (surface, angle, s) = ((WoolSurface)samples.Surface[at], (double)samples.Angle[at], (double)samples.Along[at]);
        Spot.Look(surface, angle, s, form.Of(surface).Radius(s));
        double nx = samples.NormalX[at], ny = samples.NormalY[at], nz = samples.NormalZ[at];
        var far = Math.Sqrt((nx * nx) + (ny * ny) + (nz * nz));
        (nx, ny, nz) = (nx / far, ny / far, nz / far);
        var loops = Spot.Loops;
        if (nz < 0.05 && loops.Height < 0.30)
        {
            return false;
        }

        Light(surface, angle, s, Math.Min(1, samples.Dip[at]), nx, ny, nz);
        return true;
    }

    private void Light(WoolSurface surface, double angle, double s, double dip, double nx, double ny, double nz)
    {
        // Along the row and up the fabric, as seen.
        var (loops, halo) = (Spot.Loops, Spot.Yarn.Halo);
        var (sin, cos) = ((Spot.Sin * cosYaw) + (Spot.Cos * sinYaw), (Spot.Cos * cosYaw) - (Spot.Sin * sinYaw));
        double tx = cos, ty = sin * sinTilt, tz = -sin * cosTilt;
        var off = (tx * nx) + (ty * ny) + (tz * nz);
        (tx, ty, tz) = (tx - (off * nx), ty - (off * ny), tz - (off * nz));
        var long1 = Math.Sqrt((tx * tx) + (ty * ty) + (tz * tz));
        long1 = long1 == 0 ? 1 : long1;
        (tx, ty, tz) = (tx / long1, ty / long1, tz / long1);
        double bx = (ny * tz) - (nz * ty), by = (nz * tx) - (nx * tz), bz = (nx * ty) - (ny * tx);

        // The loops' own slopes; hairy yarn blurs them.
        var k = deep * (1 - (0.35 * Spot.Soft)) * (1.12 - (0.30 * halo));
        var (round, up) = (k * Spot.SlopeRound, k * Spot.SlopeUp);
        double mx = nx - (round * tx) - (up * bx), my = ny - (round * ty) - (up * by), mz = nz - (round * tz) - (up * bz);
        var long2 = Math.Sqrt((mx * mx) + (my * my) + (mz * mz));
        var (loop, plain) = (((mx * KeyX) + (my * KeyY) + (mz * KeyZ)) / long2, (nx * KeyX) + (ny * KeyY) + (nz * KeyZ));
        var soft = 0.38 + (0.62 * Clamp((plain + 0.5) / 1.5, 0, 1));
        var veil = veiled * (0.65 + (0.9 * halo));

        // Gaps, furrows, folds, and the shadow under a turned brim.
        var height = loops.Height > 1 ? 1 : loops.Height * (1.28 - (0.28 * loops.Height));
        var under = surface == WoolSurface.Body && form.Cuff is not null && s < 2.5 && hat.Brim is not null ? 1 - (0.62 * Math.Exp(-Math.Max(0, s) / 0.34)) : 1;
        var open = Mix(Mix(0.27 + (0.3 * (veil - 0.12)), 0.9, Spot.Soft), 1.03, height) * Spot.Shade * under * (1 - (0.5 * dip));
        var lit = (Falling(loop, my / long2, soft) * open * (1 + Spot.Tone) * 1.30) * Ply(angle, s);
        var flat = Falling(plain, ny, soft) * 0.86 * Math.Max(Spot.Shade, 0.7) * (1 - (0.5 * dip)) * (1 + Spot.Tone) * under * 1.18;
        var light = Mix(lit, flat, veil);
        var rim = 1 - Clamp(nz, 0, 1);
        var ends = rimLight * (0.6 + halo) * rim * rim * rim * (0.35 + (0.65 * Clamp((plain + 0.5) / 1.5, 0, 1)));
        var haze = (0.010 + (0.016 * halo) + ends) * (0.5 + (0.5 * loops.Height)) * under;
        var (ink, warm) = (Spot.Ink, 1 + (0.06 * (Hash(loops.Leg, Spot.Area, 2) - 0.5)));
        Red = (ink.Red * light * warm) + (haze * ink.PaleRed);
        Green = (ink.Green * light) + (haze * ink.PaleGreen);
        Blue = (ink.Blue * light * warm) + (haze * ink.PaleBlue);
    }

    private static double Falling(double towards, double up, double soft) =>
        (0.24 * (0.5 + (0.5 * up))) + (0.78 * Clamp((towards + 0.42) / 1.42, 0, 1) * soft) + 0.10;

    // Each leg its own tone, the twist of its plies, and the grain of the wool.
    private double Ply(double angle, double s)
    {
        var loops = Spot.Loops;
        var strength = loops.Height > 0 ? (0.14 - (0.07 * Spot.Yarn.Halo)) * (0.4 + (0.6 * detail)) : 0;
        var twist = strength * Math.Sin(((loops.AlongLeg + (loops.AcrossLeg * 1.25)) * 7.2) + loops.Leg);
        return 0.93 + (0.14 * Hash(loops.Leg, Spot.Area, 12)) + twist + (0.11 * detail * (Hash((int)(angle * 5200), (int)(s * 560), 8) - 0.5));
    }
}
