using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.Settings;

/// <summary>First unit, scale step and allowance as typed.</summary>
public sealed class HabitsForm
{
    public LengthUnit FirstUnit { get; set; } = Habits.Now.FirstUnit;

    public string Step { get; set; } = Habits.StepText;

    public string Allowance { get; set; } = Habits.AllowanceText;

    /// <summary>What was typed, or null with a message for each field.</summary>
    public Store.Settings? Read(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var step = errors.Typed("scale step", Step, 0.001m, 100);
        var allowance = errors.Typed("allowance", Allowance, 0, 100);
        return step is null || allowance is null ? null : new Store.Settings { FirstUnit = FirstUnit, ScaleStep = Grams.From(step.Value), AllowancePercent = allowance.Value };
    }
}
