using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>One ball on the scale before and after a piece of the hat.</summary>
/// <param name="Piece">The piece's name: "brim", "stripe 2", or a printed yarn letter.</param>
/// <param name="Before">The reading before, core included, at most 5,000 g.</param>
/// <param name="After">The reading after, below <paramref name="Before"/>.</param>
public sealed record TesterPart(string Piece, Grams Before, Grams After)
{
    /// <summary>What went in.</summary>
    public Grams Used => Before - After;
}

/// <summary>What one tester sent back.</summary>
/// <param name="Tester">Who it is, 1 to 80 characters.</param>
/// <param name="Size">The size knitted.</param>
/// <param name="Stripes">The stripe count knitted.</param>
/// <param name="Label">The label ratio of the yarn.</param>
/// <param name="ScaleStep">The step the scale counts in.</param>
/// <param name="Parts">What was weighed.</param>
public sealed record TesterResult(string Tester, string Size, int Stripes, LabelRatio Label, Grams ScaleStep, IReadOnlyList<TesterPart> Parts)
{
    /// <summary>Stitches to 10 cm, blocked; null where not told.</summary>
    public decimal? StitchesPer10Cm { get; init; }

    /// <summary>Rows or rounds to 10 cm, blocked; null where not told.</summary>
    public decimal? RowsPer10Cm { get; init; }

    /// <summary>The gauge the sheet was written for; null for that of a hat described by measurements.</summary>
    public WrittenGauge? Written { get; init; }

    /// <summary>Rows or rounds more than written, fewer below 0; 0 as written.</summary>
    public int ExtraRounds { get; init; }

    /// <summary>Whether another yarn than the pattern's was used.</summary>
    public bool OtherYarn { get; init; }

    /// <summary>What was changed, in the tester's words; null for nothing.</summary>
    public string? Changes { get; init; }

    /// <summary>Whether the designer knitted it.</summary>
    public bool ByDesigner { get; init; }
}
