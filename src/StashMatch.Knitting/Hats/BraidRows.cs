using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>
/// A braid of three rows. Two strands: a set-up row of both in turn, then two rows of bumps on the right side with the strands crossed over,
/// then under.
/// </summary>
internal static class BraidRows
{
    /// <summary>Rows of one braid.</summary>
    public const int Rows = 3;

    /// <summary>Whether the braids need an even stitch count.</summary>
    public static bool WantsEven(Braids braids) => braids.Where != BraidPlaces.None && braids.StrandCount == 2;

    /// <summary>Bare metres of one strand.</summary>
    public static double BareStrand(Braids braids, int stitches, double loop) =>
        (braids.StrandCount == 1 ? Extras.SidewaysBraid : Extras.BraidStrand) * stitches * loop;

    public static void Add(Braids braids, int number, int stitches, double loop, Gauge gauge, List<PlanSection> sections, List<HatPart> parts)
    {
        sections.Add(new PlanSection(SectionKind.Braid, number,
        [
            new RowRun(1, stitches, StitchPattern.BraidSetUp),
            new RowRun(1, stitches, StitchPattern.BraidOver),
            new RowRun(1, stitches, StitchPattern.BraidUnder),
        ]));
        foreach (var strand in braids.StrandCount == 1 ? "a" : "ab")
        {
            parts.Add(new HatPart(
                PartNames.Strand(number, strand),
                PartKind.Strand,
                number,
                strand,
                Rows,
                gauge.DepthOf(Rows),
                BareStrand(braids, stitches, loop),
                Extras.Ends));
        }
    }
}
