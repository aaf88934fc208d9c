using Microsoft.AspNetCore.Http.Metadata;
using StashMatch.Store.Data;

namespace StashMatch.Web.OpenInterface;

/// <summary>What could not be saved is said so, with the reason; and no other site's page changes anything here through the person's browser.</summary>
internal sealed class SafeKeeping : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var request = context.HttpContext.Request;
        if (!HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Site"] is ["cross-site" or "same-site"])
        {
            return Results.Problem(statusCode: StatusCodes.Status403Forbidden, title: "A page of another site may not change anything here.");
        }

        if (string.IsNullOrWhiteSpace(request.ContentType) && context.HttpContext.GetEndpoint()?.Metadata.GetMetadata<IAcceptsMetadata>() is { } accepts)
        {
            return Results.Problem(
                statusCode: StatusCodes.Status415UnsupportedMediaType,
                title: "The request does not say what its body is.",
                detail: $"Send the header Content-Type: {accepts.ContentTypes[0]}.");
        }

        try
        {
            return await next(context);
        }
        catch (StoreFailedException e)
        {
            return Results.Problem(
                statusCode: e.Why == StoreFailure.DiskFull ? StatusCodes.Status507InsufficientStorage : StatusCodes.Status503ServiceUnavailable,
                title: "Not saved.",
                detail: e.Message,
                extensions: new Dictionary<string, object?>(StringComparer.Ordinal) { ["why"] = Names.Of(e.Why) });
        }
    }
}
