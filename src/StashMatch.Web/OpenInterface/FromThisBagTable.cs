using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>One size, stripe count and arrangement.</summary>
public sealed record BagCellBody(
    string Size,
    int Stripes,
    string Arrangement,
    string Verdict,
    string Why,
    double ChanceOfEnough,
    decimal MarginPercent,
    string? WeakestPart,
    decimal ShortMetres,
    string? Text)
{
    /// <summary>The rung of the plan that opens: 0 with something short, 0.5 by the label.</summary>
    public double Sureness { get; init; }

    /// <summary>The highest rung over all plans with this word.</summary>
    public double Reach { get; init; }
}

/// <summary>All cells: sizes first, in each the stripe counts, in each the arrangements.</summary>
public sealed record FromThisBagAnswer(decimal AllowancePercent, IReadOnlyList<BagCellBody> Cells);

/// <summary>POST /api/v1/from-this-bag: stores nothing.</summary>
public static class FromThisBagTable
{
    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader hats, LeftoverStore store, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(hats);
        ArgumentNullException.ThrowIfNull(store);
        var (asked, refused) = await Body.ReadAsync(request, BagQuestion.Fields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var hat = await hats.ReadAsync(asked, cancel);
        if (BagQuestion.Read(asked, hat, await store.ForHatsAsync(asked.Said, cancel), FromThisBag.Usual) is not var (grid, bag))
        {
            return asked.Errors.Problem();
        }

        var cells = FromThisBag.Cells(grid.Hat, bag, grid.Sizes, grid.StripeCounts, grid.Arrangements, grid.AllowancePercent, cancel);
        return Results.Json(new FromThisBagAnswer(grid.AllowancePercent, [.. cells.Select(ToBody)]), Body.Whole);
    }

    private static BagCellBody ToBody(BagCell cell) => new(
        cell.Size,
        cell.Stripes,
        Names.Of(cell.Arrangement),
        Names.Of(cell.Verdict),
        Names.Of(cell.Why),
        Math.Round(cell.ChanceOfEnough, 4),
        cell.MarginPercent,
        cell.WeakestPart,
        cell.Short.Value,
        cell.Cannot?.Reason)
    {
        Sureness = Math.Round(cell.Sureness, 2),
        Reach = Math.Round(cell.Reach, 2),
    };
}
