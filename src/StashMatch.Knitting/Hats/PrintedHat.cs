using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>A hat known only by a pattern's printed table of lengths. Printed lengths hold their ends: nothing is added.</summary>
public sealed record PrintedHat : Hat
{
    /// <summary>Whether the printed lengths already hold an allowance.</summary>
    public required bool AllowanceIncluded { get; init; }

    /// <summary>What was weighed of those who knitted it, as a multiple of the printed lengths; null where nothing was.</summary>
    public Usage? Weighed { get; init; }

    /// <summary>Its usage as printed.</summary>
    public Usage AsPrinted => AllowanceIncluded ? Usage.PrintedWithAllowance : Usage.PrintedBare;

    /// <summary>Its sizes.</summary>
    public required IReadOnlyList<PrintedSize> Sizes { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<string> SizeNames => [.. Sizes.Select(s => s.Size)];

    /// <inheritdoc/>
    public override IReadOnlyList<int> CountsFor(string size) =>
        Sizes.FirstOrDefault(s => s.Size == size) is { } found ? [found.Stripes] : [];

    /// <inheritdoc/>
    public override bool TryNeeds(string size, int stripes, [NotNullWhen(true)] out HatNeeds? needs, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        (needs, why) = (null, null);
        if (Sizes.FirstOrDefault(s => s.Size == size) is not { } found)
        {
            why = new CannotBeKnitted("size", $"The hat has no size {size}.");
            return false;
        }

        if (stripes != found.Stripes)
        {
            why = new CannotBeKnitted("stripes", $"The printed table is for {found.Stripes} stripes.", found.Stripes);
            return false;
        }

        var parts = found.Lines.Select(ToPart).OrderBy(KnittingOrder).ToList();
        needs = new HatNeeds(Name, size, found.Head, stripes, WeightClass, parts, Weighed ?? AsPrinted, StrandSource.Scraps, null);
        return true;
    }

    private static HatPart ToPart(PrintedLine line)
    {
        var (kind, number, strand) = line.Part is null ? (PartKind.Yarn, 0, null) : PartNames.Read(line.Part)!.Value;
        return new HatPart(line.Part ?? line.Yarn, kind, number, strand, 0, default, (double)line.Length, 0, line.Yarn);
    }

    // A braid stands after the stripe of its number's turn is not told by a printed table: brim, then braid i before stripe 2i - 1
    // would be a guess, so braids keep the place the table gives them and only brim and crown are put first and last.
    private static int KnittingOrder(HatPart part) => part.Kind switch
    {
        PartKind.Brim => 0,
        PartKind.Crown => 2,
        PartKind.Seam => 3,
        PartKind.PomPom => 4,
        _ => 1,
    };
}

/// <summary>One size of a printed table.</summary>
/// <param name="Size">Its letter or name.</param>
/// <param name="Head">The head it is for, where printed.</param>
/// <param name="Lines">Its lengths, in the table's order.</param>
public sealed record PrintedSize(string Size, Centimetres? Head, IReadOnlyList<PrintedLine> Lines)
{
    /// <summary>How many stripes the table has; letters without parts count one each where no stripe is told.</summary>
    public int Stripes => Math.Max(1, Lines.Count(l => l.Part is { } p && PartNames.Read(p) is { Kind: PartKind.Stripe }));
}

/// <summary>One length of a printed table.</summary>
/// <param name="Part">The part's name, or null where the length is the yarn letter's total.</param>
/// <param name="Yarn">The pattern's letter for the yarn.</param>
/// <param name="Length">The printed length in metres, over 0.</param>
public sealed record PrintedLine(string? Part, string Yarn, decimal Length);
