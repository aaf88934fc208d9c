using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>One stripe of a row whose stripes differ.</summary>
public sealed record StripeBody(string Part, int Rows, decimal DepthCm, decimal Metres);

/// <summary>One row of a yardage table; every length but bareMetres is the planned figure.</summary>
public sealed record YardageRowBody
{
    public required string Size { get; init; }

    public required int Stripes { get; init; }

    public string? Why { get; init; }

    public string? Text { get; init; }

    public int? Stitches { get; init; }

    public int? Rows { get; init; }

    public int? StripeRows { get; init; }

    public decimal? StripeDepthCm { get; init; }

    public decimal? StripeDepthIn { get; init; }

    public decimal? StripeMetres { get; init; }

    public decimal? StripeYards { get; init; }

    public decimal? BraidStrandMetres { get; init; }

    public int? Braids { get; init; }

    public decimal? BrimMetres { get; init; }

    public decimal? CrownMetres { get; init; }

    public decimal? SeamMetres { get; init; }

    public decimal? TotalMetres { get; init; }

    public decimal? TotalYards { get; init; }

    public decimal? BareMetres { get; init; }

    /// <summary>Where the row's figures come from: estimated, knitted, tester.</summary>
    public IReadOnlyList<string>? Figures { get; init; }

    public IReadOnlyList<StripeBody>? StripesEach { get; init; }
}

/// <summary>A yardage table.</summary>
public sealed record YardageAnswer(decimal AllowancePercent, IReadOnlyList<YardageRowBody> Rows);

/// <summary>POST /api/v1/yardage.</summary>
public static class YardageTable
{
    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader hats, TesterStore testers, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(hats);
        ArgumentNullException.ThrowIfNull(testers);
        var (asked, refused) = await Body.ReadAsync(request, TableQuestion.Fields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var hat = await hats.ReadAsync(asked, cancel);
        if (TableQuestion.Read(asked, hat) is not { } grid || asked.Errors.Any)
        {
            return asked.Errors.Problem();
        }

        var judged = asked.Said[MatchQuestion.Hat].Words is { } id ? await testers.JudgeAsync(id, grid.Hat, cancel) : null;
        var rows = Yardage.Table(grid.Hat, grid.Sizes, grid.StripeCounts, grid.AllowancePercent, judged?.Weighed);
        return Results.Json(new YardageAnswer(grid.AllowancePercent, [.. rows.Select(ToBody)]), Body.Whole);
    }

    private static YardageRowBody ToBody(YardageRow row)
    {
        if (row.Cannot is { } cannot)
        {
            return new YardageRowBody { Size = row.Size, Stripes = row.Stripes, Why = "cannot-be-knitted", Text = cannot.Reason };
        }

        var measured = row.Plan is not null;
        var largest = row.StripesEach.MaxBy(s => s.Planned);
        var depth = row.StripeDepth;
        var differ = row.StripesEach.Select(s => s.Planned).Distinct().Count() > 1;
        return new YardageRowBody
        {
            Size = row.Size,
            Stripes = row.Stripes,
            Stitches = row.Plan?.BodyStitches,
            Rows = row.Plan?.BodyRows,
            StripeRows = measured ? row.StripeRows : null,
            StripeDepthCm = depth is { } d ? Math.Round(d.Value, 2) : null,
            StripeDepthIn = depth is { } e ? Math.Round(e.Inches, 3) : null,
            StripeMetres = row.StripesEach.Count == 0 ? null : largest.Planned.Value,
            StripeYards = row.StripesEach.Count == 0 ? null : Yards(largest.Planned),
            BraidStrandMetres = row.BraidStrand?.Value,
            Braids = row.Plan?.Braids,
            BrimMetres = row.Brim?.Value,
            CrownMetres = row.Crown?.Value,
            SeamMetres = row.Seam?.Value,
            TotalMetres = row.Total.Value,
            TotalYards = Yards(row.Total),
            BareMetres = row.BareMetres.Value,
            Figures = [.. row.Parts.Select(p => Names.Of(p.Figure.Source)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            StripesEach = differ && measured
                ? [.. row.StripesEach.Select(s => new StripeBody(s.Part.Name, s.Part.Rows, Math.Round(s.Part.Depth.Value, 2), s.Planned.Value))]
                : null,
        };
    }

    // To the thousandth, up: it is needed.
    private static decimal Yards(Metres metres) => Math.Ceiling(metres.Yards * 1000) / 1000;
}
