using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The widening sets of leftovers a brim is tried with.</summary>
internal sealed record BrimSet(int Width)
{
    /// <summary>Those that keep shape; then also those that relax; then also unknown fibre; then all (null).</summary>
    public static IReadOnlyList<BrimSet?> Widening { get; } = [new(0), new(1), new(2), null];

    /// <summary>Whether a yarn so rated is in the set.</summary>
    public bool Holds(BrimRating rating) => WidthOf(rating) <= Width;

    /// <summary>The narrowest set a yarn so rated is in, 0 to 3.</summary>
    public static int WidthOf(BrimRating rating) => rating switch
    {
        { FibreUnknown: true } => 2,
        { Keeping: BrimKeeping.Keeps } => 0,
        { Keeping: BrimKeeping.Relaxes } => 1,
        _ => 3,
    };
}
