using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

/// <summary>What a kit comes to in one cell, its skeins at one weight.</summary>
/// <param name="Verdict">Yes, only just, or no.</param>
/// <param name="MarginPercent">What the tightest skein has to spare on its needs, rounded down to 0.1; 0 with something uncovered.</param>
/// <param name="WeakestPart">The part that runs out first: the longest on the tightest skein, or the one that is short by most.</param>
/// <param name="WeakestSkein">The skein that runs out first; null where nothing is there for the weakest part.</param>
/// <param name="Short">By how much it is short.</param>
/// <param name="ShortForAllowance">By how much it is short once the allowance is wanted too.</param>
/// <param name="ChanceOfEnough">Chance that no skein runs out, 0 to 1; 0 with something uncovered.</param>
/// <param name="Exact">Whether nothing better exists, rather than this being the best found within the steps.</param>
public sealed record KitSide(
    Verdict Verdict,
    decimal MarginPercent,
    string? WeakestPart,
    string? WeakestSkein,
    Metres Short,
    Metres ShortForAllowance,
    double ChanceOfEnough,
    bool Exact)
{
    /// <summary>The reason behind the verdict.</summary>
    public required Why Why { get; init; }

    /// <summary>The rung of the plan that opens, as <see cref="Answer.Sureness"/>.</summary>
    public double Sureness { get; init; }

    /// <summary>The highest rung any plan with this word reaches, as <see cref="Answer.Reach"/>.</summary>
    public double Reach { get; init; }
}

/// <summary>One size, stripe count and arrangement of a kit under test.</summary>
/// <param name="Size">The size.</param>
/// <param name="Stripes">How many stripes.</param>
/// <param name="Arrangement">How the skeins are spread.</param>
/// <param name="Cannot">Why it cannot be knitted so; null where it can.</param>
/// <param name="Nominal">With every skein at its nominal weight; null where it cannot be knitted.</param>
/// <param name="Lightest">With every skein at its lightest; null where it cannot be knitted.</param>
public sealed record KitCell(string Size, int Stripes, Arrangement Arrangement, CannotBeKnitted? Cannot, KitSide? Nominal, KitSide? Lightest)
{
    /// <summary>Whether everything is covered with the allowance at nominal weight.</summary>
    public bool Passes => Nominal is { ShortForAllowance.Millimetres: 0 };
}
