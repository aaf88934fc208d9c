using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Odds;

/// <summary>Leftovers to try the odds on, and draws of how they turn out by the rule as it is written, in literals.</summary>
internal static class Balls
{
    /// <summary>A leftover as weighed; a step of 0 is a weight its maker states.</summary>
    public static Leftover Of(decimal grams, decimal step, decimal tare = 0, RatioSource source = RatioSource.Printed, decimal mass = 100, decimal metres = 400, string id = "l") => new(
        id,
        id,
        step == 0 ? Weighing.Stated(Grams.From(grams)) : new Weighing(Grams.From(grams + tare), Grams.From(tare), Grams.From(step)),
        new LabelRatio(mass, MassUnit.Grams, metres, LengthUnit.Metres, source));

    /// <summary>A load of so many metres.</summary>
    public static Load On(Leftover leftover, double metres) => new(leftover, Metres.Needed(metres));

    /// <summary>How often, of so many draws, each leftover lasts by itself, and all of them together.</summary>
    public static (double[] Own, double Joint) Drawn(double spread, IReadOnlyList<Load> loads, int draws, int seed)
    {
        var random = new Random(seed);
        double? other = null;
        double Gauss()
        {
            if (other is { } kept)
            {
                other = null;
                return kept;
            }

            var (far, (sine, cosine)) = (Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())), Math.SinCos(2 * Math.PI * random.NextDouble()));
            other = far * sine;
            return far * cosine;
        }

        var facts = loads.Select(l => (
            Grams: (double)l.Leftover.Weighing.Net.Value,
            Band: BandOf(l.Leftover.Weighing),
            PerGram: (double)l.Leftover.Ratio.MetresPerGram,
            Label: l.Leftover.Ratio.Source switch
            {
                RatioSource.Guessed => 0.12,
                RatioSource.Measured => Math.Max(0.02, (double)l.Leftover.Weighing.ScaleStep.Value / 2 / Math.Sqrt(3) / (double)l.Leftover.Ratio.MassInGrams),
                _ => 0.02,
            },
            Load: (double)l.Length.Value)).ToArray();
        var (own, joint) = (new int[facts.Length], 0);
        for (var draw = 0; draw < draws; draw++)
        {
            var common = (spread * Gauss()) + (0.015 * Gauss());
            var all = true;
            for (var j = 0; j < facts.Length; j++)
            {
                var f = facts[j];
                var holds = (f.Grams + (f.Band * ((2 * random.NextDouble()) - 1))) * f.PerGram * Math.Exp(f.Label * Gauss());
                var lasts = holds >= f.Load * Math.Exp(common + (0.03 * Gauss()));
                own[j] += lasts ? 1 : 0;
                all &= lasts;
            }

            joint += all ? 1 : 0;
        }

        return (Array.ConvertAll(own, o => o / (double)draws), joint / (double)draws);
    }

    // Half a step either way, a whole one with a tare; from 1 g on a whole one and one and a half.
    private static double BandOf(Weighing weighing) =>
        (double)weighing.ScaleStep.Value * ((weighing.Tare.Value > 0 ? 1 : 0.5) + (weighing.ScaleStep.Value >= 1 ? 0.5 : 0));
}
