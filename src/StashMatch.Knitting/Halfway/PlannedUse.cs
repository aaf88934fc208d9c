using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Halfway;

/// <summary>What a plan takes from one ball for one part.</summary>
/// <param name="Part">The part's name.</param>
/// <param name="Planned">What was planned for it, factor and ends in, no allowance.</param>
/// <param name="Bare">Its bare metres, 0 or more; both strands' where it is held double from this one ball.</param>
/// <param name="Ends">Metres of its ends, 0 or more.</param>
public sealed record PlannedUse(string Part, Metres Planned, double Bare, double Ends)
{
    /// <summary>Takes a planned length apart into bare metres and ends.</summary>
    /// <param name="part">The part.</param>
    /// <param name="planned">What was planned for it from this ball.</param>
    /// <param name="usage">The usage it was planned with.</param>
    public static PlannedUse Of(HatPart part, Metres planned, Usage usage)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(usage);
        var length = (double)planned.Value;
        var once = (usage.Factor * part.BareMetres) + part.EndsMetres;
        var strands = length > 1.5 * once ? 2 : 1;
        var bare = Math.Min(strands * part.BareMetres, length / usage.Factor);
        return new PlannedUse(part.Name, planned, bare, length - (usage.Factor * bare));
    }
}
