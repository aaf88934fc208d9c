namespace StashMatch.Knitting.Hats;

/// <summary>What edges, seams, tails and braids take, as multiples of a measured length.</summary>
internal static class Extras
{
    /// <summary>Two tails of 0.15 m for a yarn that is cut, metres [ours].</summary>
    public const double Ends = 0.30;

    /// <summary>A plain cast-on where the hat names no kind: 7 × the edge [source: craft pages, thin].</summary>
    public const double CastOn = 7;

    /// <summary>Mattress seam: 2.6 × its length [source: craft pages, thin].</summary>
    public const double Seam = 2.6;

    /// <summary>Gathering thread: 1.3 × the circumference [ours].</summary>
    public const double Gather = 1.3;

    /// <summary>One strand of a two-strand braid of three rows: 2.06 × a plain row of the same stitches [ours, from geometry; ± 15 %].</summary>
    public const double BraidStrand = 2.06;

    /// <summary>A one-strand sideways braid: 2.0 × a plain row of the same stitches [ours].</summary>
    public const double SidewaysBraid = 2.0;

    /// <summary>Half-weight rounds of a tubular edge.</summary>
    public const int TubularRounds = 4;

    /// <summary>Weight of each of them against a round of rib.</summary>
    public const double TubularWeight = 0.5;

    /// <summary>An edge bound off (or cast on where the brim comes first), as a multiple of its length [source: craft pages, thin].</summary>
    public static double Edge(EdgeKind kind) => kind switch
    {
        EdgeKind.Ordinary => 5,
        EdgeKind.Tubular => 3,
        EdgeKind.Stretchy => 10,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
