using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Questions;

/// <summary>"What does each size and stripe count take?"</summary>
public static class TableQuestion
{
    private const int MostCells = 1_000;

    /// <summary>All fields.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [MatchQuestion.Hat, HatGrid.SizesAsked, HatGrid.CountsAsked, MatchQuestion.AllowancePercent];

    /// <summary>The rows asked for; null with messages.</summary>
    public static HatGrid? Read(Reading asked, Hat? hat, decimal usualAllowance = 10)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return HatGrid.Read(asked, hat, [Arrangement.OwnColours], MostCells, usualAllowance);
    }
}
