using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Odds;

/// <summary>What one leftover has to serve.</summary>
/// <param name="Leftover">The leftover.</param>
/// <param name="Length">The needs on it, factor and ends in; no reserve.</param>
public readonly record struct Load(Leftover Leftover, Metres Length)
{
    /// <summary>What weighing this ball half-way told, against the use that <see cref="Length"/> is worked out with; null where it was not weighed since.</summary>
    public MeasuredRate? Rate { get; init; }
}
