using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>Yarn in one stitch, from the gauge of the blocked fabric: l = √(ks / (w·c)), w and c stitches and rows to 1 cm, l in cm.</summary>
/// <remarks>
/// Munden 1959, J. Text. Inst. 50, T448 [memory]. His fully relaxed pair kw 4.2, kc 5.5 (ks 23.1) is confirmed by a published
/// examination question (GATE Textile 2015 Q54: l = 0.5 cm gives 92.4 loops to 1 cm²) [source].
/// </remarks>
public static class LoopLength
{
    /// <summary>ks of wet-relaxed hand knitting [memory: Munden 1959].</summary>
    public const double WetRelaxed = 21.6;

    /// <summary>ks of fully relaxed fabric [source: GATE Textile 2015 Q54].</summary>
    public const double FullyRelaxed = 23.1;

    /// <summary>Rib and a brim on a smaller needle take 0.95 of a body stitch [practice].</summary>
    public const double Rib = 0.95;

    /// <summary>Rows of rib to 1 cm: by the law of the loop 1 / 0.95 as many as the body's, so that a depth of rib takes as much yarn as on the body's needle.</summary>
    public static decimal RibRowsPerCm(Gauge gauge) => gauge.RowsPerCm / 0.95m;

    /// <summary>Metres of yarn in one stockinette stitch.</summary>
    public static double MetresPerStitch(Gauge gauge, double ks = WetRelaxed) =>
        Math.Sqrt(ks / (double)(gauge.StitchesPerCm * gauge.RowsPerCm)) / 100;

    /// <summary>Loops to 1 cm² of a fabric whose stitches take <paramref name="loopCm"/> centimetres of yarn, over 0.</summary>
    public static double LoopsPerSquareCm(double loopCm, double ks = WetRelaxed) => ks / (loopCm * loopCm);
}
