using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>What a person prefers. Their own usage factor stands in <see cref="KnitterStore"/>.</summary>
public sealed record Settings
{
    /// <summary>Which of the two units stands first; both are always shown.</summary>
    public LengthUnit FirstUnit { get; init; }

    /// <summary>The step their scale counts in, 0.001 to 100 g.</summary>
    public Grams ScaleStep { get; init; } = Grams.From(1);

    /// <summary>Spare on top, 0 to 100 %.</summary>
    public decimal AllowancePercent { get; init; } = 10;

    /// <summary>Says of each field what is wrong with it.</summary>
    public void Check(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (!Enum.IsDefined(FirstUnit))
        {
            errors.Add("firstUnit", "must be metres or yards");
        }

        if (ScaleStep.Milligrams is < 1 or > 100_000)
        {
            errors.Add("scaleStepGrams", "must be from 0.001 to 100");
        }

        if (AllowancePercent is < 0 or > 100)
        {
            errors.Add("allowancePercent", "must be from 0 to 100");
        }
    }
}
