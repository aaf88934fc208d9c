using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace StashMatch.Knitting.Colours;

/// <summary>A yarn's colour in sRGB, eight bits each. <c>default</c> is black.</summary>
public readonly record struct YarnColour
{
    private YarnColour(byte red, byte green, byte blue) => (Red, Green, Blue) = (red, green, blue);

    /// <summary>Red, 0 to 255.</summary>
    public byte Red { get; }

    /// <summary>Green, 0 to 255.</summary>
    public byte Green { get; }

    /// <summary>Blue, 0 to 255.</summary>
    public byte Blue { get; }

    /// <summary>Such as "#5B7A3A".</summary>
    public string Hex => $"#{Red:X2}{Green:X2}{Blue:X2}";

    /// <summary>In CIELAB under D65 (IEC 61966-2-1 matrices) [source].</summary>
    public Lab Lab
    {
        get
        {
            var (r, g, b) = Linear();
            var x = F(((0.4124564 * r) + (0.3575761 * g) + (0.1804375 * b)) / 0.95047);
            var y = F((0.2126729 * r) + (0.7151522 * g) + (0.0721750 * b));
            var z = F(((0.0193339 * r) + (0.1191920 * g) + (0.9503041 * b)) / 1.08883);
            return new Lab((116 * y) - 16, 500 * (x - y), 200 * (y - z));
            static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;
        }
    }

    /// <summary>In OKLab (Ottosson's matrices) [source].</summary>
    public OkLab OkLab
    {
        get
        {
            var (r, g, b) = Linear();
            var l = Math.Cbrt((0.4122214708 * r) + (0.5363325363 * g) + (0.0514459929 * b));
            var m = Math.Cbrt((0.2119034982 * r) + (0.6806995451 * g) + (0.1073969566 * b));
            var s = Math.Cbrt((0.0883024619 * r) + (0.2817188376 * g) + (0.6299787005 * b));
            return new OkLab(
                (0.2104542553 * l) + (0.7936177850 * m) - (0.0040720468 * s),
                (1.9779984951 * l) - (2.4285922050 * m) + (0.4505937099 * s),
                (0.0259040371 * l) + (0.7827717662 * m) - (0.8086757660 * s));
        }
    }

    /// <summary>Relative luminance, 0 to 1 (WCAG 2) [source].</summary>
    public double RelativeLuminance
    {
        get
        {
            var (r, g, b) = Linear();
            return (0.2126 * r) + (0.7152 * g) + (0.0722 * b);
        }
    }

    /// <summary>A colour of three bytes.</summary>
    public static YarnColour FromRgb(byte red, byte green, byte blue) => new(red, green, blue);

    /// <summary>Reads "#5B7A3A", with or without the #, or its short form "#5B7".</summary>
    public static bool TryParse(string? hex, out YarnColour colour, [NotNullWhen(false)] out string? message)
    {
        (colour, message) = (default, null);
        var digits = (hex ?? "").Trim();
        digits = digits.StartsWith('#') ? digits[1..] : digits;
        if (digits.Length == 3)
        {
            digits = string.Concat(digits.Select(d => $"{d}{d}"));
        }

        if (digits.Length != 6 || !uint.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
        {
            message = "must be a colour such as #5B7A3A";
            return false;
        }

        colour = new YarnColour((byte)(value >> 16), (byte)(value >> 8), (byte)value);
        return true;
    }

    /// <summary>Contrast ratio of two colours, 1 to 21 (WCAG 2) [source].</summary>
    public static double Contrast(YarnColour a, YarnColour b)
    {
        var (x, y) = (a.RelativeLuminance, b.RelativeLuminance);
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private (double R, double G, double B) Linear()
    {
        return (To(Red), To(Green), To(Blue));
        static double To(byte channel)
        {
            var c = channel / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }
    }
}
