using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>"What could this bag become?" and "How many hats from the whole bag?"</summary>
public static class BagQuestion
{
    private const int MostCells = 1_000;

    /// <summary>The fields of a question about the whole bag.</summary>
    public static IReadOnlyList<Field> WholeBagFields { get; } =
        [MatchQuestion.Hat, HatGrid.SizesAsked, MatchQuestion.Bag, MatchQuestion.Fibres, MatchQuestion.Leftovers, MatchQuestion.AllowancePercent];

    /// <summary>All fields.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [.. WholeBagFields, HatGrid.CountsAsked, HatGrid.ArrangementsAsked];

    /// <summary>The cells asked about, and the leftovers; null with messages.</summary>
    /// <param name="asked">What is said.</param>
    /// <param name="hat">The hat; null where it cannot be read, which has been told.</param>
    /// <param name="logged">The logged leftovers that may go into a hat, of the bag that is named.</param>
    /// <param name="usual">The arrangements where none are named.</param>
    /// <param name="usualAllowance">The reserve where nothing is said.</param>
    public static (HatGrid Grid, IReadOnlyList<Leftover> Leftovers)? Read(
        Reading asked, Hat? hat, IReadOnlyList<Leftover> logged, IReadOnlyList<Arrangement> usual, decimal usualAllowance = 10)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var grid = HatGrid.Read(asked, hat, usual, MostCells, usualAllowance);
        var (there, meant) = AskedLeftovers.Read(asked, MatchQuestion.Leftovers, logged);
        var fibres = asked.Word<FibreChoice>(MatchQuestion.Fibres) ?? FibreChoice.Any;
        return grid is null || asked.Errors.Any ? null : (grid, [.. there.Where(l => meant?.Contains(l.Id) != false && fibres.Allows(l))]);
    }
}
