using System.Text.Json;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>What a yardage table is asked for.</summary>
public sealed record YardageBody
{
    public JsonElement? Hat { get; init; }

    public IReadOnlyList<string?>? Sizes { get; init; }

    public IReadOnlyList<int>? StripeCounts { get; init; }

    public double? AllowancePercent { get; init; }
}

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
        var (body, refused) = await Body.ReadAsync<YardageBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var hat = await hats.ReadAsync(body.Hat, errors, cancel);
        var allowance = errors.Number("allowancePercent", body.AllowancePercent ?? 10, 0, 100);
        for (var i = 0; i < (body.StripeCounts?.Count ?? 0); i++)
        {
            if (body.StripeCounts![i] is < 1 or > 24)
            {
                errors.Add($"stripeCounts[{i}]", "must be a whole number from 1 to 24");
            }
        }

        for (var i = 0; hat is not null && i < (body.Sizes?.Count ?? 0); i++)
        {
            if (!hat.SizeNames.Contains(body.Sizes![i], StringComparer.Ordinal))
            {
                errors.Add($"sizes[{i}]", $"must be one of {string.Join(", ", hat.SizeNames)}");
            }
        }

        if (body.Sizes is { Count: > 100 })
        {
            errors.Add("sizes", "must be at most 100");
        }

        if (body.StripeCounts is { Count: > 100 })
        {
            errors.Add("stripeCounts", "must be at most 100");
        }

        if (errors.Any || hat is null)
        {
            return errors.Problem();
        }

        var judged = body.Hat is { ValueKind: JsonValueKind.String } id ? await testers.JudgeAsync(id.GetString(), hat, cancel) : null;
        var rows = Yardage.Table(hat, body.Sizes?.OfType<string>().ToList() ?? hat.SizeNames, body.StripeCounts, allowance!.Value, judged?.Weighed);
        return Results.Json(new YardageAnswer(allowance.Value, [.. rows.Select(ToBody)]), Body.Whole);
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
