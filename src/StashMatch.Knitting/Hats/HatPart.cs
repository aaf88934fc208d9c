using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>What a part of a hat is.</summary>
public enum PartKind
{
    /// <summary>The brim, with its cast-on or bind-off.</summary>
    Brim,

    /// <summary>A crown of its own yarn.</summary>
    Crown,

    /// <summary>A stripe.</summary>
    Stripe,

    /// <summary>One of the two yarns of a braid.</summary>
    Strand,

    /// <summary>Seam and gathering thread.</summary>
    Seam,

    /// <summary>A pom-pom in yarn.</summary>
    PomPom,

    /// <summary>A printed yarn letter whose parts are not told.</summary>
    Yarn,
}

/// <summary>One part of a hat, with what it takes.</summary>
/// <param name="Name">Its fixed name: "brim", "stripe 1", "braid 1 strand a", "crown", "seam", or a printed yarn letter.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Number">Stripe or braid number from 1 in knitting order; 0 for the others.</param>
/// <param name="Strand">'a' or 'b' for a braid's strand, else null.</param>
/// <param name="Rows">Rows or rounds worked in it (a strand: its braid's three); 0 where not known.</param>
/// <param name="Depth">Its depth in the finished hat; 0 where not known.</param>
/// <param name="BareMetres">Stitches × metres per stitch, cast-on and bind-off in; no factor, no ends. In a printed hat the printed metres.</param>
/// <param name="EndsMetres">Metres of tails and joins of a yarn cut for this part; of a pom-pom all it takes, as typed. No factor.</param>
/// <param name="Yarn">The printed yarn letter it belongs to, or null.</param>
public sealed record HatPart(
    string Name,
    PartKind Kind,
    int Number,
    char? Strand,
    int Rows,
    Centimetres Depth,
    double BareMetres,
    double EndsMetres,
    string? Yarn = null)
{
    /// <summary>What it takes: factor × bare + ends, rounded up to the millimetre.</summary>
    public Metres Need(Usage usage, bool withEnds = true) => Metres.Needed((usage.Factor * BareMetres) + (withEnds ? EndsMetres : 0));
}

/// <summary>A hat of one size and stripe count as the matcher sees it: its parts in knitting order and what surrounds them.</summary>
/// <param name="HatName">What the hat is called.</param>
/// <param name="Size">The size's letter or name.</param>
/// <param name="Head">The head it is for, where known.</param>
/// <param name="Stripes">How many stripes it has.</param>
/// <param name="WeightClass">The weight class its yarn is of.</param>
/// <param name="Parts">Its parts in knitting order.</param>
/// <param name="Usage">Factor and spread common to all parts.</param>
/// <param name="Strands">What its braids' strands are; scraps where there are none.</param>
/// <param name="Plan">The row plan it was read off, or null for a printed hat.</param>
public sealed record HatNeeds(
    string HatName,
    string Size,
    Centimetres? Head,
    int Stripes,
    Yarns.WeightClass WeightClass,
    IReadOnlyList<HatPart> Parts,
    Usage Usage,
    StrandSource Strands,
    RowPlan? Plan)
{
    /// <summary>Whether stripe n and stripe 1 meet at the seam.</summary>
    public bool StripesMeetAtSeam => Plan?.Construction is Construction.SideToSide;
}
