using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>How tight the brim sits.</summary>
public enum BrimFit
{
    /// <summary>92 % of the body's stitches.</summary>
    Snug,

    /// <summary>All of the body's stitches.</summary>
    Easy,
}

/// <summary>How an edge is bound off, or cast on where the brim comes first.</summary>
public enum EdgeKind
{
    /// <summary>The plain way.</summary>
    Ordinary,

    /// <summary>Tubular: a rounded edge over four half-weight rounds.</summary>
    Tubular,

    /// <summary>A stretchy edge.</summary>
    Stretchy,
}

/// <summary>A ribbed brim.</summary>
/// <param name="Depth">The visible depth, over 0.</param>
/// <param name="Folded">Twice the depth is knitted and turned up.</param>
/// <param name="Fit">Snug or easy.</param>
/// <param name="Rib">Stitches in one repeat of the rib, 2 or 4.</param>
/// <param name="BindOff">How its edge is bound off, or cast on where the brim comes first.</param>
public sealed record Brim(Centimetres Depth, bool Folded = false, BrimFit Fit = BrimFit.Snug, int Rib = 2, EdgeKind BindOff = EdgeKind.Ordinary);
