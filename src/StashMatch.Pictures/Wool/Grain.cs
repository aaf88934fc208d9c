namespace StashMatch.Pictures;

/// <summary>Chance that is the same every time: numbers drawn from places, and what is smooth between them. The page's script has the same.</summary>
internal static class Grain
{
    public const double Round = Math.PI * 2;
    private static readonly byte[] Bytes = [.. Enumerable.Range(0, 4097).Select(i => (byte)((255 * Coded(i / 4096.0)) + 0.5))];

    /// <summary>0 to under 1, for a place and a kind.</summary>
    public static double Hash(int i, int j, int k)
    {
        unchecked
        {
            var h = (i * 374761393) ^ (j * 668265263) ^ (k * (int)2246822519);
            h = (h ^ (int)((uint)h >> 15)) * (int)2246822519;
            h = (h ^ (int)((uint)h >> 13)) * (int)3266489917;
            return (uint)(h ^ (int)((uint)h >> 16)) / 4294967296.0;
        }
    }

    /// <summary>−1 to 1, smooth along a line.</summary>
    public static double Along(double x, int k)
    {
        var i = (int)Math.Floor(x);
        var f = x - i;
        return (Mix(Hash(i, 7, k), Hash(i + 1, 7, k), f * f * (3 - (2 * f))) * 2) - 1;
    }

    /// <summary>−1 to 1, smooth over a plane.</summary>
    public static double Over(double x, double y, int k)
    {
        var (i, j) = ((int)Math.Floor(x), (int)Math.Floor(y));
        var (f, g) = (x - i, y - j);
        var u = f * f * (3 - (2 * f));
        return (Mix(Mix(Hash(i, j, k), Hash(i + 1, j, k), u), Mix(Hash(i, j + 1, k), Hash(i + 1, j + 1, k), u), g * g * (3 - (2 * g))) * 2) - 1;
    }

    public static double Mix(double a, double b, double t) => a + ((b - a) * t);

    public static double Clamp(double x, double low, double high) => x < low ? low : x > high ? high : x;

    /// <summary>0 below a, 1 above b, smooth between.</summary>
    public static double Smooth(double a, double b, double x)
    {
        var t = Clamp((x - a) / (b - a), 0, 1);
        return t * t * (3 - (2 * t));
    }

    /// <summary>A hump of height 1 at <paramref name="at"/>.</summary>
    public static double Hump(double x, double at, double width)
    {
        var q = (x - at) / width;
        return q is < -3 or > 3 ? 0 : Math.Exp(-q * q);
    }

    /// <summary>The angle brought to within half a round of 0.</summary>
    public static double Turn(double angle) => angle - (Round * Math.Floor((angle / Round) + 0.5));

    /// <summary>Light of an sRGB share, 0 to 1.</summary>
    public static double Linear(double coded) => coded <= 0.04045 ? coded / 12.92 : Math.Pow((coded + 0.055) / 1.055, 2.4);

    /// <summary>The sRGB byte of light, 0 to 1.</summary>
    public static byte Byte(double light) => Bytes[light <= 0 ? 0 : light >= 1 ? 4096 : (int)((light * 4096) + 0.5)];

    private static double Coded(double light) => light <= 0.0031308 ? light * 12.92 : (1.055 * Math.Pow(light, 1 / 2.4)) - 0.055;
}
