using Scalar.AspNetCore;

namespace StashMatch.Web;

/// <summary>What every response tells the browser to keep to: scripts, styles and pictures of ours only, no frames around us.</summary>
public static class SafeHeaders
{
    private const string Policy =
        "default-src 'self'; base-uri 'self'; form-action 'self'; object-src 'none'; frame-ancestors 'none'; "
        + "img-src 'self' data: blob:; style-src 'self' 'unsafe-inline'; script-src 'self'";

    /// <summary>Sets the headers last of all, so that an error page, which starts afresh, carries them too.</summary>
    public static void UseSafeHeaders(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        context.Response.OnStarting(() =>
        {
            var headers = context.Response.Headers;
            // The open interface's reference page is the one page with a script in its text; it names it by a number used once.
            headers.ContentSecurityPolicy = context.Items[ScalarOptions.NonceHttpContextItemKey] is string nonce ? $"{Policy} 'nonce-{nonce}'" : Policy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
            return Task.CompletedTask;
        });
        return next(context);
    });
}
