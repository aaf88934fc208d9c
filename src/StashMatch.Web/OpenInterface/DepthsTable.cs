using System.Text.Json;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>"How deep must each stripe be so that these are knitted up?" as the open interface takes it.</summary>
public sealed record DepthsBody
{
    /// <summary>The id of a stored or sample hat by measurements, or a description inline.</summary>
    public JsonElement? Hat { get; init; }

    public string? Size { get; init; }

    /// <summary>The chosen leftovers, 1 to 40: each the id of a logged one, or a leftover as elsewhere.</summary>
    public IReadOnlyList<JsonElement>? Leftovers { get; init; }

    /// <summary>Fewest rows of a stripe, from 2; left out: 2.</summary>
    public int? LeastRows { get; init; }

    /// <summary>Most rows of a stripe; left out: as many as there are.</summary>
    public int? MostRows { get; init; }

    public double? AllowancePercent { get; init; }
}

/// <summary>One stripe with its rows and what goes in; the need holds the strands that are not cut.</summary>
public sealed record DepthStripeBody(string Part, string Leftover, int Rows, decimal DepthCm, decimal NeedMetres, decimal LeftMetres, bool KnittedUp);

/// <summary>The depths, and the hat that has them: it can be asked about like any other. No stripes and no hat where <c>why</c> is short or colour.</summary>
public sealed record DepthsAnswer(
    string Why,
    string? Text,
    IReadOnlyList<DepthStripeBody> Stripes,
    decimal LeftMetres,
    decimal ShortMetres,
    IReadOnlyList<string> NotIn,
    bool ProvenBest,
    HatDescription? Hat);

/// <summary>POST /api/v1/depths-from-leftovers: stores nothing.</summary>
public static class DepthsTable
{
    /// <summary>The most rows a stripe can be asked to have.</summary>
    public const int MostRows = 1_000;

    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader reader, HatStore hats, LeftoverStore store, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(hats);
        ArgumentNullException.ThrowIfNull(store);
        var (body, refused) = await Body.ReadAsync<DepthsBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var hat = await reader.ReadAsync(body.Hat, errors, cancel);
        var design = hat as HatDesign;
        if (hat is not null && design is null)
        {
            errors.Add("hat", "has only a printed table; depths need a hat by measurements");
        }

        if (string.IsNullOrWhiteSpace(body.Size) || (design is not null && !design.SizeNames.Contains(body.Size, StringComparer.Ordinal)))
        {
            errors.Add("size", design is null || string.IsNullOrWhiteSpace(body.Size) ? "is missing" : $"must be one of {string.Join(", ", design.SizeNames)}");
        }

        if (body.LeastRows is < 2 or > MostRows)
        {
            errors.Add("leastRows", $"must be a whole number from 2 to {MostRows}");
        }

        if (body.MostRows is { } most && (most < (body.LeastRows ?? 2) || most > MostRows))
        {
            errors.Add("mostRows", $"must be a whole number from the least to {MostRows}");
        }

        var allowance = errors.Number("allowancePercent", body.AllowancePercent ?? 10, 0, 100);
        var chosen = ReadChosen(errors, body.Leftovers, await store.ForHatsAsync(cancel));
        if (design is null || errors.Any)
        {
            return errors.Problem();
        }

        var plan = DepthsFromLeftovers.Find(
            new DepthQuestion(design, body.Size!, chosen)
            {
                LeastRows = body.LeastRows ?? 2,
                MostRows = body.MostRows ?? MostRows,
                AllowancePercent = allowance!.Value,
            },
            cancel);
        if (plan.Why == Why.CannotBeKnitted)
        {
            errors.Add("leftovers", plan.Reason);
            return errors.Problem();
        }

        var description = body.Hat!.Value.ValueKind == JsonValueKind.String
            ? (await hats.ListAsync(cancel)).First(h => h.Id == body.Hat.Value.GetString()).Description
            : body.Hat.Value.Deserialize<HatDescription>(Body.Json)!;
        return Results.Json(
            new DepthsAnswer(
                Names.Of(plan.Why),
                plan.Reason.Length == 0 ? null : plan.Reason,
                [.. plan.Stripes.Select(s => new DepthStripeBody(
                    s.Part.Name, s.Leftover.Id, s.Part.Rows, Math.Round(s.Part.Depth.Value, 2), s.Need.Value, s.Left.Value, s.KnittedUp))],
                plan.Left.Value,
                plan.Short.Value,
                [.. plan.NotIn.Select(l => l.Id)],
                plan.ProvenBest,
                plan.Hat is { } own ? Described(description, own) : null),
            Body.Whole);
    }

    // The hat as it was described, with the depths found and the one size they fill.
    private static HatDescription Described(HatDescription description, HatDesign own)
    {
        var size = own.Sizes[0];
        return description with
        {
            Stripes = new StripesDescription([.. own.Stripes!.Values.Select(v => (double)v)], null),
            Sizes = [new SizeDescription(size.Size, (double?)size.Head?.Value, (double)size.Height.Value, (double)size.Circumference.Value, size.Stitches)],
        };
    }

    private static List<Leftover> ReadChosen(FieldErrors errors, IReadOnlyList<JsonElement>? asked, IReadOnlyList<Leftover> logged)
    {
        var read = new List<Leftover>();
        BagFields.Bounded(errors, "leftovers", asked?.Count ?? 0, DepthQuestion.MostLeftovers);
        for (var i = 0; i < Math.Min(asked?.Count ?? 0, DepthQuestion.MostLeftovers); i++)
        {
            var at = $"leftovers[{i}]";
            if (ReadOne(errors, asked![i], at, logged) is not { } leftover)
            {
                continue;
            }

            if (read.Exists(l => l.Id == leftover.Id))
            {
                errors.Add(at, "is there twice");
            }

            read.Add(leftover);
        }

        return read;
    }

    private static Leftover? ReadOne(FieldErrors errors, JsonElement one, string at, IReadOnlyList<Leftover> logged)
    {
        switch (one.ValueKind)
        {
            case JsonValueKind.String:
                var found = logged.FirstOrDefault(l => l.Id == one.GetString());
                if (found is null)
                {
                    errors.Add(at, "has the id of no leftover that may be used");
                }

                return found;
            case JsonValueKind.Object:
                try
                {
                    var body = one.Deserialize<LeftoverBody>(Body.Json)!;
                    if (string.IsNullOrWhiteSpace(body.Id) || body.Id.Length > 80)
                    {
                        errors.Add($"{at}.id", "is missing, or longer than 80 characters");
                    }

                    return body.Read(errors, $"{at}.", body.Id);
                }
                catch (JsonException e)
                {
                    errors.Add(Body.FieldOf(e.Path, at), Body.Message(e));
                    return null;
                }

            default:
                errors.Add(at, "must be a leftover's id or a leftover");
                return null;
        }
    }
}
