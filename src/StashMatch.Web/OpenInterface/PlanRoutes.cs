using System.Text.Json;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>So much of a leftover for a part of a hat.</summary>
public sealed record PlanPartBody(string? Leftover, string? Part, double? Metres);

/// <summary>A plan to be saved.</summary>
public sealed record PlanBody
{
    public string? Name { get; init; }

    public string? Hat { get; init; }

    public string? Size { get; init; }

    public int? Stripes { get; init; }

    public string? Arrangement { get; init; }

    /// <summary>Any JSON; kept as it is.</summary>
    public JsonElement? Question { get; init; }

    /// <summary>Whether its yarn is promised to it; left out: yes.</summary>
    public bool? Reserves { get; init; }

    /// <summary>The version that was read, where an earlier plan is saved over.</summary>
    public Guid? Version { get; init; }

    public IReadOnlyList<PlanPartBody?>? Parts { get; init; }

    internal NewPlan Read(FieldErrors errors)
    {
        var plan = new NewPlan(Name ?? "", Hat ?? "", Size ?? "", Stripes ?? 0, Arrangement ?? "", [.. (Parts ?? []).Select(p => new PlannedPart(p?.Leftover ?? "", p?.Part ?? "", Millimetres(p?.Metres)))])
        {
            Question = Question?.GetRawText(),
            Reserves = Reserves ?? true,
        };
        var wrong = new FieldErrors();
        plan.Check(wrong);
        foreach (var (field, messages) in wrong.ByField)
        {
            var (name, message) = field.EndsWith(".millimetres", StringComparison.Ordinal) ? (field.Replace(".millimetres", ".metres", StringComparison.Ordinal), "must be a number over 0 and at most 1000000") : (field, messages[0]);
            errors.Add(name, message);
        }

        return plan;
    }

    // What a hat needs rounds up.
    private static long Millimetres(double? metres) => metres is > 0 and <= 1_000_000 ? Math.Max(1, (long)Math.Ceiling((metres.Value * 1000) - 1e-6)) : 0;
}

/// <summary>A plan's new name.</summary>
public sealed record PlanNameBody(string? Name);

/// <summary>What a plan takes of a leftover; without an id the leftover is gone for good.</summary>
public sealed record PlanPartShown(string? Leftover, string Name, string Part, decimal Metres, decimal? Grams);

/// <summary>A plan as saved.</summary>
public sealed record PlanShown
{
    public required string Id { get; init; }

    public required Guid Version { get; init; }

    public required string Name { get; init; }

    public required string Hat { get; init; }

    public required string Size { get; init; }

    public required int Stripes { get; init; }

    public required string Arrangement { get; init; }

    public required bool Reserves { get; init; }

    public required DateTimeOffset SavedAt { get; init; }

    public DateTimeOffset? FinishedAt { get; init; }

    public JsonElement? Question { get; init; }

    public required IReadOnlyList<PlanPartShown> Parts { get; init; }

    internal static PlanShown Of(SavedPlan p) => new()
    {
        Id = p.Id,
        Version = p.Version,
        Name = p.Name,
        Hat = p.Hat,
        Size = p.Size,
        Stripes = p.Stripes,
        Arrangement = p.Arrangement,
        Reserves = p.Reserves,
        SavedAt = p.SavedAt,
        FinishedAt = p.FinishedAt,
        Question = Json(p.Question),
        Parts = [.. p.Parts.Select(x => new PlanPartShown(x.Leftover, x.Name, x.Part, x.Length.Value, x.Mass?.Value))],
    };

    // A page's own text need not be JSON.
    private static JsonElement? Json(string? text)
    {
        try
        {
            if (text is null)
            {
                return null;
            }

            // A text that cannot be written down goes out as it was kept.
            var json = JsonSerializer.Deserialize<JsonElement>(text);
            return BodyCheck.IsText(json) ? json : JsonSerializer.SerializeToElement(text);
        }
        catch (JsonException)
        {
            return JsonSerializer.SerializeToElement(text);
        }
    }
}

/// <summary>/api/v1/plans.</summary>
public static class PlanRoutes
{
    public static async Task<IResult> ListAsync(PlanStore store, CancellationToken cancel) =>
        Results.Json((await store.ListAsync(cancel)).Select(PlanShown.Of), Body.Json);

    public static Task<IResult> FindAsync(string id, PlanStore store, CancellationToken cancel) => ShowAsync(store, id, StatusCodes.Status200OK, cancel);

    public static Task<IResult> SaveAsync(HttpRequest request, PlanStore store, CancellationToken cancel) =>
        PutAsync(request, store, StatusCodes.Status201Created, (plan, _) => store.SaveAsync(plan, cancel), cancel);

    public static Task<IResult> ReplaceAsync(string id, HttpRequest request, PlanStore store, CancellationToken cancel) =>
        PutAsync(request, store, StatusCodes.Status200OK, (plan, version) => store.ReplaceAsync(id, version ?? Guid.Empty, plan, cancel), cancel);

    public static async Task<IResult> RenameAsync(string id, HttpRequest request, PlanStore store, CancellationToken cancel)
    {
        var (body, refused) = await Body.ReadAsync<PlanNameBody>(request, cancel);
        return body is null ? refused! : await SayAsync(store, await store.RenameAsync(id, body.Name ?? "", cancel), StatusCodes.Status200OK, cancel);
    }

    public static async Task<IResult> CopyAsync(string id, PlanStore store, CancellationToken cancel) =>
        await SayAsync(store, await store.CopyAsync(id, cancel), StatusCodes.Status201Created, cancel);

    public static async Task<IResult> RemoveAsync(string id, PlanStore store, CancellationToken cancel) =>
        await store.RemoveAsync(id, cancel) ? Results.NoContent() : NotThere();

    private static async Task<IResult> PutAsync(HttpRequest request, PlanStore store, int status, Func<NewPlan, Guid?, Task<PlanOutcome>> put, CancellationToken cancel)
    {
        var (body, refused) = await Body.ReadAsync<PlanBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var plan = body.Read(errors);
        return errors.Any ? errors.Problem() : await SayAsync(store, await put(plan, body.Version), status, cancel);
    }

    private static async Task<IResult> SayAsync(PlanStore store, PlanOutcome outcome, int status, CancellationToken cancel) => outcome switch
    {
        { NotThere: true } => NotThere(),
        { ChangedMeanwhile: true } => Results.Problem(statusCode: StatusCodes.Status409Conflict, title: "The plan was changed meanwhile: read it again."),
        { Clashes: { Count: > 0 } clashes } => Results.Problem(
            statusCode: StatusCodes.Status409Conflict,
            title: "A leftover is kept for another hat, or too little of it is left.",
            detail: string.Join(". ", clashes),
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                ["clashes"] = clashes.Select(c => new
                {
                    c.Leftover,
                    c.Name,
                    WantedMetres = c.Wanted.Value,
                    FreeMetres = c.Free.Value,
                    Others = c.Others.Select(o => new { Plan = o.Id, o.Name, Metres = o.Promised.Value }),
                }),
            }),
        { Id: { } id } => await ShowAsync(store, id, status, cancel),
        _ => outcome.Errors.Problem(),
    };

    private static async Task<IResult> ShowAsync(PlanStore store, string id, int status, CancellationToken cancel) =>
        await store.FindAsync(id, cancel) is { } plan ? Results.Json(PlanShown.Of(plan), Body.Json, statusCode: status) : NotThere();

    private static IResult NotThere() => Results.Problem(statusCode: StatusCodes.Status404NotFound, title: "No plan has that id.");
}
