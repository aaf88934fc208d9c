using StashMatch.Knitting.Colours;
using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>A colour as light, and the pale light of its fibre ends.</summary>
internal sealed record WoolInk(double Red, double Green, double Blue)
{
    public double PaleRed { get; } = Pale(Red);

    public double PaleGreen { get; } = Pale(Green);

    public double PaleBlue { get; } = Pale(Blue);

    private static double Pale(double light) => 0.35 + (0.65 * Math.Sqrt(light));
}

/// <summary>A yarn ready to paint with.</summary>
internal sealed class WoolYarn
{
    /// <summary>Inks from one colour to the next.</summary>
    public const int Steps = 6;

    // Undyed wool, and what a yarn not knitted yet is mixed with.
    private static readonly YarnColour Undyed = YarnColour.FromRgb(0xDC, 0xD5, 0xC2);

    public WoolYarn(YarnLook look, bool ahead, int firstDye)
    {
        FirstDye = firstDye;
        Halo = Math.Clamp(look.Halo, 0, 1);
        Colours = [.. look.Colours.Take(YarnLook.MostColours).Select(c => ahead ? Hinted(c) : c)];
        if (Colours.Count == 0)
        {
            Colours = [Undyed];
        }

        var light = Colours.Select(c => new WoolInk(Linear(c.Red / 255.0), Linear(c.Green / 255.0), Linear(c.Blue / 255.0))).ToList();
        Inks = light.Count == 1 ? [light[0]] : [.. Enumerable.Range(0, light.Count * Steps).Select(i => Between(light, i))];
    }

    public IReadOnlyList<YarnColour> Colours { get; }

    /// <summary>The number of its first colour, all yarns' colours counted through.</summary>
    public int FirstDye { get; }

    public double Halo { get; }

    /// <summary>Its colours in turn, with those between; one where it has one.</summary>
    public WoolInk[] Inks { get; }

    // Most of the way each colour is itself; it changes over the last third.
    private static WoolInk Between(List<WoolInk> light, int i)
    {
        var (a, b, t) = (light[i / Steps], light[((i / Steps) + 1) % light.Count], Smooth(0.5, 1.1, (double)(i % Steps) / Steps));
        return new(Mix(a.Red, b.Red, t), Mix(a.Green, b.Green, t), Mix(a.Blue, b.Blue, t));
    }

    private static YarnColour Hinted(YarnColour c)
    {
        static byte Of(byte undyed, byte own) => (byte)(undyed + ((own - undyed) * 0.2) + 0.5);
        return YarnColour.FromRgb(Of(Undyed.Red, c.Red), Of(Undyed.Green, c.Green), Of(Undyed.Blue, c.Blue));
    }
}
