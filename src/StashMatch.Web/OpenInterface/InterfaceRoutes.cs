using System.Text.Json;
using System.Text.Json.Serialization;
using Scalar.AspNetCore;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>The routes of the open interface.</summary>
public static class InterfaceRoutes
{
    public static IServiceCollection AddOpenInterface(this IServiceCollection services)
    {
        services.AddOpenApi(o => o.AddOperationTransformer(InterfaceDocument.DescribeAsync).AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new() { Title = "StashMatch open interface", Version = "1" };
            return Task.CompletedTask;
        }));
        // The document tells of the types that are sent: numbers alone, and enumerations by their words.
        services.ConfigureHttpJsonOptions(o =>
        {
            o.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
            o.SerializerOptions.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        });
        services.AddProblemDetails();
        services.AddSingleton<HatReader>();
        return services;
    }

    public static void MapOpenInterface(this IEndpointRouteBuilder app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapOpenApi();
        app.MapScalarApiReference("/open-interface", o => o.WithTitle("The open interface · StashMatch").WithFavicon("/icons/hat.svg").WithNonce().DisableDefaultFonts().DisableTelemetry().DisableAgent().HideDeveloperTools());
        app.MapGet("/health/live", () => Results.Text("alive")).ExcludeFromDescription();
        app.MapGet("/health/ready", ReadyAsync).ExcludeFromDescription();
        var api = app.MapGroup("/api/v1").DisableAntiforgery().WithTags("Open interface")
            .ProducesValidationProblem().ProducesProblem(413).ProducesProblem(415).AddEndpointFilter<SafeKeeping>();
        api.MapPost("/can-i-make", CanIMake.AnswerAsync)
            .WithSummary("Can I make this size from these leftovers? Stores nothing.")
            .Takes("CanIMakeBody", MatchQuestion.Fields).Produces<CanIMakeAnswer>();
        api.MapPost("/yardage", YardageTable.AnswerAsync)
            .WithSummary("What each size and stripe count takes.")
            .Takes("YardageBody", TableQuestion.Fields).Produces<YardageAnswer>();
        api.MapPost("/kits/check", KitRoutes.CheckAsync)
            .WithSummary("Does a kit of mini-skeins make every size, stripe count and arrangement, and what is the smallest that does? Stores nothing.")
            .Takes("KitCheckBody", KitQuestion.Fields).Produces<KitCheckAnswer>();
        api.MapPost("/from-this-bag", FromThisBagTable.AnswerAsync)
            .WithSummary("What could this bag become? Every size, stripe count and arrangement of a hat, each with its verdict.")
            .Takes("FromThisBagBody", BagQuestion.Fields).Produces<FromThisBagAnswer>();
        api.MapPost("/whole-bag", WholeBagCount.AnswerAsync)
            .WithSummary("How many hats, and which sizes, from the whole bag: at least so many, each laid out, and at most so many.")
            .Takes("WholeBagBody", BagQuestion.WholeBagFields).Produces<WholeBagCountAnswer>();
        api.MapPost("/depths-from-leftovers", DepthsTable.AnswerAsync)
            .WithSummary("How deep must each stripe be so that the chosen leftovers are knitted up?")
            .Takes("DepthsBody", DepthsQuestion.Fields).Produces<DepthsAnswer>();
        api.MapGet("/leftovers", LeftoverRoutes.ListAsync).WithSummary("The logged leftovers.").Shows("LoggedBody", LoggedBody.Fields, several: true);
        api.MapPost("/leftovers", LeftoverRoutes.LogAsync)
            .WithSummary("Logs a leftover; the same Idempotency-Key logs once, and is refused with another body.")
            .Takes("LeftoverBody", LeftoverText.Fields).Shows("LoggedBody", LoggedBody.Fields, 201).ProducesValidationProblem(422);
        api.MapPost("/leftovers/{id}/weighings", LeftoverRoutes.WeighAsync)
            .WithSummary("Weighs a leftover again.").Takes("WeighingBody", LeftoverText.Weighed).Shows("LoggedBody", LoggedBody.Fields);
        api.MapPost("/leftovers/{id}/knit-up", LeftoverRoutes.KnitUpAsync).WithSummary("Says a leftover is finished.").Produces(204);
        api.MapGet("/leftovers/{id}", LeftoverRoutes.FindAsync).WithSummary("One leftover, with the version a change may name.").Shows("LoggedBody", LoggedBody.Fields).ProducesProblem(404);
        api.MapPatch("/leftovers/{id}", LeftoverChange.ChangeAsync)
            .WithSummary("Changes what a leftover is: the fields named and no other; null clears one. What it weighs is weighed again, not changed.")
            .Takes("LeftoverChangeBody", LeftoverChange.Fields, "application/json", "application/merge-patch+json").Shows("LoggedBody", LoggedBody.Fields).ProducesProblem(404).ProducesValidationProblem(409);
        api.MapDelete("/leftovers/{id}", LeftoverRoutes.RemoveAsync).WithSummary("Deletes a leftover.").Produces(204);
        api.MapGet("/hats", HatRoutes.ListAsync).WithSummary("Sample and own hats.").Produces<IReadOnlyList<ListedHatBody>>();
        api.MapPost("/hats", HatRoutes.SaveAsync)
            .WithSummary("Saves a hat.").Takes("HatBody", HatFields.All).Produces<SavedHatBody>(201);
        api.MapKeeping();
    }

    private static async Task<IResult> ReadyAsync(LeftoverStore store, CancellationToken cancel)
    {
        try
        {
            await store.FindAsync("ready?", cancel);
            return Results.Text("ready");
        }
        catch (Exception e) when (e is Microsoft.Data.Sqlite.SqliteException or IOException or InvalidOperationException)
        {
            return Results.Problem(statusCode: 503, title: "The database does not answer.");
        }
    }
}
