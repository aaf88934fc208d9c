using System.Text.Json;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A plan to be saved, as it is said.</summary>
internal static class PlanText
{
    private static readonly Field Leftover = Field.Text("leftover");
    private static readonly Field Part = Field.Text("part");
    private static readonly Field Metres = Field.NumberOver("metres", 0, 1_000_000);
    private static readonly Field Hat = Field.Text("hat");
    private static readonly Field Size = Field.Text("size");
    private static readonly Field Stripes = Field.Whole("stripes", 0, 1_000);
    private static readonly Field Arrangement = Field.Text("arrangement");
    private static readonly Field Question = new("question", FieldKind.Anything) { Says = "Any JSON; kept as it is." };
    private static readonly Field Reserves = Field.YesNo("reserves") with { Says = "Whether its yarn is kept for it; left out: yes." };
    private static readonly Field Version = Field.Text("version", 36) with { Says = "The version that was read, where an earlier plan is saved over." };
    private static readonly Field Parts = Field.Of("parts", Leftover, Part, Metres).Several(NewPlan.MostParts);

    /// <summary>What it is called.</summary>
    public static readonly Field Name = Field.Text("name");

    /// <summary>All fields.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [Name, Hat, Size, Stripes, Arrangement, Question, Reserves, Version, Parts];

    /// <summary>Reads a plan and the version it is saved over; what is wrong goes to the errors.</summary>
    public static (NewPlan Plan, Guid? Version) Read(Reading asked)
    {
        var parts = asked.Each(Parts).Select(p => new PlannedPart(p.Wanted(Leftover) ?? "", p.Wanted(Part) ?? "", Millimetres(p.NumberWanted(Metres)))).ToList();
        var plan = new NewPlan(asked.Wanted(Name) ?? "", asked.Wanted(Hat) ?? "", asked.Wanted(Size) ?? "", asked.Whole(Stripes) ?? 0, asked.Wanted(Arrangement) ?? "", parts)
        {
            Question = asked.Said[Question].Words,
            Reserves = asked.YesNo(Reserves) ?? true,
        };
        if (!asked.Errors.Any)
        {
            plan.Check(asked.Errors);
        }

        return (plan, asked.ReadVersion(Version));
    }

    /// <summary>A version as it was read; null where none is said, or with a message.</summary>
    internal static Guid? ReadVersion(this Reading asked, Field field)
    {
        if (asked.Text(field) is not { } told)
        {
            return null;
        }

        if (Guid.TryParse(told, out var version))
        {
            return version;
        }

        asked.Wrong(field, "is not a version");
        return null;
    }

    // What a hat needs rounds up.
    private static long Millimetres(decimal? metres) => metres is { } m ? Math.Max(1, (long)Math.Ceiling(m * 1000)) : 0;
}

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
            return SaidInJson.IsText(json) ? json : JsonSerializer.SerializeToElement(text);
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
        var (asked, refused) = await Body.ReadAsync(request, [PlanText.Name], cancel);
        if (asked is null)
        {
            return refused!;
        }

        return asked.Wanted(PlanText.Name) is { } name && !asked.Errors.Any
            ? await SayAsync(store, await store.RenameAsync(id, name, cancel), StatusCodes.Status200OK, cancel)
            : asked.Errors.Problem();
    }

    public static async Task<IResult> CopyAsync(string id, PlanStore store, CancellationToken cancel) =>
        await SayAsync(store, await store.CopyAsync(id, cancel), StatusCodes.Status201Created, cancel);

    public static async Task<IResult> RemoveAsync(string id, PlanStore store, CancellationToken cancel) =>
        await store.RemoveAsync(id, cancel) ? Results.NoContent() : NotThere();

    private static async Task<IResult> PutAsync(HttpRequest request, PlanStore store, int status, Func<NewPlan, Guid?, Task<PlanOutcome>> put, CancellationToken cancel)
    {
        var (asked, refused) = await Body.ReadAsync(request, PlanText.Fields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var (plan, version) = PlanText.Read(asked);
        return asked.Errors.Any ? asked.Errors.Problem() : await SayAsync(store, await put(plan, version), status, cancel);
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
