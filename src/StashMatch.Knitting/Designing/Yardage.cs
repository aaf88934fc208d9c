using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

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

    /// <summary>The planned length of each stripe in knitting order.</summary>
    public IReadOnlyList<(HatPart Part, Metres Planned)> StripesEach { get; init; } = [];

    /// <summary>The longest stripe: safe to print.</summary>
    public Metres Stripe { get; init; }

    /// <summary>The longest strand of a braid; null without braids.</summary>
    public Metres? BraidStrand { get; init; }

    /// <summary>The brim; null without one.</summary>
    public Metres? Brim { get; init; }

    /// <summary>A crown of its own; null without one.</summary>
    public Metres? Crown { get; init; }

    /// <summary>Seam and gathering thread; null without them.</summary>
    public Metres? Seam { get; init; }

    /// <summary>All parts together.</summary>
    public Metres Total { get; init; }

    /// <summary>The whole hat bare, ends in, no factor, no allowance, rounded up to the millimetre.</summary>
    public Metres BareMetres { get; init; }
}

/// <summary>Yardage tables.</summary>
public static class Yardage
{
    /// <summary>One row for each size and stripe count, sizes first, in the order given.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="sizes">Sizes of the hat.</param>
    /// <param name="stripeCounts">Counts from 1 to 24, or null for all the hat may have.</param>
    /// <param name="allowancePercent">0 to 100.</param>
    public static IReadOnlyList<YardageRow> Table(Hat hat, IReadOnlyList<string> sizes, IReadOnlyList<int>? stripeCounts, decimal allowancePercent)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(sizes);
        return [.. from size in sizes from count in stripeCounts ?? hat.CountsFor(size) select Row(hat, size, count, allowancePercent)];
    }

    private static YardageRow Row(Hat hat, string size, int stripes, decimal allowancePercent)
    {
        if (!hat.TryNeeds(size, stripes, out var needs, out var why))
        {
            return new YardageRow { Size = size, Stripes = stripes, Cannot = why };
        }

        var grouping = Grouping.Of(needs, Arrangement.OwnColours, 0, new Dictionary<string, string>(StringComparer.Ordinal), []);
        bool Pays(int i) => grouping.Groups[grouping.GroupOf[i]].EndsAt == i;
        var parts = needs.Parts.Select((p, i) => (Part: p, Planned: p.Need(needs.Usage, Pays(i)).WithAllowance(allowancePercent))).ToList();
        Metres? Longest(PartKind kind) => parts.Where(p => p.Part.Kind == kind).Select(p => (Metres?)p.Planned).Max();
        var bare = needs.Parts.Select((p, i) => p.BareMetres + (Pays(i) ? p.EndsMetres : 0)).Sum();
        return new YardageRow
        {
            Size = size,
            Stripes = stripes,
            Plan = needs.Plan,
            StripesEach = parts.FindAll(p => p.Part.Kind == PartKind.Stripe),
            Stripe = Longest(PartKind.Stripe) ?? default,
            BraidStrand = Longest(PartKind.Strand),
            Brim = Longest(PartKind.Brim),
            Crown = Longest(PartKind.Crown),
            Seam = Longest(PartKind.Seam),
            Total = Metres.FromMillimetres(parts.Sum(p => p.Planned.Millimetres)),
            BareMetres = Metres.Needed(bare),
        };
    }
}
