using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>Everything about a leftover but what it weighs. How each is called, read, written and checked stands in <see cref="LeftoverFields"/>.</summary>
/// <param name="Name">1 to 80 characters.</param>
/// <param name="Ratio">The label, or null where there is none.</param>
public record LeftoverDetails(string Name, LabelRatio? Ratio)
{
    /// <summary>The longest name.</summary>
    public const int MostName = 80;

    /// <summary>The longest note.</summary>
    public const int MostNote = 500;

    /// <summary>The two letters on its tag, a capital and a small one; null for a pair made from the name.</summary>
    public string? Code { get; init; }

    public WeightClass? Class { get; init; }

    public FibreBlend Fibre { get; init; } = FibreBlend.Unknown;

    public bool Superwash { get; init; }

    public YarnMake Make { get; init; }

    public YarnColour? Colour { get; init; }

    /// <summary>How its label says to wash it; null where nobody said.</summary>
    public Care? Care { get; init; }

    /// <summary>Dye lot or set, at most 80 characters.</summary>
    public string? Lot { get; init; }

    /// <summary>The bag it belongs to, at most 80 characters.</summary>
    public string? Bag { get; init; }

    /// <summary>Where it is, at most 80 characters.</summary>
    public string? KeptIn { get; init; }

    /// <summary>What it is kept back for, at most 80 characters; null if it is not.</summary>
    public string? KeptBackFor { get; init; }

    /// <summary>Weighed, but never to go into a hat.</summary>
    public bool NotForHats { get; init; }

    /// <summary>Too short to plan with.</summary>
    public bool Crumb { get; init; }

    /// <summary>At most 500 characters.</summary>
    public string? Note { get; init; }

    /// <summary>The details without what a kind of leftover has besides.</summary>
    public LeftoverDetails Alone() => new(this);

    /// <summary>Says of each detail what is wrong with it, under <paramref name="at"/> and the field's name.</summary>
    public virtual void Check(FieldErrors errors, string at = "") => LeftoverFields.Read(new Reading(LeftoverFields.Say(this), errors, at));

    /// <summary>The leftover the matcher takes; null without a label.</summary>
    /// <param name="id">What it is known by.</param>
    /// <param name="weighing">What it weighs.</param>
    public Leftover? ToLeftover(string id, Weighing weighing) => Ratio is null ? null : new Leftover(id, Name, weighing, Ratio)
    {
        Class = Class,
        Fibre = Fibre,
        Superwash = Superwash,
        Make = Make,
        Colour = Colour,
        Lot = Lot,
        Care = Care,
    };
}
