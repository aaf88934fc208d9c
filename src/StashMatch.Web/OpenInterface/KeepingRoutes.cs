using Microsoft.AspNetCore.Http.Features;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>One line of a leftover's history.</summary>
public sealed record HistoryBody(string Kind, DateTimeOffset At, decimal LeftGrams, decimal? Grams, string? For, IReadOnlyList<FieldChange>? Changes, bool Undone, string? Undid);

/// <summary>What an undo undid.</summary>
public sealed record UndoneBody(string Undid);

/// <summary>A backup.</summary>
public sealed record BackupBody(string Name, string Kind, DateTimeOffset At, long Bytes);

/// <summary>The routes that keep what was logged: history, tables, plans, backups, everything.</summary>
public static class KeepingRoutes
{
    private static readonly Field UsedGrams = LeftoverText.Grams with { Says = "What was knitted from it." };
    private static readonly Field UsedFor = Field.Text("for") with { Says = "What it was knitted into." };
    private static readonly IReadOnlyList<Field> Used = [UsedGrams, UsedFor];

    public static void MapKeeping(this RouteGroupBuilder api)
    {
        ArgumentNullException.ThrowIfNull(api);
        api.MapPost("/leftovers/{id}/uses", UseAsync).WithSummary("Takes grams off a leftover that were knitted.").Takes("UseBody", Used).Shows("LoggedBody", LoggedBody.Fields);
        api.MapPost("/leftovers/{id}/undo", UndoAsync).WithSummary("Undoes the last step that is not undone yet; the first weighing stays.").Produces<UndoneBody>().ProducesProblem(404);
        api.MapGet("/leftovers/{id}/history", HistoryAsync).WithSummary("Every line of a leftover's ledger, oldest first.").Produces<IReadOnlyList<HistoryBody>>().ProducesProblem(404);
        api.MapPost("/leftovers/import", TableRoutes.ImportAsync)
            .WithSummary("Logs the leftovers of a table (CSV). With a row that cannot be read nothing is kept, unless goodRows=keep; preview=true keeps nothing at all.")
            .Accepts<string>("text/csv", "application/octet-stream").Produces<ImportedBody>();
        api.MapGet("/leftovers/export", TableRoutes.ExportAsync).WithSummary("The leftovers as a table (CSV, UTF-8); bom=true for spreadsheets.").Produces<string>(200, "text/csv");
        api.MapGet("/plans", PlanRoutes.ListAsync).WithSummary("The saved plans.").Produces<IReadOnlyList<PlanShown>>();
        api.MapGet("/plans/{id}", PlanRoutes.FindAsync).WithSummary("One plan.").Produces<PlanShown>().ProducesProblem(404);
        api.MapPost("/plans", PlanRoutes.SaveAsync).WithSummary("Saves a plan and keeps its yarn for it.").Takes("PlanBody", PlanText.Fields).Produces<PlanShown>(201).ProducesProblem(409);
        api.MapPut("/plans/{id}", PlanRoutes.ReplaceAsync).WithSummary("Saves a plan over an earlier one; version is the one that was read.").Takes("PlanBody", PlanText.Fields).Produces<PlanShown>().ProducesProblem(409);
        api.MapPost("/plans/{id}/name", PlanRoutes.RenameAsync).WithSummary("Gives a plan another name.").Takes("PlanNameBody", [PlanText.Name]).Produces<PlanShown>();
        api.MapPost("/plans/{id}/copy", PlanRoutes.CopyAsync).WithSummary("Copies a plan; the copy keeps no yarn.").Produces<PlanShown>(201);
        api.MapDelete("/plans/{id}", PlanRoutes.RemoveAsync).WithSummary("Deletes a plan and frees its yarn.").Produces(204);
        api.MapGet("/backups", (BackupStore store) => Results.Json(store.List().Select(Of), Body.Json)).WithSummary("The backups, the latest first.").Produces<IReadOnlyList<BackupBody>>();
        api.MapPost("/backups", BackUpAsync).WithSummary("Makes a backup.").Produces<BackupBody>(201);
        api.MapPost("/backups/{name}/restore", RestoreAsync).WithSummary("Puts a backup in the database's place; what is there becomes a backup of its own.").Produces(204).ProducesProblem(409);
        api.MapGet("/export", ExportAsync).WithSummary("Everything, as JSON that loses nothing.").Produces<EverythingJson>();
        api.MapPost("/import", ImportAsync).WithSummary("Reads everything into an empty store.")
            .Accepts<EverythingJson>("application/json").Produces(204);
    }

    private static async Task<IResult> UseAsync(string id, HttpRequest request, LeftoverStore store, CancellationToken cancel)
    {
        var (asked, refused) = await Body.ReadAsync(request, Used, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var (grams, what) = (asked.NumberWanted(UsedGrams), asked.Text(UsedFor));
        if (grams is null || asked.Errors.Any)
        {
            return asked.Errors.Problem();
        }

        switch (await store.UseAsync(id, Grams.From(grams.Value), what, cancel))
        {
            case UseOutcome.Booked:
                return await LeftoverRoutes.ShowAsync(store, id, StatusCodes.Status200OK, cancel);
            case UseOutcome.MoreThanIsLeft:
                asked.Wrong(UsedGrams, "is more than is left: weigh it again");
                return asked.Errors.Problem();
            default:
                return LeftoverRoutes.NotThere();
        }
    }

    private static async Task<IResult> UndoAsync(string id, LeftoverStore store, CancellationToken cancel) =>
        await store.UndoAsync(id, cancel) is { } undid
            ? Results.Json(new UndoneBody(Names.Of(undid)), Body.Json)
            : Results.Problem(statusCode: StatusCodes.Status404NotFound, title: "There is nothing to undo.");

    private static async Task<IResult> HistoryAsync(string id, LeftoverStore store, CancellationToken cancel) =>
        await store.HistoryAsync(id, cancel) is { Count: > 0 } lines
            ? Results.Json(
                lines.Select(l => new HistoryBody(
                    Names.Of(l.Kind), l.At, l.Left.Value, l.Weighing?.Gross.Value ?? l.Used?.Value, l.For, l.Changes.Count > 0 ? l.Changes : null, l.IsUndone, l.Undid is { } undid ? Names.Of(undid) : null)),
                Body.Json)
            : LeftoverRoutes.NotThere();

    private static BackupBody Of(Backup b) => new(b.Name, Names.Of(b.Kind), b.At, b.Bytes);

    private static async Task<IResult> BackUpAsync(BackupStore store, CancellationToken cancel) =>
        Results.Json(Of(await store.BackUpAsync(cancel)), Body.Json, statusCode: StatusCodes.Status201Created);

    private static async Task<IResult> RestoreAsync(string name, BackupStore store, CancellationToken cancel)
    {
        try
        {
            await store.RestoreAsync(name, cancel);
            return Results.NoContent();
        }
        catch (RestoreRefusedException e)
        {
            return Results.Problem(statusCode: StatusCodes.Status409Conflict, title: e.Message);
        }
    }

    private static async Task<IResult> ExportAsync(Everything everything, CancellationToken cancel) =>
        Results.File(await everything.WriteAsync(cancel), "application/json", "stashmatch.json");

    private static async Task<IResult> ImportAsync(HttpRequest request, Everything everything, CancellationToken cancel)
    {
        // Everything may be larger than any other body.
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = Everything.MostBytes + 1024;
        }

        if (await Body.ReadBytesAsync(request, Everything.MostBytes, cancel) is not { } bytes)
        {
            return Body.TooLarge(64);
        }

        var errors = await everything.ReadAsync(bytes, cancel);
        return errors.Any ? errors.Problem() : Results.NoContent();
    }
}
