using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Leftovers as a bag has them: of any scale, label, fibre and colour. All invented.</summary>
internal static class Balls
{
    private static readonly string[] Fibres = ["100% wool", "100% wool", "80% superwash wool, 20% nylon", "100% acrylic", "unknown", "100% alpaca"];
    private static readonly (byte, byte, byte)?[] Colours = [(226, 211, 178), (223, 209, 180), (82, 48, 99), (38, 55, 79), (180, 54, 44), (86, 142, 94),
        (240, 200, 40), null, null];

    /// <summary>A leftover of about so many metres, weighed on one scale or another, with one kind of label or another.</summary>
    public static Leftover Drawn(string id, double metres, Random random)
    {
        var metresPerGram = new[] { 2m, 3.5m, 4m, 4m, 4.2m }[random.Next(5)];
        var step = new[] { 0.01m, 0.1m, 0.1m, 1m }[random.Next(4)];
        var grams = Math.Max(step, Math.Round((decimal)metres / metresPerGram / step) * step);
        var tare = random.Next(5) == 0 ? Math.Round(3.5m / step) * step : 0;
        var source = random.Next(6) switch { 0 => RatioSource.Guessed, 1 => RatioSource.Measured, _ => RatioSource.Printed };
        var mass = source == RatioSource.Measured ? 1 + random.Next(9) : 50;
        return new Leftover(id, id, new Weighing(Grams.From(grams + tare), Grams.From(tare), Grams.From(step)), new LabelRatio(mass, MassUnit.Grams,
            mass * metresPerGram, LengthUnit.Metres, source))
        {
            Class = random.Next(30) == 0 ? WeightClass.Light : WeightClass.SuperFine,
            Fibre = FibreBlend.TryParse(Fibres[random.Next(Fibres.Length)], out var fibre, out _) ? fibre : FibreBlend.Unknown,
            Colour = Colours[random.Next(Colours.Length)] is var (r, g, b) ? YarnColour.FromRgb(r, g, b) : null,
        };
    }
}
