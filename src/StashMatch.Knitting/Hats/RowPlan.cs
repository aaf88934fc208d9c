using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>What is worked in a row.</summary>
public enum StitchPattern
{
    /// <summary>Plain stockinette.</summary>
    Stockinette,

    /// <summary>Ribbing.</summary>
    Rib,

    /// <summary>The half-weight rounds of a tubular edge.</summary>
    TubularEdge,

    /// <summary>A braid's set-up row, one stitch of each strand in turn.</summary>
    BraidSetUp,

    /// <summary>A braid's second row, strands crossed over: purled in the round, knitted on the wrong side in flat work (<see cref="RowPlan.IsKnitted"/>).</summary>
    BraidOver,

    /// <summary>A braid's third row, strands crossed under: purled on the right side.</summary>
    BraidUnder,

    /// <summary>Brim stitches picked up along the selvedge.</summary>
    PickUp,

    /// <summary>A round that decreases; its stitch count is what is left on the needles.</summary>
    Decrease,
}

/// <summary>So many like rows or rounds in a run.</summary>
/// <param name="Rows">How many, 1 or more.</param>
/// <param name="Stitches">Stitches made in each.</param>
/// <param name="Pattern">What is worked.</param>
public sealed record RowRun(int Rows, int Stitches, StitchPattern Pattern);

/// <summary>What a section of the row plan is.</summary>
public enum SectionKind
{
    /// <summary>The brim.</summary>
    Brim,

    /// <summary>A stripe, with the rounds of the crown that fall in it.</summary>
    Stripe,

    /// <summary>A braid's three rows.</summary>
    Braid,

    /// <summary>A crown of its own yarn.</summary>
    Crown,
}

/// <summary>One section of the row plan, in knitting order.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Number">Stripe or braid number from 1; 0 for brim and crown.</param>
/// <param name="Runs">Its rows.</param>
public sealed record PlanSection(SectionKind Kind, int Number, IReadOnlyList<RowRun> Runs)
{
    /// <summary>All its rows or rounds, a tubular edge's and the pick-up row not counted.</summary>
    public int Rows => Runs.Where(r => r.Pattern is not (StitchPattern.TubularEdge or StitchPattern.PickUp)).Sum(r => r.Rows);
}

/// <summary>A hat of one size and stripe count, row by row, in knitting order. Everything else is read off it.</summary>
public sealed record RowPlan
{
    /// <summary>How the hat is put together.</summary>
    public required Construction Construction { get; init; }

    /// <summary>The size's letter or name.</summary>
    public required string Size { get; init; }

    /// <summary>How many stripes.</summary>
    public required int Stripes { get; init; }

    /// <summary>How many braids; fewer than boundaries where some fall inside the crown.</summary>
    public required int Braids { get; init; }

    /// <summary>Stitches of one body row (side to side: the panel row's).</summary>
    public required int BodyStitches { get; init; }

    /// <summary>Rows of the body, braids in (brim-up: rounds above the brim, crown in).</summary>
    public required int BodyRows { get; init; }

    /// <summary>Stitches of the brim; 0 without one.</summary>
    public required int BrimStitches { get; init; }

    /// <summary>Rounds of rib as knitted (a folded brim: both layers); 0 without a brim.</summary>
    public required int BrimRounds { get; init; }

    /// <summary>The brim's visible depth; 0 without one.</summary>
    public required Centimetres BrimDepth { get; init; }

    /// <summary>The depth of its rib as knitted; of a folded brim both layers.</summary>
    public Centimetres BrimKnitted => Hats.BrimRounds.Depth(BrimRounds, Gauge);

    /// <summary>Whether the brim is folded.</summary>
    public required bool BrimFolded { get; init; }

    /// <summary>Rounds of the crown's shaping, whoever's yarn it is; 0 side to side.</summary>
    public required int CrownRounds { get; init; }

    /// <summary>The gauge it was compiled at.</summary>
    public required Gauge Gauge { get; init; }

    /// <summary>Finished body circumference as knitted, from the whole stitches or rows.</summary>
    public required Centimetres Circumference { get; init; }

    /// <summary>The body above the brim as knitted.</summary>
    public required Centimetres BodyHeight { get; init; }

    /// <summary>The sections in knitting order.</summary>
    public required IReadOnlyList<PlanSection> Sections { get; init; }

    /// <summary>The parts in knitting order, with what each takes.</summary>
    public required IReadOnlyList<HatPart> Parts { get; init; }

    /// <summary>
    /// Whether a braid's row is knitted so that its bumps lie on the right side. A braid's set-up row is a right-side row; of the two that follow,
    /// the first is a wrong-side row in flat work and is knitted there with the strands at the back. In the round both are purled.
    /// </summary>
    public bool IsKnitted(StitchPattern pattern) => pattern == StitchPattern.BraidOver && Construction != Construction.BrimUpRound;
}
