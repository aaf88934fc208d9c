using System.Text.Json.Nodes;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A logged leftover as the open interface shows it: its id, what the scale read, its details, and what comes of them.</summary>
internal static class LoggedBody
{
    private static readonly Field LeftGrams = Field.Number("leftGrams", 0, Weighing.MostGrams) with { Says = "The yarn alone; 0 once it is knitted up." };
    private static readonly Field PromisedMetres = Field.Number("promisedMetres", 0, 1_000_000) with { Says = "What of it is kept for hats." };
    private static readonly Field Metres = Field.Number("metres", 0, 1_000_000);
    private static readonly Field LowMetres = Field.Number("lowMetres", 0, 1_000_000) with { Says = "If the scale read as much too high as its step allows." };
    private static readonly Field KnittedUp = Field.YesNo("knittedUp");
    private static readonly Field ForHats = Field.YesNo("forHats");

    /// <summary>Another one after each step taken with it; a change may name the one it was read at. Not told in the list.</summary>
    public static readonly Field Version = Field.Text("version", 36) with { Says = "Another one after each step taken with it. Not told in the list." };

    /// <summary>All fields.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [.. LeftoverText.Fields, LeftGrams, PromisedMetres, Metres, LowMetres, KnittedUp, ForHats, Version];

    public static JsonObject Of(LoggedLeftover logged, bool inList = false)
    {
        ArgumentNullException.ThrowIfNull(logged);
        var leftover = logged.ToLeftover();
        var said = LeftoverFields.SayAll(logged)
            .With(LeftoverText.Id, Said.Exact(logged.Id))
            .With(LeftoverText.Grams, Number(logged.Weighing.Gross.Value))
            .With(LeftoverText.TareGrams, Number(logged.Weighing.Tare.Value))
            .With(LeftoverText.ScaleStepGrams, Number(logged.Weighing.ScaleStep.Value))
            .With(LeftGrams, Number(logged.Left.Value))
            .With(PromisedMetres, Number(logged.Promised.Value))
            .With(Metres, Number(leftover?.Held.Value))
            .With(LowMetres, Number(leftover?.HeldAtLeast.Value))
            .With(KnittedUp, Said.Exact(logged.KnittedUp ? "yes" : "no"))
            .With(ForHats, Said.Exact(logged.ForHats ? "yes" : "no"));
        return SaidInJson.Write(inList ? said : said.With(Version, Said.Exact(logged.Version.ToString())), Fields);
    }

    private static Said Number(decimal? number) => number is { } told ? Said.Exact(Said.Number(told)) : Said.Nothing;
}

/// <summary>/api/v1/leftovers.</summary>
public static class LeftoverRoutes
{
    private const int MostKey = 200;

    public static async Task<IResult> ListAsync(LeftoverStore store, CancellationToken cancel) =>
        Results.Json((await store.ListAsync(cancel)).Select(l => LoggedBody.Of(l, inList: true)), Body.Json);

    public static Task<IResult> FindAsync(string id, LeftoverStore store, CancellationToken cancel) => ShowAsync(store, id, StatusCodes.Status200OK, cancel);

    public static async Task<IResult> LogAsync(HttpRequest request, LeftoverStore store, CancellationToken cancel)
    {
        var (asked, refused) = await Body.ReadAsync(request, LeftoverText.Fields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var errors = asked.Errors;
        var once = request.Headers["Idempotency-Key"].FirstOrDefault();
        if (once is { Length: 0 or > MostKey })
        {
            errors.Add("Idempotency-Key", $"must be 1 to {MostKey} characters");
        }

        if (!asked.Has(LeftoverFields.Label))
        {
            asked.Wrong(LeftoverFields.Label, "is missing");
        }

        var (details, weighing, id) = (LeftoverFields.Read(asked), LeftoverText.ReadWeighing(asked), asked.Text(LeftoverText.Id));
        if (details is null || weighing is null || errors.Any)
        {
            return errors.Problem();
        }

        var leftover = new NewLeftover(details, weighing) { Id = id };
        if (!errors.Any)
        {
            leftover.Check(errors);
        }

        if (errors.Any)
        {
            return errors.Problem();
        }

        try
        {
            var logged = await store.WeighAsync(leftover, once, cancel);
            return await ShowAsync(store, logged, StatusCodes.Status201Created, cancel);
        }
        catch (KeyUsedException)
        {
            errors.Add("Idempotency-Key", "was used for another leftover already: give each a key of its own");
            return errors.Unprocessable("The key came with another body before. Nothing was logged.");
        }
        catch (ArgumentException e)
        {
            errors.Add("id", e.Message.Split(" (Parameter", 2)[0]);
            return errors.Problem();
        }
    }

    public static async Task<IResult> WeighAsync(string id, HttpRequest request, LeftoverStore store, CancellationToken cancel)
    {
        var (asked, refused) = await Body.ReadAsync(request, LeftoverText.Weighed, cancel);
        if (asked is null)
        {
            return refused!;
        }

        if (LeftoverText.ReadWeighing(asked) is not { } weighing || asked.Errors.Any)
        {
            return asked.Errors.Problem();
        }

        return await store.ReweighAsync(id, weighing, cancel) ? await ShowAsync(store, id, StatusCodes.Status200OK, cancel) : NotThere();
    }

    public static async Task<IResult> KnitUpAsync(string id, LeftoverStore store, CancellationToken cancel) =>
        await store.KnitUpAsync(id, cancel) ? Results.NoContent() : NotThere();

    public static async Task<IResult> RemoveAsync(string id, LeftoverStore store, CancellationToken cancel) =>
        await store.RemoveAsync(id, cancel) ? Results.NoContent() : NotThere();

    internal static async Task<IResult> ShowAsync(LeftoverStore store, string id, int status, CancellationToken cancel) =>
        await store.FindAsync(id, cancel) is { } logged
            ? Results.Json(LoggedBody.Of(logged), Body.Json, statusCode: status)
            : NotThere();

    internal static IResult NotThere() => Results.Problem(statusCode: StatusCodes.Status404NotFound, title: "No leftover has that id.");
}
