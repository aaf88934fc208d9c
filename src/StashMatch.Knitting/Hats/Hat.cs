using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Hats;

/// <summary>A hat to be asked about: described by measurements (<see cref="HatDesign"/>) or by its printed table (<see cref="PrintedHat"/>).</summary>
public abstract record Hat
{
    /// <summary>What the hat is called.</summary>
    public required string Name { get; init; }

    /// <summary>The weight class its yarn is of.</summary>
    public required WeightClass WeightClass { get; init; }

    /// <summary>Its sizes' letters or names, smallest first.</summary>
    public abstract IReadOnlyList<string> SizeNames { get; }

    /// <summary>The stripe counts it may have in a size; a printed hat has one. Empty for an unknown size.</summary>
    public abstract IReadOnlyList<int> CountsFor(string size);

    /// <summary>Works out the parts of one size and stripe count.</summary>
    /// <param name="size">A size's letter or name, as in <see cref="SizeNames"/>.</param>
    /// <param name="stripes">1 to 24.</param>
    /// <param name="needs">The parts, when the answer is true.</param>
    /// <param name="why">Why it cannot be knitted, when the answer is false.</param>
    public abstract bool TryNeeds(string size, int stripes, [NotNullWhen(true)] out HatNeeds? needs, [NotNullWhen(false)] out CannotBeKnitted? why);
}
