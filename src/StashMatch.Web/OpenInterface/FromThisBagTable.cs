using System.Text.Json;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>"What could this bag become?" as the open interface takes it.</summary>
public sealed record FromThisBagBody
{
    /// <summary>The id of a stored or sample hat, or a description inline.</summary>
    public JsonElement? Hat { get; init; }

    /// <summary>Left out: all sizes.</summary>
    public IReadOnlyList<string?>? Sizes { get; init; }

    /// <summary>Left out: all counts of the hat.</summary>
    public IReadOnlyList<int>? StripeCounts { get; init; }

    /// <summary>Left out: own colours, one ground, one thread, as it falls.</summary>
    public IReadOnlyList<string?>? Arrangements { get; init; }

    /// <summary>Left out: the logged leftovers.</summary>
    public IReadOnlyList<LeftoverBody?>? Leftovers { get; init; }

    public double? AllowancePercent { get; init; }
}

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
    private const int MostCells = 1_000;

    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader hats, LeftoverStore store, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(hats);
        var (body, refused) = await Body.ReadAsync<FromThisBagBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var hat = await hats.ReadAsync(body.Hat, errors, cancel);
        var sizes = BagFields.Sizes(errors, body.Sizes, hat);
        var counts = BagFields.StripeCounts(errors, body.StripeCounts);
        var arrangements = ReadArrangements(errors, body.Arrangements);
        var allowance = errors.Number("allowancePercent", body.AllowancePercent ?? 10, 0, 100);
        var bag = await BagFields.LeftoversAsync(errors, body.Leftovers, store, cancel);
        if (hat is not null && CellsOf(hat, sizes, counts) * arrangements.Count > MostCells)
        {
            errors.Add("sizes", $"times stripeCounts and arrangements must come to at most {MostCells} cells");
        }

        if (hat is null || errors.Any)
        {
            return errors.Problem();
        }

        var cells = FromThisBag.Cells(hat, bag, sizes, counts, arrangements, allowance!.Value, cancel);
        return Results.Json(new FromThisBagAnswer(allowance.Value, [.. cells.Select(ToBody)]), Body.Whole);
    }

    private static int CellsOf(Hat hat, IReadOnlyList<string> sizes, IReadOnlyList<int>? counts) =>
        counts is null ? sizes.Sum(s => hat.CountsFor(s).Count) : sizes.Count * counts.Count;

    private static IReadOnlyList<Arrangement> ReadArrangements(FieldErrors errors, IReadOnlyList<string?>? asked)
    {
        if (asked is null)
        {
            return FromThisBag.Usual;
        }

        var read = new List<Arrangement>();
        BagFields.Bounded(errors, "arrangements", asked.Count, Names.All<Arrangement>().Count);
        for (var i = 0; i < Math.Min(asked.Count, Names.All<Arrangement>().Count); i++)
        {
            if (errors.OneOf($"arrangements[{i}]", asked[i], Names.All<Arrangement>()) is { } arrangement)
            {
                BagFields.Once(errors, $"arrangements[{i}]", read, arrangement);
            }
        }

        return read;
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
