using StashMatch.Store;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>A leftover's small picture, as the sheet shows it.</summary>
public static class PictureRoute
{
    public static void MapPictures(this IEndpointRouteBuilder app) =>
        app.MapGet("/leftovers/{id}/picture", async (string id, PictureStore pictures, HttpContext context) =>
        {
            context.Response.Headers.CacheControl = "private, no-cache";
            return await pictures.FindAsync(id, context.RequestAborted) is { } png ? Results.Bytes(png, "image/png") : Results.NotFound();
        }).ExcludeFromDescription();
}
