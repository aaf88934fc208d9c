using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A weighing as the open interface takes it.</summary>
public sealed record WeighingBody(double? Grams, double? TareGrams, double? ScaleStepGrams);

/// <summary>A logged leftover.</summary>
public sealed record LoggedBody
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required string Code { get; init; }

    public required decimal Grams { get; init; }

    public required decimal TareGrams { get; init; }

    public required decimal ScaleStepGrams { get; init; }

    /// <summary>The yarn alone; 0 once it is knitted up.</summary>
    public required decimal LeftGrams { get; init; }

    /// <summary>What of it is promised to plans.</summary>
    public required decimal PromisedMetres { get; init; }

    public LabelBody? Label { get; init; }

    public string? RatioFrom { get; init; }

    public int? WeightClass { get; init; }

    public required string Fibre { get; init; }

    public string? Colour { get; init; }

    public required bool Singles { get; init; }

    public required bool Superwash { get; init; }

    public string? Lot { get; init; }

    public string? Care { get; init; }

    public string? Bag { get; init; }

    public string? KeptIn { get; init; }

    public string? KeptBackFor { get; init; }

    public required bool NotForHats { get; init; }

    public required bool Crumb { get; init; }

    public string? Note { get; init; }

    public decimal? Metres { get; init; }

    public decimal? LowMetres { get; init; }

    public required bool KnittedUp { get; init; }

    public required bool ForHats { get; init; }

    /// <summary>Another one after each step taken with it; a change may name the one it was read at. Not told in the list.</summary>
    public Guid? Version { get; init; }

    public static LoggedBody Of(LoggedLeftover l)
    {
        ArgumentNullException.ThrowIfNull(l);
        var label = l.Ratio is not { } r ? null : new LabelBody(
            r.MassUnit == MassUnit.Grams ? (double)r.Mass : null,
            r.MassUnit == MassUnit.Ounces ? (double)r.Mass : null,
            r.LengthUnit == LengthUnit.Metres ? (double)r.Length : null,
            r.LengthUnit == LengthUnit.Yards ? (double)r.Length : null);
        var leftover = l.ToLeftover();
        return new LoggedBody
        {
            Id = l.Id,
            Name = l.Name,
            Code = l.Code,
            Grams = l.Weighing.Gross.Value,
            TareGrams = l.Weighing.Tare.Value,
            ScaleStepGrams = l.Weighing.ScaleStep.Value,
            LeftGrams = l.Left.Value,
            PromisedMetres = l.Promised.Value,
            Label = label,
            RatioFrom = l.Ratio is { } ratio ? Names.Of(ratio.Source) : null,
            WeightClass = (int?)l.Class,
            Fibre = l.Fibre.ToString(),
            Colour = l.Colour?.Hex,
            Singles = l.Make == YarnMake.Singles,
            Superwash = l.Superwash,
            Lot = l.Lot,
            Care = l.Care?.ToString(),
            Bag = l.Bag,
            KeptIn = l.KeptIn,
            KeptBackFor = l.KeptBackFor,
            NotForHats = l.NotForHats,
            Crumb = l.Crumb,
            Note = l.Note,
            Metres = leftover?.Held.Value,
            LowMetres = leftover?.HeldAtLeast.Value,
            KnittedUp = l.KnittedUp,
            ForHats = l.ForHats,
            Version = l.Version,
        };
    }
}

/// <summary>/api/v1/leftovers.</summary>
public static class LeftoverRoutes
{
    private const int MostKey = 200;

    public static async Task<IResult> ListAsync(LeftoverStore store, CancellationToken cancel) =>
        Results.Json((await store.ListAsync(cancel)).Select(l => LoggedBody.Of(l) with { Version = null }), Body.Json);

    public static Task<IResult> FindAsync(string id, LeftoverStore store, CancellationToken cancel) => ShowAsync(store, id, StatusCodes.Status200OK, cancel);

    public static async Task<IResult> LogAsync(HttpRequest request, LeftoverStore store, CancellationToken cancel)
    {
        var (body, refused) = await Body.ReadAsync<LeftoverBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var once = request.Headers["Idempotency-Key"].FirstOrDefault();
        if (once is { Length: 0 or > MostKey })
        {
            errors.Add("Idempotency-Key", $"must be 1 to {MostKey} characters");
        }

        if (string.IsNullOrWhiteSpace(body.Name))
        {
            errors.Add("name", "is missing");
        }

        if (body.Read(errors, "", body.Id ?? "new") is not { } read)
        {
            return errors.Problem();
        }

        var leftover = new NewLeftover(body.Name ?? "", read.Weighing, read.Ratio)
        {
            Id = body.Id,
            Class = read.Class,
            Fibre = read.Fibre,
            Superwash = read.Superwash,
            Make = read.Make,
            Colour = read.Colour,
            Lot = read.Lot,
            Care = read.Care,
        };
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
        var (body, refused) = await Body.ReadAsync<WeighingBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        if (LeftoverBody.ReadWeighing(errors, "", body.Grams, body.TareGrams, body.ScaleStepGrams) is not { } weighing)
        {
            return errors.Problem();
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
