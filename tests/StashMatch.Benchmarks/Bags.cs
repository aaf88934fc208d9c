using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Benchmarks;

/// <summary>Seeded bags of leftovers, all invented.</summary>
internal static class Bags
{
    private static readonly string[] Fibres =
        ["80% wool, 20% nylon", "100% superwash merino", "75% superwash merino, 25% nylon", "100% alpaca", "70% superwash merino, 30% silk", "unknown"];

    /// <summary>So many leftovers of 2 to 30 g, as a person's bag has them.</summary>
    public static IReadOnlyList<Leftover> Of(int count, int seed)
    {
        var random = new Random(seed);
        var ratio = new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed);
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            var grams = Math.Round((decimal)Math.Exp(random.NextDouble() * Math.Log(15)) * 2, 1);
            _ = FibreBlend.TryParse(Fibres[random.Next(Fibres.Length)], out var fibre, out _);
            return new Leftover($"l{i:0000}", $"leftover {i}", new Weighing(Grams.From(grams), default, Grams.From(0.1m)), ratio)
            {
                Class = WeightClass.SuperFine,
                Fibre = fibre!,
                Colour = YarnColour.FromRgb((byte)random.Next(256), (byte)random.Next(256), (byte)random.Next(256)),
            };
        })];
    }
}
