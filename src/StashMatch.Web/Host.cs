using Microsoft.AspNetCore.Components.Server;
using MudBlazor.Services;
using StashMatch.Store;
using StashMatch.Store.Data;
using StashMatch.Web.Layout;
using StashMatch.Web.OpenInterface;
using StashMatch.Web.Pages;
using StashMatch.Web.Pages.WeighLeftovers;
using StashMatch.Web.Phone;
using StashMatch.Web.Pieces;

namespace StashMatch.Web;

/// <summary>Puts the program together.</summary>
public static class Host
{
    public static void AddStashMatch(this WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder.WebHost.UseStaticWebAssets();
        if (!builder.Environment.IsDevelopment())
        {
            // Else each file is packed anew, and not at all tightly, as if it might change under the running program.
            builder.Configuration["ReloadStaticAssetsAtRuntime"] = "false";
        }

        builder.WebHost.ConfigureKestrel(k =>
        {
            k.AddServerHeader = false;
            k.Limits.MaxRequestBodySize = Body.MostBytes + 1024;
        });
        if (string.IsNullOrEmpty(builder.Configuration["urls"]) && !builder.Configuration.GetSection("Kestrel:Endpoints").Exists() && !builder.Configuration.GetValue<bool>("Home:Contained"))
        {
            builder.WebHost.UseUrls(Home.Address);
        }

        if (PhoneDoor.From(builder.Configuration) is { Open: true } door)
        {
            var own = (builder.Configuration["urls"] ?? Home.Address).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            builder.WebHost.UseUrls([.. own, door.ListenOn]);
        }

        var folder = builder.Configuration["Data:Folder"] ?? "App_Data";
        builder.Services.AddStore(Path.Combine(builder.Environment.ContentRootPath, folder));
        builder.AddPhone();
        if (builder.Configuration.GetValue("Data:Backups", true))
        {
            builder.Services.AddHostedService<DailyBackups>();
        }

        if (builder.Configuration.GetValue("Matching:Warm", true))
        {
            builder.Services.AddHostedService<WarmMatcher>();
        }

        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.Configure<CircuitOptions>(o => o.DetailedErrors = false);
        builder.Services.AddResponseCompression();
        builder.Services.AddMudServices();
        builder.Services.AddHabits();
        builder.Services.AddSingleton<Pages.WeighLeftovers.SeenLeftovers>();
        builder.Services.AddOpenInterface();
        builder.Services.AddScoped<Pages.YardageTables.TableQuestion>();
        builder.Services.AddScoped<Microsoft.AspNetCore.Components.Web.HtmlRenderer>();
        builder.Services.AddScoped<Pages.CanIMakeIt.HatQuestion>();
        builder.Services.AddSingleton<HatPictures>();
    }

    public static void UseStashMatch(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.UseSafeHeaders();
        app.UseResponseCompression();
        app.UsePhoneGate();
        app.UseHeadLikeGet();
        app.UseExceptionHandler("/sorry", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseInterfaceFaults();
        app.UseRouting();
        app.UseHabits();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapOpenInterface();
        app.MapPairing();
        app.MapPictures();
        app.MapFiles();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);
    }

    /// <summary>Readies the store and, on an empty one, the demo bag.</summary>
    public static async Task ReadyAsync(this WebApplication app, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(app);
        await app.Services.GetRequiredService<StoreStart>().ReadyAsync(cancel);
        try
        {
            await app.Services.GetRequiredService<NewCodes>().RenewAsync(cancel);
        }
        catch (StoreFailedException)
        {
            // A disk that takes nothing keeps its old codes.
        }

        if (app.Configuration.GetValue("Data:Demo", true))
        {
            try
            {
                await app.Services.GetRequiredService<DemoBag>().LoadOnceAsync(cancel);
            }
            catch (StoreFailedException)
            {
                // A disk that takes nothing has no demo; what is on it can be read all the same.
            }
        }
    }
}
