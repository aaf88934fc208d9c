using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;
using StashMatch.Store;
using StashMatch.Store.Data;

namespace StashMatch.Web.Phone;

/// <summary>Stands between the home network and the program: an unpaired browser gets the pairing page and nothing else.</summary>
public static class PhoneGate
{
    /// <summary>The longest name of a phone.</summary>
    public const int MostName = 40;

    private const string Page = "/pair";

    private static readonly string[] Dress = ["/css", "/fonts", "/icons"];

    // What puts another file in the store's place is done at the computer itself.
    private static readonly string[] AtTheComputer = ["/api/v1/backups", "/api/v1/import"];

    public static void AddPhone(this WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        var door = PhoneDoor.From(builder.Configuration);
        builder.Services.AddSingleton(door);
        builder.Services.AddSingleton<PairingCode>();
        builder.Services.AddSingleton<PhoneLines>();
        builder.Services.AddSingleton<PhoneCookie>();
        builder.Services.AddDataProtection().SetApplicationName("StashMatch");
        builder.Services.AddSingleton<IConfigureOptions<Microsoft.AspNetCore.DataProtection.KeyManagement.KeyManagementOptions>, KeysBesideTheStore>();
        if (door.Open)
        {
            // Hosts are looked at by the gate instead: what may call differs from door to door.
            builder.Services.PostConfigure<HostFilteringOptions>(o => o.AllowedHosts = ["*"]);
        }
    }

    /// <summary>Puts the gate up, if the door to the home network is open at all.</summary>
    public static void UsePhoneGate(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        if (app.Services.GetRequiredService<PhoneDoor>() is not { Open: true } door)
        {
            return;
        }

        var hosts = (app.Configuration["AllowedHosts"] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var cookie = app.Services.GetRequiredService<PhoneCookie>();
        var (phones, lines) = (app.Services.GetRequiredService<PhoneStore>(), app.Services.GetRequiredService<PhoneLines>());
        app.Use((context, next) =>
        {
            if (context.Connection.LocalPort != door.Port)
            {
                return IsOneOf(context.Request.Host.Host, hosts) ? next(context) : Turn(context, StatusCodes.Status400BadRequest);
            }

            return PhoneDoor.IsThisMachine(context.Request.Host.Host) ? LookAsync(context, next, phones, lines, cookie) : Turn(context, StatusCodes.Status400BadRequest);
        });
    }

    public static void MapPairing(this IEndpointRouteBuilder app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapGet(Page, (HttpContext context, PhoneDoor door, IAntiforgery forgery) =>
            CanPair(context, door) ? Ask(context, forgery, null, "", StatusCodes.Status200OK) : Results.Redirect("/settings")).ExcludeFromDescription();
        app.MapPost(Page, async (HttpContext context, PhoneDoor door, IAntiforgery forgery, PairingCode code, PhoneStore phones, PhoneCookie cookie) =>
        {
            if (!CanPair(context, door))
            {
                return Results.Redirect("/settings");
            }

            if (!await forgery.IsRequestValidAsync(context))
            {
                return Ask(context, forgery, PhoneWords.PageTooOld, "", StatusCodes.Status400BadRequest);
            }

            var form = await context.Request.ReadFormAsync(context.RequestAborted);
            var name = form["name"].ToString();
            if (!code.TryUse(form["code"]))
            {
                return Ask(context, forgery, PhoneWords.WrongCode, name, StatusCodes.Status403Forbidden);
            }

            cookie.Give(context.Response, await phones.PairAsync(string.IsNullOrWhiteSpace(name) ? PhoneWords.APhone : Cut(name.Trim()), context.RequestAborted));
            return Results.Redirect("/leftovers");
        }).ExcludeFromDescription().DisableAntiforgery();
    }

    private static string Cut(string name) => name.Length > MostName ? name[..MostName] : name;

    private static bool CanPair(HttpContext context, PhoneDoor door) => door.Open && context.Connection.LocalPort == door.Port && !PhoneCookie.IsPhone(context.User);

    private static RazorComponentResult<PairPhone> Ask(HttpContext context, IAntiforgery forgery, string? wrong, string name, int status)
    {
        var tokens = forgery.GetAndStoreTokens(context);
        return new RazorComponentResult<PairPhone>(new { Wrong = wrong, Called = Cut(name), Field = tokens.FormFieldName, Token = tokens.RequestToken }) { StatusCode = status };
    }

    private static async Task LookAsync(HttpContext context, RequestDelegate next, PhoneStore phones, PhoneLines lines, PhoneCookie cookie)
    {
        var path = context.Request.Path;
        if (cookie.Of(context.Request) is { } id && await phones.MayComeInAsync(id, context.RequestAborted))
        {
            if (Array.Exists(AtTheComputer, a => path.StartsWithSegments(a, StringComparison.OrdinalIgnoreCase)))
            {
                await Turn(context, StatusCodes.Status403Forbidden);
                return;
            }

            context.User = PhoneCookie.Person(id);
            using var line = lines.Hold(id, context.Abort);
            await next(context);
            return;
        }

        if (path.Equals(Page, StringComparison.Ordinal) || (HttpMethods.IsGet(context.Request.Method) && Array.Exists(Dress, d => path.StartsWithSegments(d, StringComparison.Ordinal))))
        {
            await next(context);
        }
        else if (HttpMethods.IsGet(context.Request.Method) && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase))
        {
            context.Response.Redirect(Page);
        }
        else
        {
            await Turn(context, StatusCodes.Status403Forbidden);
        }
    }

    private static bool IsOneOf(string host, string[] hosts) =>
        hosts.Length == 0 || hosts.Contains("*", StringComparer.Ordinal) || HostString.MatchesAny(host, [.. hosts.Select(h => (Microsoft.Extensions.Primitives.StringSegment)h)]);

    private static Task Turn(HttpContext context, int status)
    {
        var title = status == StatusCodes.Status403Forbidden ? PhoneWords.NotForThisBrowser : PhoneWords.WrongAddress;
        if (OpenInterface.Faults.IsInterface(context))
        {
            return Results.Problem(statusCode: status, title: title).ExecuteAsync(context);
        }

        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(title);
    }

    // The ring of keys lies in the data folder, so that a cookie outlives a restart, in a container too.
    private sealed class KeysBesideTheStore(StorePlace place, ILoggerFactory logs) : IConfigureOptions<Microsoft.AspNetCore.DataProtection.KeyManagement.KeyManagementOptions>
    {
        public void Configure(Microsoft.AspNetCore.DataProtection.KeyManagement.KeyManagementOptions options)
        {
            var folder = Path.Combine(place.Folder, "keys");
            if (!OperatingSystem.IsWindows() && !place.ReadingOnly)
            {
                Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }

            options.XmlRepository = new Microsoft.AspNetCore.DataProtection.Repositories.FileSystemXmlRepository(new DirectoryInfo(folder), logs);
        }
    }
}
