using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching;

/// <summary>What a plan is chosen by, the weightiest first.</summary>
public enum Tier
{
    /// <summary>Yes, only just, by the label or no.</summary>
    Word,

    /// <summary>The fewest metres short.</summary>
    LeastShort,

    /// <summary>The yarn that keeps the brim in shape best.</summary>
    Brim,

    /// <summary>The highest rung at which every leftover lasts.</summary>
    Sure,

    /// <summary>Leftovers finished rather than stubs.</summary>
    Tidy,

    /// <summary>The order of colours.</summary>
    Colour,

    /// <summary>As few changes as can be to the plan named in the question.</summary>
    AsItWas,
}

/// <summary>One tier of the choice with its figure and what limits it: a metre more of the leftover, or less of the part, lifts the figure.</summary>
/// <param name="Tier">The tier.</param>
/// <param name="LimitingPart">The part that limits it, where one does.</param>
/// <param name="LimitingLeftover">The leftover that limits it, where one does.</param>
public sealed record Chosen(Tier Tier, string? LimitingPart = null, string? LimitingLeftover = null)
{
    /// <summary>The figure where it is a chance: the rung of the word, or of the plan.</summary>
    public double? Chance { get; init; }

    /// <summary>The figure where it is a length: metres short.</summary>
    public Metres? Length { get; init; }

    /// <summary>The figure where it is a count: leftovers finished, or parts that changed; for the brim 0 keeps shape, 1 relaxes, 2 unknown, 3 any.</summary>
    public int? Count { get; init; }
}
