using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;

namespace StashMatch.Knitting.Bags;

/// <summary>One size, stripe count and arrangement that can be knitted, with what its groups of parts need in millimetres.</summary>
internal sealed record HatKind(Question Question, HatNeeds Hat, long[] Needs, PartKind[] Kinds)
{
    /// <summary>The kind of the first group that needs so many millimetres.</summary>
    public PartKind KindOf(long need) => Kinds[Array.IndexOf(Needs, need)];

    public long Total { get; } = Needs.Sum();

    public long Longest { get; } = Needs.Max();

    public bool HasBrim { get; } = Hat.Parts.Any(p => p.Kind == PartKind.Brim);

    /// <summary>
    /// Every kind that can be knitted, that which takes least first, but those that need as much as another of their making in every group:
    /// what covers one of those covers the other. Own colours are left out: a hat in own colours is one as it falls too.
    /// </summary>
    public static IReadOnlyList<HatKind> Of(Hat hat, IReadOnlyList<string> sizes, decimal allowancePercent)
    {
        var kinds = new List<HatKind>();
        foreach (var stripes in sizes.SelectMany(hat.CountsFor).Distinct().Order())
        {
            foreach (var arrangement in FromThisBag.Usual.Where(a => a != Arrangement.OwnColours))
            {
                kinds.AddRange(Smallest([.. sizes.Select(s => Of(hat, s, stripes, arrangement, allowancePercent)).OfType<HatKind>()]));
            }
        }

        return [.. kinds.OrderBy(k => k.Total).ThenBy(k => k.Longest)];
    }

    private static HatKind? Of(Hat hat, string size, int stripes, Arrangement arrangement, decimal allowancePercent)
    {
        var question = FromThisBag.QuestionOf(hat, size, stripes, arrangement, [], allowancePercent);
        if (!LaidOutHats.TryNeeds(hat, size, stripes, out var needs, out _) || Matcher.CannotArrange(question, needs) is not null)
        {
            return null;
        }

        var layout = Layout.Of(question, needs);
        return new HatKind(question, needs, [.. layout.Items.Select(i => i.Need)], [.. layout.Items.Select(i => layout.Grouping.Groups[i.Group].Kind)]);
    }

    private static IEnumerable<HatKind> Smallest(List<HatKind> kinds) => kinds.Where((k, at) => !kinds.Where((other, i) =>
        i != at && other.Needs.Length == k.Needs.Length && Roles(other).SequenceEqual(Roles(k)) && other.Needs.Zip(k.Needs).All(n => n.First <= n.Second)
        && (i < at || !other.Needs.SequenceEqual(k.Needs))).Any());

    private static IEnumerable<(PartKind, int, char?)> Roles(HatKind kind) => kind.Hat.Parts.Select(p => (p.Kind, p.Number, p.Strand));
}
