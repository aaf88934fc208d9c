using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>The usual cautions, only where they apply; no legal claim.</summary>
internal static class Cautions
{
    private const decimal Babies = 46;
    private const decimal UnderThrees = 51;
    private const decimal Children = 54.5m;

    public static IReadOnlyList<CautionCode> For(HatNeeds hat, IReadOnlyList<Leftover> used)
    {
        var list = new List<CautionCode>();
        if (hat.Head is { } head)
        {
            Add(list, CautionCode.NotForSleep, head.Value < Babies);
            Add(list, CautionCode.SmallParts, head.Value < UnderThrees);
            Add(list, CautionCode.Cords, head.Value < Children);
            Add(list, CautionCode.Floats, head.Value < Children && hat.Parts.Any(p => p.Kind == PartKind.Strand));
        }
        else
        {
            list.Add(CautionCode.ForAChild);
        }

        Add(list, CautionCode.AskFirst, used.Any(l => l.Fibre.Contains("angora") || l.Fibre.Contains(FibreFamily.Elastane)));
        return list;
    }

    private static void Add(List<CautionCode> list, CautionCode code, bool applies)
    {
        if (applies)
        {
            list.Add(code);
        }
    }
}
