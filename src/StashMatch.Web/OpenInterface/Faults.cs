using Microsoft.AspNetCore.Diagnostics;

namespace StashMatch.Web.OpenInterface;

/// <summary>Every fault of the open interface is problem details, whoever finds it.</summary>
public static class Faults
{
    private const string Root = "/api";

    /// <summary>Whether a request is the open interface's, so that no page answers it.</summary>
    public static bool IsInterface(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Request.Path.StartsWithSegments(Root, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Stands within what turns faults into pages, and before routing.</summary>
    public static void UseInterfaceFaults(this IApplicationBuilder app) => app.UseWhen(IsInterface, branch =>
    {
        branch.UseExceptionHandler(new ExceptionHandlerOptions
        {
            StatusCodeSelector = fault => fault is BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError,
            ExceptionHandler = context => Problem(context.Response.StatusCode).ExecuteAsync(context),
        });
        branch.UseStatusCodePages(fault => Problem(fault.HttpContext.Response.StatusCode).ExecuteAsync(fault.HttpContext));
    });

    private static IResult Problem(int status) => Results.Problem(statusCode: status, title: status switch
    {
        StatusCodes.Status400BadRequest => "The request cannot be read.",
        StatusCodes.Status404NotFound => "There is nothing at this address.",
        StatusCodes.Status405MethodNotAllowed => "This address does not take that method.",
        StatusCodes.Status413PayloadTooLarge => "The body is too large.",
        StatusCodes.Status415UnsupportedMediaType => "The body is not of a kind that is taken here.",
        >= 500 => "Something went wrong here. That is our fault, not yours; what was saved is safe.",
        _ => null,
    });
}
