using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Bags;

/// <summary>One stripe with rows of its own.</summary>
/// <param name="Part">The stripe.</param>
/// <param name="Leftover">What goes in.</param>
/// <param name="Need">What the leftover gives: the stripe, and the strands of braids beside it where those are not cut.</param>
/// <param name="Left">What stays on it.</param>
/// <param name="KnittedUp">Whether no more than 2 m stay on it beyond the allowance [ours].</param>
public sealed record DepthStripe(HatPart Part, Leftover Leftover, Metres Need, Metres Left, bool KnittedUp);

/// <summary>Rows for each stripe, chosen so that the leftovers are knitted up.</summary>
public sealed record DepthPlan
{
    /// <summary>Covered; or short, colour or cannot be knitted where no depths were found.</summary>
    public required Why Why { get; init; }

    /// <summary>The reason in one plain sentence; empty where depths were found.</summary>
    public string Reason { get; init; } = "";

    /// <summary>The hat with these depths, in this size alone; null where none were found.</summary>
    public HatDesign? Hat { get; init; }

    /// <summary>The stripes in knitting order; empty where none were found.</summary>
    public IReadOnlyList<DepthStripe> Stripes { get; init; } = [];

    /// <summary>Chosen leftovers that do not go in, since the hat takes no more stripes.</summary>
    public IReadOnlyList<Leftover> NotIn { get; init; } = [];

    /// <summary>What stays in all on those that go in.</summary>
    public Metres Left { get; init; }

    /// <summary>By how much the leftovers are too short for the body.</summary>
    public Metres Short { get; init; }

    /// <summary>Whether nothing better exists.</summary>
    public bool ProvenBest { get; init; }
}

/// <summary>What depths are wanted.</summary>
/// <param name="Hat">The hat.</param>
/// <param name="Size">One of its sizes.</param>
/// <param name="Leftovers">The chosen leftovers, 1 to 40; ids are unique. Each is to have one stripe.</param>
public sealed record DepthQuestion(HatDesign Hat, string Size, IReadOnlyList<Leftover> Leftovers)
{
    /// <summary>The most leftovers that can be chosen.</summary>
    public const int MostLeftovers = 40;

    /// <summary>The fewest rows of a stripe, 2 or more.</summary>
    public int LeastRows { get; init; } = 2;

    /// <summary>The most rows of a stripe, not below the fewest.</summary>
    public int MostRows { get; init; } = 1_000;

    /// <summary>Spare to stay on each leftover, 0 to 100 % of what it gives.</summary>
    public decimal AllowancePercent { get; init; } = 10;
}
