using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Halfway;

/// <summary>Something that is short ahead: a ball that runs out, or a part no leftover gives enough for.</summary>
/// <param name="Ball">The ball; null for a part.</param>
/// <param name="Part">The part; null for a ball.</param>
/// <param name="Length">By how much, at the rate forecast; over 0.</param>
public sealed record Shortage(BallAhead? Ball, PartLacking? Part, Metres Length);
