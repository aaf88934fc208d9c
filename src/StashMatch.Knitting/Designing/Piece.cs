using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Knitting.Designing;

/// <summary>What comes from one ball when every stripe has a yarn of its own, and so can be weighed before and after: a part with the strands it lends, or a printed yarn letter.</summary>
/// <param name="Name">Its chief part's name ("stripe 2"), or the printed letter ("S1").</param>
/// <param name="Kind">The kind of its chief part.</param>
/// <param name="IsLetter">Whether it is a printed yarn letter.</param>
/// <param name="Parts">Indices into the hat's parts, in knitting order.</param>
/// <param name="BareMetres">Bare metres of all of them.</param>
/// <param name="EndsMetres">Metres of the one pair of tails it pays.</param>
public sealed record Piece(string Name, PartKind Kind, bool IsLetter, IReadOnlyList<int> Parts, double BareMetres, double EndsMetres)
{
    // Two balls that knit the same thing differ by less than this, metres.
    private const double Same = 0.0005;

    /// <summary>What testers' use is pooled by: the letter of a printed hat, else the kind of part.</summary>
    public string Pool => IsLetter ? Name : Kind switch
    {
        PartKind.Strand => "braid strand",
        PartKind.PomPom => PartNames.PomPom,
        _ => Kind.ToString().ToLowerInvariant(),
    };

    /// <summary>What it takes with no allowance, unrounded metres.</summary>
    public double NeedMetres(Usage usage) => (usage.Factor * BareMetres) + EndsMetres;

    /// <summary>Whether two pieces of one size are the same knitting: like kind, like metres.</summary>
    public bool IsLike(Piece other) =>
        Kind == other.Kind && Parts.Count == other.Parts.Count && Math.Abs(BareMetres - other.BareMetres) < Same && Math.Abs(EndsMetres - other.EndsMetres) < Same;

    /// <summary>The pieces of a hat in knitting order.</summary>
    public static IReadOnlyList<Piece> Of(HatNeeds hat)
    {
        ArgumentNullException.ThrowIfNull(hat);
        var grouping = Grouping.Of(hat, Arrangement.OwnColours, 0, new Dictionary<string, string>(StringComparer.Ordinal), []);
        return [.. grouping.Groups.Select(g => new Piece(
            hat.Plan is null ? hat.Parts[g.EndsAt].Yarn! : hat.Parts[g.EndsAt].Name,
            g.Kind,
            hat.Plan is null,
            g.Members,
            g.Members.Sum(m => hat.Parts[m].BareMetres),
            hat.Parts[g.EndsAt].EndsMetres))];
    }
}
