namespace StashMatch.Web;

/// <summary>HEAD is answered like GET, without the body.</summary>
public static class HeadLikeGet
{
    /// <summary>Stands before routing, so that every page and route that takes GET takes HEAD.</summary>
    public static void UseHeadLikeGet(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next(context);
            return;
        }

        var body = context.Response.Body;
        (context.Request.Method, context.Response.Body) = (HttpMethods.Get, Stream.Null);
        try
        {
            await next(context);
        }
        finally
        {
            (context.Request.Method, context.Response.Body) = (HttpMethods.Head, body);
        }
    });
}
