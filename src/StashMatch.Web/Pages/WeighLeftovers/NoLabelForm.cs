using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>A lost label: a length measured off and weighed, or a guess by thickness, as typed.</summary>
public sealed class NoLabelForm
{
    /// <summary>The length measured off.</summary>
    public string Length { get; set; } = "10";

    public LengthUnit Unit { get; set; } = Habits.Now.FirstUnit;

    /// <summary>What that length weighs, grams.</summary>
    public string Grams { get; set; } = "";

    /// <summary>The thickness guessed by; empty while nobody guesses.</summary>
    public string Class { get; set; } = "";

    /// <summary>The ratio measured, or null with messages.</summary>
    public LabelRatio? Measured(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var length = errors.Typed("length measured off", Length, 0.1m, 1_000);
        var grams = errors.TypedGrams("its grams", Grams, 0.01m, 1_000);
        if (length is null || grams is null)
        {
            return null;
        }

        if (!LabelRatio.CanBe(grams.Value, MassUnit.Grams, length.Value, Unit))
        {
            errors.Add("its grams", $"and the length do not fit: 100 g is {LabelRatio.LeastMetresPer100G} to {LabelRatio.MostMetresPer100G} m");
            return null;
        }

        return new LabelRatio(grams.Value, MassUnit.Grams, length.Value, Unit, RatioSource.Measured);
    }

    /// <summary>The ratio usual for the thickness chosen; null where none is.</summary>
    public LabelRatio? Guessed() => Class is [>= '0' and <= '7']
        ? new LabelRatio(100, MassUnit.Grams, WeightClasses.TypicalMetresPer100Grams((WeightClass)(Class[0] - '0')), LengthUnit.Metres, RatioSource.Guessed)
        : null;

    /// <summary>What the length measured off comes to, and what the whole ball then holds; null while something is missing.</summary>
    /// <param name="ball">The ball's own reading, if it is typed.</param>
    /// <param name="step">The scale's step, grams.</param>
    public string? Told(Weighing? ball, decimal step)
    {
        if (Measured(new FieldErrors()) is not { } ratio)
        {
            return null;
        }

        var off = Math.Round(100 * ratio.MayBeOff(Knitting.Quantities.Grams.From(step)), 1, MidpointRounding.AwayFromZero);
        return NoLabelWords.Told(Shown.Whole(ratio.MetresPer100Grams), off, ball is null ? null : Shown.Both(Metres.Held(ratio.MetresIn(ball.Net.Value))));
    }

    /// <summary>What to do where the scale is too coarse for the length; null where it is fine enough.</summary>
    public string? Advice(decimal step) => Measured(new FieldErrors()) is { } ratio && IsCoarse(ratio, step)
        ? LongerLength
        : null;

    /// <summary>What helps where the scale is too coarse for the length measured off.</summary>
    public static string LongerLength => NoLabelWords.MeasureLonger(Shown.OwnFirst("20 to 40 m", "22 to 44 yd"));

    /// <summary>Whether one step of the scale is over a tenth of what was measured off and weighed.</summary>
    public static bool IsCoarse(LabelRatio ratio, decimal step)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        return step > ratio.MassInGrams / 10;
    }
}
