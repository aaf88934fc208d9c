using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Halfway;

/// <summary>A ball a plan is knitted from.</summary>
/// <param name="Start">As it was weighed before its first part.</param>
/// <param name="Uses">What the plan takes from it, in knitting order; each part once.</param>
public sealed record BallInWork(Leftover Start, IReadOnlyList<PlannedUse> Uses)
{
    /// <summary>The last reading since, yarn no heavier than at the start; null where it was not weighed again.</summary>
    public Weighing? Now { get; init; }

    /// <summary>Parts that were finished when it was weighed again.</summary>
    public IReadOnlyList<string> DoneWhenWeighed { get; init; } = [];

    /// <summary>Parts that are finished by now.</summary>
    public IReadOnlyList<string> Done { get; init; } = [];

    /// <summary>What it says of its own use; null where it was not weighed again after a part of it was finished, or nothing was used.</summary>
    public MeasuredRate? Rate
    {
        get
        {
            var done = Uses.Where(u => DoneWhenWeighed.Contains(u.Part, StringComparer.Ordinal)).ToList();
            var planned = done.Sum(u => (double)u.Planned.Value);
            if (Now is null || planned <= 0 || Now.Net >= Start.Weighing.Net)
            {
                return null;
            }

            // What is done and what is ahead each take their own way off what all yarn of the hat takes.
            var grams = (double)(Start.Weighing.Net - Now.Net).Value;
            var first = (double)Start.Weighing.BandGrams / Math.Sqrt(3) / grams;
            return new MeasuredRate(
                grams * (double)Start.Ratio.MetresPerGram / planned, Math.Sqrt((first * first) + (Sureness.OneLeftover * Sureness.OneLeftover)), grams);
        }
    }

    /// <summary>The ball by its last reading.</summary>
    public Leftover AsWeighed => Now is null ? Start : Start with { Weighing = Now };
}
