using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;

namespace StashMatch.Knitting.Bags;

/// <summary>What one stripe's share is worth, to be added up and compared: first that little is held by those that go in, then tidiness, then that the stripes are even.</summary>
internal static class DepthWorth
{
    // Enough for 24 stripes each: tidiness within ± 20,000, rows up to 1,000 squared.
    private const int TidyFrom = 30;
    private const int HeldFrom = 54;

    /// <summary>No way at all.</summary>
    public static readonly Int128 None = Int128.MinValue;

    /// <param name="held">What the leftover holds, millimetres.</param>
    /// <param name="bears">What it may give, millimetres.</param>
    /// <param name="need">What it gives, millimetres.</param>
    /// <param name="rows">The stripe's rows.</param>
    public static Int128 Of(long held, long bears, long need, int rows) =>
        -((Int128)held << HeldFrom) + ((Int128)Worth.Tidiness.Of(bears, need) << TidyFrom) - ((long)rows * rows);
}
