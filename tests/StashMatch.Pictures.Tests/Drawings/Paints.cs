using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests;

namespace StashMatch.Pictures.Tests;

/// <summary>Hats to draw and paint to draw them with.</summary>
internal static class Paints
{
    private static readonly string[] Yarns = ["#5B7A3A", "#523063", "#A9553F", "#3B828A", "#E0AE35", "#60707D"];
    private static readonly string[] Codes = ["Mo", "Pl", "Ma", "Wo", "We", "Sl"];

    /// <summary>Every construction, size and stripe count that can be knitted.</summary>
    public static IEnumerable<RowPlan> Plans(params int[] counts)
    {
        HatDesign[] designs =
        [
            Samples.SideToSide,
            Samples.SideToSide with { Brim = null, Braids = new Braids(BraidPlaces.None) },
            Samples.BrimUp,
            Samples.BrimUp with { Crown = new Crown(8, CrownYarn.Own), Braids = new Braids(BraidPlaces.None) },
            Samples.BrimUp with { Brim = Samples.SideToSide.Brim, Braids = new Braids(BraidPlaces.BesideBrimToo) },
        ];
        var round = from design in designs
                    from size in design.SizeNames
                    from count in counts
                    let needs = (design with { StripeCounts = new StripeCounts(1, 24) }).TryNeeds(size, count, out var found, out _) ? found : null
                    where needs is not null
                    select needs.Plan!;

        // Worked flat is drawn from the same rounds.
        return round.SelectMany(p => p.Construction == Construction.BrimUpRound && p.Braids == 0
            ? (RowPlan[])[p, p with { Construction = Construction.BrimUpFlat }] : [p]);
    }

    public static Dictionary<string, PartPaint> For(IEnumerable<HatPart> parts)
    {
        var paint = new Dictionary<string, PartPaint>(StringComparer.Ordinal);
        foreach (var part in parts)
        {
            var at = (part.Number + (part.Strand == 'a' ? 1 : part.Strand == 'b' ? 3 : -1) + 6) % 6;
            paint[part.Name] = part.Kind == PartKind.Brim
                ? new("#E2D3B2", "Oa", "brim, Oatcake", false)
                : new(Yarns[at], Codes[at], $"{part.Name}, {Codes[at]}", false);
        }

        return paint;
    }
}
