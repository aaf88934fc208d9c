using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>How much there is of one weight class.</summary>
/// <param name="Class">In words.</param>
/// <param name="Count">How many leftovers.</param>
/// <param name="Grams">All of them together.</param>
/// <param name="Length">Those with a label.</param>
public sealed record ClassTotal(string Class, int Count, decimal Grams, Metres Length)
{
    /// <summary>A total for each class there is, the thinnest first, those without a label last.</summary>
    public static IReadOnlyList<ClassTotal> ByClass(IReadOnlyList<Listed> leftovers) =>
    [
        .. leftovers.Where(l => !l.Of.KnittedUp).GroupBy(l => l.Class).OrderBy(g => g.Key is { } c ? (int)c : 9)
            .Select(g => Of(g.Key is { } c ? Terms.Of(c) : WeighWords.ClassUnknown, [.. g])),
    ];

    /// <summary>One total.</summary>
    public static ClassTotal Of(string name, IReadOnlyList<Listed> leftovers)
    {
        ArgumentNullException.ThrowIfNull(leftovers);
        return new(name, leftovers.Count, leftovers.Sum(l => l.Grams), Metres.FromMillimetres(leftovers.Sum(l => l.Held.Millimetres)));
    }
}
