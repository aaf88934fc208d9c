using StashMatch.Store;

namespace StashMatch.Web;

/// <summary>Files to take along: the leftovers as a table, and everything.</summary>
public static class TakeWithYou
{
    public static void MapTakeWithYou(this IEndpointRouteBuilder app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapGet("/leftovers.csv", async (LeftoverTable table, HttpContext context) =>
            File(context, await table.WriteAsync(bom: true, context.RequestAborted), "text/csv; charset=utf-8", "leftovers.csv")).ExcludeFromDescription();
        app.MapGet("/everything.json", async (Everything everything, HttpContext context) =>
            File(context, await everything.WriteAsync(context.RequestAborted), "application/json", "everything.json")).ExcludeFromDescription();
    }

    private static IResult File(HttpContext context, byte[] bytes, string type, string name)
    {
        context.Response.Headers.CacheControl = "no-store";
        return Results.File(bytes, type, name);
    }
}
