using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Halfway;

/// <summary>What helps where what is ahead falls short.</summary>
public enum OfferKind
{
    /// <summary>Knit the part from another ball of the hat, the one with most to spare.</summary>
    BallOfTheHat,

    /// <summary>Decrease a round sooner: one plain round less in the crown.</summary>
    DecreaseSooner,

    /// <summary>Knit the part from a leftover the hat does not use.</summary>
    OtherLeftover,
}

/// <summary>One offer.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Part">The part concerned.</param>
/// <param name="Leftover">The leftover to take; null where none changes.</param>
/// <param name="Saves">What it saves of the yarn that is short; null where that is not known.</param>
/// <param name="Verdict">The verdict on what is ahead then; null where it cannot be told.</param>
/// <param name="ChanceOfEnough">The chance then, 0 to 1; null where it cannot be told.</param>
public sealed record Offer(OfferKind Kind, string Part, string? Leftover, Metres? Saves, Verdict? Verdict, double? ChanceOfEnough)
{
    /// <summary>By how much what is ahead is short in all then.</summary>
    public Metres Short { get; init; }
}
