namespace StashMatch.Knitting.Designing;

/// <summary>What a step of the working adds or does.</summary>
public enum WorkingKind
{
    /// <summary>Metres of one stitch, from the gauge: count is 21.6, constant the metres of one stitch.</summary>
    Loop,

    /// <summary>Plain stitches: count stitches, constant metres of one.</summary>
    Stitches,

    /// <summary>Stitches of rib, 0.95 of a plain one.</summary>
    Rib,

    /// <summary>Rounds of a tubular edge at half weight, in stitches of rib.</summary>
    TubularRounds,

    /// <summary>Stitches picked up, a plain one each.</summary>
    PickUp,

    /// <summary>A cast-on: count metres of edge, constant times.</summary>
    CastOn,

    /// <summary>An edge bound off, or cast on where the brim comes first: count metres of edge, constant times.</summary>
    Edge,

    /// <summary>A braid's strand: count metres of a plain row, constant times.</summary>
    Strand,

    /// <summary>A seam: count metres of it, constant times.</summary>
    Seam,

    /// <summary>A gathering thread: count metres round, constant times.</summary>
    Gather,

    /// <summary>A length the hat itself tells: count metres.</summary>
    Told,

    /// <summary>The usage factor: count bare metres, constant the factor.</summary>
    Factor,

    /// <summary>The two tails of a cut yarn.</summary>
    Ends,

    /// <summary>What was weighed in place of all that: count what was reckoned, constant the ratio.</summary>
    Weighed,

    /// <summary>The allowance: count metres, constant 1 and the allowance.</summary>
    Allowance,
}

/// <summary>One step from the row plan to a figure.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Mark">How well its constant is founded.</param>
/// <param name="Count">What is multiplied.</param>
/// <param name="Constant">What it is multiplied by.</param>
/// <param name="Metres">What comes of it, unrounded metres.</param>
public sealed record WorkingStep(WorkingKind Kind, SourceMark Mark, double Count, double Constant, double Metres);

/// <summary>The whole way to one part's figure.</summary>
/// <param name="Part">The part and its figure.</param>
/// <param name="Bare">Steps that add up to its bare metres.</param>
/// <param name="Then">Factor, ends, what was weighed, allowance: the last one's metres are the figure.</param>
public sealed record PartWorking(PartFigure Part, IReadOnlyList<WorkingStep> Bare, IReadOnlyList<WorkingStep> Then);
