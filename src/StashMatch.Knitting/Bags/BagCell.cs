using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Bags;

/// <summary>One size, stripe count and arrangement against one bag. Chance, margin and weakest part are those of one plan of that standing, untidied.</summary>
/// <param name="Size">The size's letter or name.</param>
/// <param name="Stripes">How many stripes, 1 to 24.</param>
/// <param name="Arrangement">How the leftovers are spread.</param>
public sealed record BagCell(string Size, int Stripes, Arrangement Arrangement)
{
    /// <summary>Yes, only just, or no; no where it cannot be knitted.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Its reason.</summary>
    public required Why Why { get; init; }

    /// <summary>Chance that no leftover runs out of the plan found, untidied, 0 to 1; 0 with something short. Worked out when it is first asked for.</summary>
    public double ChanceOfEnough => Chance?.Value ?? 0;

    internal WhenAsked<double>? Chance { get; init; }

    /// <summary>The rung of the plan that opens, as <see cref="Answer.Sureness"/>.</summary>
    public double Sureness { get; init; }

    /// <summary>The highest rung any plan with this word reaches, as <see cref="Answer.Reach"/>.</summary>
    public double Reach { get; init; }

    /// <summary>The smallest margin of a leftover in per cent of its needs, rounded down to 0.1; 0 with something uncovered.</summary>
    public decimal MarginPercent { get; init; }

    /// <summary>With something uncovered the part that lacks most, else the longest part of the leftover with the smallest margin; the first in knitting order where they tie. Null where it cannot be knitted.</summary>
    public string? WeakestPart { get; init; }

    /// <summary>By how much the hat is short.</summary>
    public Metres Short { get; init; }

    /// <summary>Why it cannot be knitted so; null where it can.</summary>
    public CannotBeKnitted? Cannot { get; init; }
}
