using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>A leftover in a row.</summary>
/// <param name="Answer">The leftover with what is left of it at the end.</param>
/// <param name="Code">Its code.</param>
/// <param name="Tile">Its yarn's place among the page's yarns.</param>
/// <param name="Takes">What the row takes of it.</param>
public sealed record RowYarn(LeftoverAnswer Answer, string Code, int Tile, Metres Takes)
{
    public Leftover Leftover => Answer.Leftover;

    /// <summary>What is left of it at the end, grams, unrounded.</summary>
    public decimal GramsLeft => Leftover.Ratio.MetresPer100Grams > 0 ? Answer.Left.Value / Leftover.Ratio.MetresPer100Grams * 100 : 0;

    public bool Guessed => Leftover.Ratio.Source == RatioSource.Guessed;
}

/// <summary>One line of the answer: a part, or the two strands of a braid together.</summary>
/// <param name="Name">"stripe 3", "braid 1", "brim".</param>
/// <param name="Parts">The part; a braid's strands.</param>
/// <param name="Yarns">What goes in each part, in the same order; null where nothing does.</param>
public sealed record HatRow(string Name, IReadOnlyList<PartAnswer> Parts, IReadOnlyList<RowYarn?> Yarns)
{
    /// <summary>By how much it is short.</summary>
    public Metres Short => Metres.FromMillimetres(Parts.Sum(p => p.Short.Millimetres));

    public bool IsBraid => Parts[0].Part.Kind == PartKind.Strand;

    /// <summary>The rows of an answer in knitting order.</summary>
    public static IReadOnlyList<HatRow> Of(IReadOnlyList<PartAnswer> parts, Func<Allotment, RowYarn> yarnOf)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(yarnOf);
        return
        [
            .. parts.GroupBy(p => NameOf(p.Part), StringComparer.Ordinal).Select(g => new HatRow(
                g.Key, [.. g], [.. g.SelectMany(p => p.From is null ? new RowYarn?[] { null } : [.. p.All.Select(yarnOf)])])),
        ];
    }

    /// <summary>The row a part stands in: the braid of a strand, else the part itself.</summary>
    public static string NameOf(HatPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.Kind == PartKind.Strand ? PartNames.Braid(part.Number) : part.Name;
    }
}
