namespace StashMatch.Knitting.Colours;

/// <summary>How far apart two colours look.</summary>
public static class ColourDifference
{
    private const double Pow25To7 = 6103515625.0;

    /// <summary>CIEDE2000, kL = kC = kH = 1: 0 for equal colours, about 1 for just noticeable, 100 for black and white.</summary>
    /// <remarks>Sharma, Wu &amp; Dalal 2005, Color Res. Appl. 30, 21-30 [source].</remarks>
    public static double Ciede2000(Lab first, Lab second)
    {
        var meanC = (Hypot(first.A, first.B) + Hypot(second.A, second.B)) / 2;
        var g = 0.5 * (1 - Math.Sqrt(Pow7(meanC) / (Pow7(meanC) + Pow25To7)));
        var (a1, a2) = ((1 + g) * first.A, (1 + g) * second.A);
        var (c1, c2) = (Hypot(a1, first.B), Hypot(a2, second.B));
        var (h1, h2) = (Hue(a1, first.B), Hue(a2, second.B));
        var grey = c1 * c2 == 0;
        var turn = h2 - h1;
        var deltaHue = grey ? 0 : turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
        var sum = h1 + h2;
        var meanHue = grey ? sum : Math.Abs(turn) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
        var (dL, dC, dH) = (second.L - first.L, c2 - c1, 2 * Math.Sqrt(c1 * c2) * Math.Sin(Radians(deltaHue / 2)));
        var (meanL, meanChroma) = ((first.L + second.L) / 2, (c1 + c2) / 2);
        var t = 1 - (0.17 * Math.Cos(Radians(meanHue - 30))) + (0.24 * Math.Cos(Radians(2 * meanHue)))
            + (0.32 * Math.Cos(Radians((3 * meanHue) + 6))) - (0.20 * Math.Cos(Radians((4 * meanHue) - 63)));
        var from50 = (meanL - 50) * (meanL - 50);
        var sL = 1 + (0.015 * from50 / Math.Sqrt(20 + from50));
        var sC = 1 + (0.045 * meanChroma);
        var sH = 1 + (0.015 * meanChroma * t);
        var blue = (meanHue - 275) / 25;
        var rT = -2 * Math.Sqrt(Pow7(meanChroma) / (Pow7(meanChroma) + Pow25To7)) * Math.Sin(Radians(60 * Math.Exp(-blue * blue)));
        var (l, c, h) = (dL / sL, dC / sC, dH / sH);
        return Math.Sqrt((l * l) + (c * c) + (h * h) + (rT * c * h));
    }

    private static double Hypot(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static double Pow7(double x) => x * x * x * x * x * x * x;

    private static double Radians(double degrees) => degrees * Math.PI / 180;

    private static double Hue(double a, double b)
    {
        if (a == 0 && b == 0)
        {
            return 0;
        }

        var degrees = Math.Atan2(b, a) * 180 / Math.PI;
        return degrees < 0 ? degrees + 360 : degrees;
    }
}
