using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Questions;

/// <summary>Which cells of a hat are meant: sizes, stripe counts, arrangements.</summary>
/// <param name="Hat">The hat.</param>
/// <param name="Sizes">Its sizes that are meant, one or more.</param>
/// <param name="StripeCounts">Stripe counts; null for all the hat may have.</param>
/// <param name="Arrangements">Arrangements, one or more.</param>
/// <param name="AllowancePercent">The reserve, 0 to 100 %.</param>
public sealed record HatGrid(Hat Hat, IReadOnlyList<string> Sizes, IReadOnlyList<int>? StripeCounts, IReadOnlyList<Arrangement> Arrangements, decimal AllowancePercent)
{
    private const int MostSizes = 100;

    /// <summary>Sizes; nothing said is all of them.</summary>
    public static readonly Field SizesAsked = Field.Text("sizes", 20).Several(MostSizes) with { Called = "size", Before = ["size"] };

    /// <summary>Stripe counts; nothing said is all the hat may have.</summary>
    public static readonly Field CountsAsked = Field.Whole("stripeCounts", 1, 24).Several(24);

    /// <summary>Arrangements; nothing said is the usual ones.</summary>
    public static readonly Field ArrangementsAsked = Field.Word<Arrangement>("arrangements").Several(Names.All<Arrangement>().Count) with { Called = "arrangement", Before = ["arrangement"] };

    /// <summary>How many cells that is.</summary>
    public int Cells => Arrangements.Count * Sizes.Sum(s => StripeCounts?.Count ?? Hat.CountsFor(s).Count);

    /// <summary>Reads them; null with messages.</summary>
    /// <param name="asked">What is said.</param>
    /// <param name="hat">The hat; null where it cannot be read, which has been told.</param>
    /// <param name="usual">The arrangements where none are named.</param>
    /// <param name="mostCells">How many cells may be asked for at once.</param>
    /// <param name="usualAllowance">The reserve where nothing is said.</param>
    internal static HatGrid? Read(Reading asked, Hat? hat, IReadOnlyList<Arrangement> usual, int mostCells, decimal usualAllowance)
    {
        var before = asked.Errors.Count;
        var (sizes, counts, arrangements) = (asked.EachText(SizesAsked), asked.EachWhole(CountsAsked), asked.EachWord<Arrangement>(ArrangementsAsked));
        var allowance = asked.Number(MatchQuestion.AllowancePercent) ?? usualAllowance;
        foreach (var field in new[] { SizesAsked, CountsAsked, ArrangementsAsked }.Where(f => asked.Said[f].Each is []))
        {
            asked.Wrong(field, "must name one at least, or be left out for all");
        }

        asked.Once(SizesAsked, sizes);
        asked.Once(CountsAsked, counts);
        asked.Once(ArrangementsAsked, arrangements);
        for (var i = 0; hat is not null && i < sizes.Count; i++)
        {
            if (!hat.SizeNames.Contains(sizes[i], StringComparer.Ordinal))
            {
                asked.Errors.Add(asked.Place(SizesAsked, i), $"must be one of {string.Join(", ", hat.SizeNames)}");
            }
        }

        if (hat is null || asked.Errors.Count > before)
        {
            return null;
        }

        var grid = new HatGrid(
            hat, asked.Has(SizesAsked) ? sizes : hat.SizeNames, asked.Has(CountsAsked) ? counts : null, asked.Has(ArrangementsAsked) ? arrangements : usual, allowance);
        if (grid.Cells <= mostCells)
        {
            return grid;
        }

        asked.Wrong(SizesAsked, $"times stripe counts and arrangements come to {grid.Cells} cells; ask for at most {mostCells} at once");
        return null;
    }
}
