using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

/// <summary>One part of a row with what it takes.</summary>
/// <param name="Part">The part.</param>
/// <param name="Piece">The piece it belongs to.</param>
/// <param name="PaysEnds">Whether it pays the piece's pair of tails.</param>
/// <param name="Planned">Factor, ends and allowance in, rounded up to the millimetre.</param>
/// <param name="Figure">The same unrounded, for printing.</param>
public sealed record PartFigure(HatPart Part, Piece Piece, bool PaysEnds, Metres Planned, Figure Figure);

/// <summary>What one size and stripe count takes: a row of a yardage table. All lengths but <see cref="BareMetres"/> are planned: factor, ends and allowance in, rounded up part by part.</summary>
public sealed record YardageRow
{
    /// <summary>The size's letter or name.</summary>
    public required string Size { get; init; }

    /// <summary>How many stripes.</summary>
    public required int Stripes { get; init; }

    /// <summary>The row plan; null for a printed hat, whose table tells lengths only, and where it cannot be knitted.</summary>
    public RowPlan? Plan { get; init; }

    /// <summary>Why it cannot be knitted; null where it can.</summary>
    public CannotBeKnitted? Cannot { get; init; }

    /// <summary>The parts in knitting order.</summary>
    public IReadOnlyList<PartFigure> Parts { get; init; } = [];

    /// <summary>What comes from one ball each, in knitting order.</summary>
    public IReadOnlyList<(Piece Piece, Figure Figure)> Pieces { get; init; } = [];

    /// <summary>All parts together, unrounded.</summary>
    public Figure Whole { get; init; } = new(0, FigureSource.Estimated);

    /// <summary>The planned length of each stripe in knitting order.</summary>
    public IReadOnlyList<(HatPart Part, Metres Planned)> StripesEach => [.. Parts.Where(p => p.Part.Kind == PartKind.Stripe).Select(p => (p.Part, p.Planned))];

    /// <summary>The longest stripe: safe to print.</summary>
    public Metres Stripe => Largest(PartKind.Stripe)?.Planned ?? default;

    /// <summary>The longest strand of a braid; null without braids.</summary>
    public Metres? BraidStrand => Largest(PartKind.Strand)?.Planned;

    /// <summary>The brim; null without one.</summary>
    public Metres? Brim => Largest(PartKind.Brim)?.Planned;

    /// <summary>A crown of its own; null without one.</summary>
    public Metres? Crown => Largest(PartKind.Crown)?.Planned;

    /// <summary>Seam and gathering thread; null without them.</summary>
    public Metres? Seam => Largest(PartKind.Seam)?.Planned;

    /// <summary>Rows of the deepest stripe; 0 where not known.</summary>
    public int StripeRows => StripesEach.Select(s => s.Part.Rows).DefaultIfEmpty(0).Max();

    /// <summary>Depth of the deepest stripe; null where not known.</summary>
    public Centimetres? StripeDepth => Plan?.Gauge.DepthOf(StripeRows);

    /// <summary>All parts together.</summary>
    public Metres Total { get; init; }

    /// <summary>The whole hat bare, ends in, no factor, no allowance, rounded up to the millimetre.</summary>
    public Metres BareMetres { get; init; }

    /// <summary>The longest part of a kind; null where there is none.</summary>
    public PartFigure? Largest(PartKind kind) => Parts.Where(p => p.Part.Kind == kind).MaxBy(p => p.Figure.Metres);
}

/// <summary>Yardage tables.</summary>
public static class Yardage
{
    /// <summary>One row for each size and stripe count, sizes first, in the order given.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="sizes">Sizes of the hat.</param>
    /// <param name="stripeCounts">Counts from 1 to 24, or null for all the hat may have.</param>
    /// <param name="allowancePercent">0 to 100.</param>
    /// <param name="weighed">What was weighed while it was knitted, or null where nothing was.</param>
    public static IReadOnlyList<YardageRow> Table(
        Hat hat, IReadOnlyList<string> sizes, IReadOnlyList<int>? stripeCounts, decimal allowancePercent, WeighedUse? weighed = null)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(sizes);
        return [.. from size in sizes from count in stripeCounts ?? hat.CountsFor(size) select Row(hat, size, count, allowancePercent, weighed)];
    }

    private static YardageRow Row(Hat hat, string size, int stripes, decimal allowancePercent, WeighedUse? weighed)
    {
        if (!hat.TryNeeds(size, stripes, out var needs, out var why))
        {
            return new YardageRow { Size = size, Stripes = stripes, Cannot = why };
        }

        var parts = new PartFigure[needs.Parts.Count];
        var pieces = new List<(Piece, Figure)>();
        var spare = (double)(100 + allowancePercent) / 100;
        foreach (var piece in Piece.Of(needs))
        {
            // What was weighed is shared among the piece's parts as they were reckoned.
            var use = weighed?.Find(size, piece);
            var ratio = use is null ? 1 : (double)use.Used.Value / piece.NeedMetres(needs.Usage);
            var source = use?.Source ?? FigureSource.Estimated;
            var pays = piece.Parts.MinBy(i => (Grouping.Band(needs.Parts[i].Kind), i));
            foreach (var i in piece.Parts)
            {
                var part = needs.Parts[i];
                var metres = ((needs.Usage.Factor * part.BareMetres) + (i == pays ? part.EndsMetres : 0)) * ratio;
                var planned = (use is null ? part.Need(needs.Usage, i == pays) : Metres.Needed(metres)).WithAllowance(allowancePercent);
                parts[i] = new PartFigure(part, piece, i == pays, planned, new Figure(metres * spare, source));
            }

            pieces.Add((piece, new Figure(piece.NeedMetres(needs.Usage) * ratio * spare, source)));
        }

        return new YardageRow
        {
            Size = size,
            Stripes = stripes,
            Plan = needs.Plan,
            Parts = parts,
            Pieces = pieces,
            Whole = new Figure(parts.Sum(p => p.Figure.Metres), Of(parts)),
            Total = Metres.FromMillimetres(parts.Sum(p => p.Planned.Millimetres)),
            BareMetres = Metres.Needed(pieces.Sum(p => p.Item1.BareMetres + p.Item1.EndsMetres)),
        };
    }

    // A sum is no better than its least sure part.
    private static FigureSource Of(IReadOnlyList<PartFigure> parts) => parts.Min(p => p.Figure.Source);
}
