using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>"Does this kit make every size?" and "What is the smallest kit that does?"</summary>
public static class KitQuestion
{
    private const int MostCells = 2_000;

    /// <summary>How light the lightest skein is, per cent under nominal; nothing said is the lawful limit.</summary>
    public static readonly Field LightestPercent = Field.Number("lightestPercent", 0, 90);

    /// <summary>Whole skeins the smallest kit may be made of. Without grams a skein weighs what its label says.</summary>
    public static readonly Field SmallestFrom = Field.Of("smallestFrom", KitText.Grams, KitText.Label, KitText.Fibre).Several(8);

    /// <summary>All fields.</summary>
    public static IReadOnlyList<Field> Fields { get; } =
        [MatchQuestion.Hat, HatGrid.SizesAsked, HatGrid.CountsAsked, HatGrid.ArrangementsAsked, MatchQuestion.AllowancePercent, LightestPercent, KitText.Skeins, SmallestFrom];

    /// <summary>Which cells are asked about; null with messages.</summary>
    public static Knitting.Designing.KitQuestion? Read(Reading asked, Hat? hat, decimal usualAllowance = 10)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var lightest = asked.Number(LightestPercent);
        return HatGrid.Read(asked, hat, Knitting.Designing.KitQuestion.UsualArrangements, MostCells, usualAllowance) is not { } grid
            ? null
            : new Knitting.Designing.KitQuestion(grid.Hat, grid.Sizes, grid.StripeCounts, grid.Arrangements) { AllowancePercent = grid.AllowancePercent, LightestPercent = lightest };
    }

    /// <summary>The kit's skeins; those that can be read, with messages for the others.</summary>
    public static Kit ReadKit(Reading asked) => new("kit", KitText.ReadSkeins(asked));

    /// <summary>The skeins that can be bought whole; those that can be read, with messages for the others.</summary>
    public static IReadOnlyList<SkeinSize> ReadSizes(Reading asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        if (asked.Said[SmallestFrom].Each is [])
        {
            asked.Wrong(SmallestFrom, $"must be 1 to {SmallestFrom.MostOfThem} sizes of skein");
        }

        var sizes = new List<SkeinSize>();
        foreach (var one in asked.Each(SmallestFrom))
        {
            var before = one.Errors.Count;
            var (label, fibre) = (LabelReading.Read(one, KitText.Label, RatioSource.Printed), one.Fibre(KitText.Fibre));
            var grams = one.Number(KitText.Grams) ?? label?.MassInGrams;
            if (grams > Weighing.MostGrams)
            {
                one.Wrong(KitText.Label, "is of something too heavy for a skein");
            }

            if (one.Errors.Count == before)
            {
                sizes.Add(new SkeinSize(Knitting.Quantities.Grams.From(grams!.Value), label!) { Fibre = fibre });
            }
        }

        return sizes;
    }
}
