using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor.Services;
using StashMatch.Store;
using StashMatch.Store.Data;
using StashMatch.Web.Phone;

namespace StashMatch.Web.Tests.Pages;

/// <summary>Renders pages on the real store in a folder of its own.</summary>
public abstract class PageContext : BunitContext
{
    private readonly string _folder = Directory.CreateTempSubdirectory("stashmatch-page-").FullName;

    protected PageContext()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices(o => o.PopoverOptions.CheckForPopoverProvider = false);
        Services.AddStore(_folder);
        Services.AddHabits();
        Services.AddSingleton<StashMatch.Web.Pages.WeighLeftovers.SeenLeftovers>();
        Services.AddSingleton(new PhoneDoor(true, PhoneDoor.UsualPort));
        Services.AddScoped<StashMatch.Web.Pages.CanIMakeIt.HatQuestion>();
        Services.AddSingleton<StashMatch.Web.Pieces.HatPictures>();
        Services.AddSingleton<PairingCode>();
        Services.AddSingleton<PhoneLines>();
        Services.AddSingleton<AuthenticationStateProvider>(Person);
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
    }

    /// <summary>Who looks on.</summary>
    protected Onlooker Person { get; } = new();

    protected LeftoverStore Leftovers => Services.GetRequiredService<LeftoverStore>();

    protected Task ReadyAsync()
    {
        Services.GetRequiredService<Habits>().Enter();
        return Services.GetRequiredService<StoreStart>().ReadyAsync(CancellationToken.None);
    }

    protected void GoTo(string address) => Services.GetRequiredService<NavigationManager>().NavigateTo(address);

    protected override async ValueTask DisposeAsyncCore()
    {
        await base.DisposeAsyncCore();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }
}
