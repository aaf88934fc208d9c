using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>Can it be made?</summary>
public enum Verdict
{
    /// <summary>The need of some part is uncovered.</summary>
    No,

    /// <summary>Covered, but without the allowance or with a chance under 80 %.</summary>
    OnlyJust,

    /// <summary>Covered with the allowance and a chance of 80 % or more.</summary>
    Yes,
}

/// <summary>The one reason behind a verdict.</summary>
public enum Why
{
    /// <summary>Everything is covered.</summary>
    Covered,

    /// <summary>Covered, but some leftover misses the allowance.</summary>
    Allowance,

    /// <summary>Covered with the allowance, but the chance is under 80 %.</summary>
    Chance,

    /// <summary>As <see cref="Chance"/>, and knowing this knitter's use better would be enough.</summary>
    NotCalibrated,

    /// <summary>Too little yarn.</summary>
    Short,

    /// <summary>Enough yarn, but next-door colours would be alike.</summary>
    Colour,

    /// <summary>Only the brim stands in the way.</summary>
    Brim,

    /// <summary>The hat cannot be knitted as asked.</summary>
    CannotBeKnitted,
}

/// <summary>What goes in a part from one leftover.</summary>
/// <param name="Leftover">The leftover's id.</param>
/// <param name="Metres">How much of it.</param>
/// <param name="Grams">The same on the scale, unrounded.</param>
public sealed record Allotment(string Leftover, Metres Metres, decimal Grams);

/// <summary>One part of the answered hat.</summary>
/// <param name="Part">The part.</param>
/// <param name="Need">What it takes.</param>
/// <param name="Planned">The need and the allowance on top.</param>
/// <param name="From">What goes in; null where nothing does.</param>
/// <param name="Short">By how much it is short.</param>
public sealed record PartAnswer(HatPart Part, Metres Need, Metres Planned, Allotment? From, Metres Short)
{
    /// <summary>The second strand, where the part is held double from two leftovers.</summary>
    public Allotment? With { get; init; }

    /// <summary>Whether two strands run side by side; the need is then both strands'.</summary>
    public bool HeldDouble { get; init; }

    /// <summary>All that goes in: none, one or two.</summary>
    public IEnumerable<Allotment> All => new[] { From, With }.OfType<Allotment>();
}

/// <summary>One leftover of the answered hat.</summary>
/// <param name="Leftover">The leftover.</param>
/// <param name="Used">The sum of the needs it serves.</param>
/// <param name="Left">What stays on it.</param>
public sealed record LeftoverAnswer(Leftover Leftover, Metres Used, Metres Left);

/// <summary>What a person should know before casting on.</summary>
public enum WarningCode
{
    /// <summary>The brim's yarn is prone to stretching.</summary>
    BrimStretch,

    /// <summary>The brim's yarn relaxes with wear.</summary>
    BrimRelax,

    /// <summary>The brim's fibre is not known.</summary>
    BrimUnknownFibre,

    /// <summary>A leftover of another weight class.</summary>
    WeightClassMix,

    /// <summary>Two colours side by side are close.</summary>
    LowContrast,

    /// <summary>A braid's strands have the same value.</summary>
    BraidSameValue,

    /// <summary>A colour is not known.</summary>
    ColourUnknown,

    /// <summary>Machine-washable wool with untreated wool.</summary>
    CareMix,

    /// <summary>A strong colour beside a pale one.</summary>
    ColourRun,

    /// <summary>One scale step is much against this weight.</summary>
    CoarseScale,

    /// <summary>The label ratio is guessed.</summary>
    GuessedRatio,

    /// <summary>Yarn and gauge do not belong together: one of them may be mistyped.</summary>
    GaugeOrLabel,

    /// <summary>The label ratio lies far outside what is usual for the weight class said.</summary>
    LabelOrClass,
}

/// <summary>A warning as typed facts; sentences are made from it elsewhere.</summary>
/// <param name="Code">What it is about.</param>
/// <param name="Part">The part concerned, if one is.</param>
/// <param name="Leftover">The leftover concerned, if one is.</param>
/// <param name="OtherPart">The second part concerned, if one is.</param>
/// <param name="OtherLeftover">The second leftover concerned, if one is.</param>
/// <param name="CloseCall">Within 3 points of a boundary of the brim rule.</param>
public sealed record Warning(WarningCode Code, string? Part, string? Leftover, string? OtherPart = null, string? OtherLeftover = null, bool CloseCall = false);

/// <summary>A usual caution; no legal claim.</summary>
public enum CautionCode
{
    /// <summary>Under threes: nothing small that can come off.</summary>
    SmallParts,

    /// <summary>Children: no ties or long cords.</summary>
    Cords,

    /// <summary>Babies: not for sleep, not indoors or in a warm car seat.</summary>
    NotForSleep,

    /// <summary>Stranded braids: ends woven in, no long floats.</summary>
    Floats,

    /// <summary>Rubber elastic or angora: ask first.</summary>
    AskFirst,

    /// <summary>The size does not say whose head it is for: is it for a child?</summary>
    ForAChild,
}

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

    /// <summary>Take a leftover for the brim that keeps its shape less well.</summary>
    WiderBrimSet,

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

/// <summary>The answer to a <see cref="Question"/>: a full result whether it pleases or not.</summary>
public sealed record Answer
{
    /// <summary>The hat, size and stripe count answered for.</summary>
    public required HatNeeds Hat { get; init; }

    /// <summary>The arrangement answered for.</summary>
    public required Arrangement Arrangement { get; init; }

    /// <summary>Yes, only just, or no.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Its reason.</summary>
    public required Why Why { get; init; }

    /// <summary>Chance that no leftover runs out, 0 to 1; 0 with something uncovered.</summary>
    public required double ChanceOfEnough { get; init; }

    /// <summary>Whether nothing better exists (covered, safe, tidy), rather than this being the best found.</summary>
    public required bool ProvenBest { get; init; }

    /// <summary>The leftover with the smallest margin; null where none is used or something is uncovered.</summary>
    public required string? WeakestLeftover { get; init; }

    /// <summary>Its margin in per cent of its needs, rounded down to 0.1; 0 with something uncovered.</summary>
    public required decimal MarginPercent { get; init; }

    /// <summary>The rung of the ladder reached: every leftover used has at least so many per cent to spare on its needs; null with something uncovered.</summary>
    public required decimal? SafeToPercent { get; init; }

    /// <summary>The parts in knitting order.</summary>
    public required IReadOnlyList<PartAnswer> Parts { get; init; }

    /// <summary>Every leftover asked about, in the order asked.</summary>
    public required IReadOnlyList<LeftoverAnswer> Leftovers { get; init; }

    /// <summary>By how much the hat is short.</summary>
    public required Metres Short { get; init; }

    /// <summary>By how much it is short once the allowance is wanted too.</summary>
    public required Metres ShortForAllowance { get; init; }

    /// <summary>How the whole hat may be washed: the mildest of what goes in; null where no label's care is known at all.</summary>
    public required Care? Care { get; init; }

    /// <summary>Warnings, the brim's first.</summary>
    public required IReadOnlyList<Warning> Warnings { get; init; }

    /// <summary>Cautions that apply.</summary>
    public required IReadOnlyList<CautionCode> Cautions { get; init; }

    /// <summary>Repairs, cheapest first.</summary>
    public required IReadOnlyList<Repair> Repairs { get; init; }
}
