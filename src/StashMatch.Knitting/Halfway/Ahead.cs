using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Halfway;

/// <summary>What is ahead of a plan half-way: a full answer whether it pleases or not.</summary>
public sealed record Ahead
{
    /// <summary>Every ball, in the order given.</summary>
    public required IReadOnlyList<BallAhead> Balls { get; init; }

    /// <summary>Parts ahead that no leftover gives enough for, in knitting order.</summary>
    public required IReadOnlyList<PartLacking> Lacking { get; init; }

    /// <summary>Yes, only just, or no, of what is ahead.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Its reason: covered, allowance, chance or short.</summary>
    public required Why Why { get; init; }

    /// <summary>Chance that no ball runs out, 0 to 1; 0 with something short, 1 with nothing ahead.</summary>
    public required double ChanceOfEnough { get; init; }

    /// <summary>What is known of this knitter by now.</summary>
    public required Usage Usage { get; init; }

    /// <summary>By how much it is short in all.</summary>
    public required Metres Short { get; init; }

    /// <summary>By how much it is short once the allowance on what is ahead is wanted too.</summary>
    public required Metres ShortForAllowance { get; init; }

    /// <summary>The ball with the least to spare on what is ahead of it; null with nothing ahead.</summary>
    public required BallAhead? Weakest { get; init; }

    /// <summary>Whether anything is still to be knitted.</summary>
    public bool Anything => Weakest is not null || Lacking.Count > 0;

    /// <summary>All that is short, longest first.</summary>
    public IReadOnlyList<Shortage> Shortages =>
    [
        .. Balls.Where(b => b.Parts.Count > 0 && b.Short.Millimetres > 0).Select(b => new Shortage(b, null, b.Short))
            .Concat(Lacking.Select(l => new Shortage(null, l, l.Forecast)))
            .OrderByDescending(s => s.Length),
    ];
}
