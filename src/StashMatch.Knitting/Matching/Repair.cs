using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching;

/// <summary>A fix for a disappointing answer.</summary>
public enum RepairCode
{
    /// <summary>Put one leftover into another part.</summary>
    MoveOne,

    /// <summary>Leave one leftover out.</summary>
    LeaveOut,

    /// <summary>Take rows from one stripe and give them to another.</summary>
    FewerRows,

    /// <summary>Cut a braid's strands from other leftovers.</summary>
    RePairBraid,

    /// <summary>Leave a braid out.</summary>
    DropBraid,

    /// <summary>Knit fewer stripes.</summary>
    FewerStripes,

    /// <summary>Spread the leftovers another way.</summary>
    AnotherArrangement,

    /// <summary>Let next-door colours be alike.</summary>
    Blend,

    /// <summary>Knit a part from two leftovers of one lot or nearly one colour, one after the other.</summary>
    JoinNearMatch,

    /// <summary>Knit the brim single.</summary>
    UnfoldBrim,

    /// <summary>Knit the brim less deep.</summary>
    ShallowerBrim,

    /// <summary>Knit a smaller size.</summary>
    SmallerSize,

    /// <summary>Bind off with less yarn.</summary>
    ThriftierBindOff,

    /// <summary>Weigh a swatch to know one's own use.</summary>
    WeighSwatch,

    /// <summary>Buy yarn.</summary>
    Buy,
}

/// <summary>A repair and the verdict it leads to.</summary>
/// <param name="Code">What to do.</param>
/// <param name="Verdict">The verdict then.</param>
/// <param name="ChanceOfEnough">The chance then, 0 to 1.</param>
public sealed record Repair(RepairCode Code, Verdict Verdict, double ChanceOfEnough)
{
    /// <summary>The changed question, ready to be asked: it gives <see cref="Verdict"/>.</summary>
    public required Question Changed { get; init; }

    /// <summary>The part concerned, if one is.</summary>
    public string? Part { get; init; }

    /// <summary>The leftover concerned, if one is.</summary>
    public string? Leftover { get; init; }

    /// <summary>The second part concerned, if one is: the stripe that gets the rows.</summary>
    public string? OtherPart { get; init; }

    /// <summary>The second leftover concerned, if one is: the one joined.</summary>
    public string? OtherLeftover { get; init; }

    /// <summary>The arrangement to change to.</summary>
    public Arrangement? Arrangement { get; init; }

    /// <summary>How many leftovers take turns in it, 2 or more.</summary>
    public int? InTurn { get; init; }

    /// <summary>Rows of each stripe then, from the cast-on or brim.</summary>
    public IReadOnlyList<int>? Rows { get; init; }

    /// <summary>How many rows change places.</summary>
    public int? RowsMoved { get; init; }

    /// <summary>The brim's depth then.</summary>
    public Centimetres? BrimDepth { get; init; }

    /// <summary>How the edge is bound off then.</summary>
    public EdgeKind? BindOff { get; init; }

    /// <summary>How many mini-skeins of 20 g that is [practice].</summary>
    public int? BuyMiniSkeins { get; init; }

    /// <summary>The stripe count to change to; where the count was left open, the one the changed hat comes out best with, null where it is the same.</summary>
    public int? Stripes { get; init; }

    /// <summary>The size to change to.</summary>
    public string? Size { get; init; }

    /// <summary>Whole grams to buy in all, up.</summary>
    public int? BuyGrams { get; init; }

    /// <summary>Metres to buy in all.</summary>
    public Metres? BuyMetres { get; init; }

    /// <summary>How many balls or mini-skeins of different colours that is.</summary>
    public int? BuyBalls { get; init; }
}
