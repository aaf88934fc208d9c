using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

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
/// <param name="OwnSureness">The chance, 0 to 1, that it alone lasts for what it serves; 1 where it serves nothing.</param>
/// <param name="ShortOfReserve">What is missing on it alone for the reserve asked; 0 where the reserve is kept.</param>
public sealed record LeftoverAnswer(Leftover Leftover, Metres Used, Metres Left, double OwnSureness, Metres ShortOfReserve);

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

    /// <summary>Whether nothing better exists (word, least short, brim, sure, tidy), rather than this being the best found.</summary>
    public required bool ProvenBest { get; init; }

    /// <summary>The leftover with the smallest margin; null where none is used or something is uncovered.</summary>
    public required string? WeakestLeftover { get; init; }

    /// <summary>Its margin in per cent of its needs, rounded down to 0.1; 0 with something uncovered.</summary>
    public required decimal MarginPercent { get; init; }

    /// <summary>The rung of the plan shown: every leftover used lasts by itself with at least this chance. 0.5 where it is there by the label alone, 0 with something short.</summary>
    public required double Sureness { get; init; }

    /// <summary>The highest rung that any plan with this word reaches, whichever kind of yarn the brim takes; 0.5 by the label alone, 0 with something short.</summary>
    public required double Reach { get; init; }

    /// <summary>The count behind <see cref="Why.TooFewLeftovers"/>; null for every other reason.</summary>
    public TooFew? TooFew { get; init; }

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

    /// <summary>
    /// Up to three plans for one word, the surest first, which the rest of the answer tells; one alone where something is short. None stands
    /// twice. The second and third are worked out when this is first asked for.
    /// </summary>
    public IReadOnlyList<SharedPlan> Plans => PlansWhenAsked.Value;

    /// <summary>The plans, worked out when they are first asked for.</summary>
    internal WhenAsked<IReadOnlyList<SharedPlan>> PlansWhenAsked { get; init; } = new(() => []);

    /// <summary>How this was chosen: for each tier its figure and what limits it, in the order of the tiers.</summary>
    public required IReadOnlyList<Chosen> Chosen { get; init; }

    /// <summary>Repairs, cheapest first.</summary>
    public required IReadOnlyList<Repair> Repairs { get; init; }
}
