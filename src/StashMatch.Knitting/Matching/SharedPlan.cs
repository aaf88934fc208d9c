namespace StashMatch.Knitting.Matching;

/// <summary>What a plan is best at.</summary>
public enum PlanKind
{
    /// <summary>Lasts most surely; the one that is shown first.</summary>
    Surest,

    /// <summary>Finishes most leftovers, as sure as the word asks.</summary>
    UsesMostUp,

    /// <summary>As sure as the surest, its stripes in the smallest steps of colour.</summary>
    Evenest,
}

/// <summary>One of the plans of an answer.</summary>
/// <param name="Kind">What it is best at.</param>
/// <param name="ChanceOfEnough">Chance that no leftover runs out, 0 to 1; 0 with something short.</param>
/// <param name="MarginPercent">The smallest reserve of a leftover in per cent of its needs, rounded down to 0.1; 0 with something short.</param>
/// <param name="Sureness">Its rung, as <see cref="Answer.Sureness"/>.</param>
/// <param name="Parts">The parts in knitting order.</param>
/// <param name="Leftovers">Every leftover asked about, in the order asked.</param>
public sealed record SharedPlan(
    PlanKind Kind,
    double ChanceOfEnough,
    decimal MarginPercent,
    double Sureness,
    IReadOnlyList<PartAnswer> Parts,
    IReadOnlyList<LeftoverAnswer> Leftovers);
