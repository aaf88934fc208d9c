using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The four nested sets of leftovers a brim may come from: 0 those that keep shape, 1 also those that relax, 2 also unknown fibre, 3 all.</summary>
internal static class BrimSet
{
    /// <summary>The set of all.</summary>
    public const int Widest = 3;

    /// <summary>The narrowest set a yarn so rated is in, 0 to 3.</summary>
    public static int WidthOf(BrimRating rating) => rating switch
    {
        { FibreUnknown: true } => 2,
        { Keeping: BrimKeeping.Keeps } => 0,
        { Keeping: BrimKeeping.Relaxes } => 1,
        _ => Widest,
    };
}
