using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Knitting.Designing;

/// <summary>Which cells of a hat are asked about.</summary>
/// <param name="Hat">The hat.</param>
/// <param name="Sizes">Sizes of the hat.</param>
/// <param name="StripeCounts">Counts from 1 to 24, or null for all the hat may have.</param>
/// <param name="Arrangements">Arrangements, one or more.</param>
public sealed record KitQuestion(Hat Hat, IReadOnlyList<string> Sizes, IReadOnlyList<int>? StripeCounts, IReadOnlyList<Arrangement> Arrangements)
{
    /// <summary>What is asked where nobody says: own colours, one ground, one thread through, as it falls.</summary>
    public static IReadOnlyList<Arrangement> UsualArrangements { get; } =
        [Arrangement.OwnColours, Arrangement.OneGround, Arrangement.OneThread, Arrangement.AsItFalls];

    /// <summary>Spare on top of the need, 0 to 100 %.</summary>
    public decimal AllowancePercent { get; init; } = 10;

    /// <summary>What every skein used must reach by itself for a yes: a rung from 0.80 to 0.99, as <see cref="Question.Target"/>.</summary>
    public double Target { get; init; } = 0.90;

    /// <summary>How light the lightest skein is, per cent under nominal, 0 to 90; null for the lawful limit.</summary>
    public decimal? LightestPercent { get; init; }

    /// <summary>How many cells that is.</summary>
    public int Cells => Arrangements.Count * Sizes.Sum(s => (StripeCounts ?? Hat.CountsFor(s)).Count);
}
