using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>A two-strand braid: a set-up row of both strands in turn, then two purl rows with the strands crossed over, then under.</summary>
internal static class BraidRows
{
    /// <summary>Rows of one braid.</summary>
    public const int Rows = 3;

    public static void Add(int number, int stitches, double loop, Gauge gauge, List<PlanSection> sections, List<HatPart> parts)
    {
        sections.Add(new PlanSection(SectionKind.Braid, number,
        [
            new RowRun(1, stitches, StitchPattern.BraidSetUp),
            new RowRun(1, stitches, StitchPattern.BraidOver),
            new RowRun(1, stitches, StitchPattern.BraidUnder),
        ]));
        foreach (var strand in "ab")
        {
            parts.Add(new HatPart(
                PartNames.Strand(number, strand),
                PartKind.Strand,
                number,
                strand,
                Rows,
                gauge.DepthOf(Rows),
                Extras.BraidStrand * stitches * loop,
                Extras.Ends));
        }
    }
}
