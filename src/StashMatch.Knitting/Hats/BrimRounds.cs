using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>The brim's stitches, rounds and metres; a stitch of rib takes 0.95 of a body stitch, and its rows stand closer by as much.</summary>
internal static class BrimRounds
{
    private const decimal SnugShare = 0.92m;

    /// <summary>The multiple of the rib nearest to the fit's share of <paramref name="bodyStitches"/>.</summary>
    public static int Stitches(Brim brim, decimal bodyStitches) =>
        Counts.Nearest(brim.Fit == BrimFit.Snug ? bodyStitches * SnugShare : bodyStitches, brim.Rib);

    /// <summary>Why a brim cannot be knitted at this gauge.</summary>
    public static CannotBeKnitted TooSmall { get; } =
        new("brim.depthCm", "The brim is too small for one repeat and one round of rib at this gauge.");

    /// <summary>Rounds of rib as knitted: a folded brim twice its depth; flat before a body, an even count, so that the first stripe begins on the right side.</summary>
    public static int Rounds(Brim brim, Gauge gauge, bool even = false) =>
        Counts.Nearest(brim.Depth.Value * (brim.Folded ? 2 : 1) * LoopLength.RibRowsPerCm(gauge), even ? 2 : 1);

    /// <summary>The depth of so many rounds of rib as knitted; a folded brim's both layers.</summary>
    public static Centimetres Depth(int rounds, Gauge gauge) => Centimetres.From(rounds / LoopLength.RibRowsPerCm(gauge));

    public static PlanSection Section(Brim brim, int stitches, int rounds, bool pickedUp)
    {
        var runs = new List<RowRun>();
        var tubular = brim.BindOff == EdgeKind.Tubular ? new RowRun(Extras.TubularRounds, stitches, StitchPattern.TubularEdge) : null;
        if (pickedUp)
        {
            runs.Add(new RowRun(1, stitches, StitchPattern.PickUp));
        }
        else if (tubular is not null)
        {
            runs.Add(tubular);
        }

        runs.Add(new RowRun(rounds, stitches, StitchPattern.Rib));
        if (pickedUp && tubular is not null)
        {
            runs.Add(tubular);
        }

        return new PlanSection(SectionKind.Brim, 0, runs);
    }

    public static HatPart Part(Brim brim, int stitches, int rounds, Gauge gauge, double loop, bool pickedUp)
    {
        var edge = (double)(stitches / gauge.StitchesPerCm) / 100;
        var halfWeight = brim.BindOff == EdgeKind.Tubular ? Extras.TubularRounds * Extras.TubularWeight : 0;
        var bare = ((rounds + halfWeight) * stitches * LoopLength.Rib * loop)
            + (pickedUp ? stitches * loop : 0)
            + (Extras.Edge(brim.BindOff) * edge);
        return new HatPart(PartNames.Brim, PartKind.Brim, 0, null, rounds, brim.Depth, bare, Extras.Ends);
    }
}
