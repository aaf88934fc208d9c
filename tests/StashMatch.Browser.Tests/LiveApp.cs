using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Xunit;

namespace StashMatch.Browser.Tests;

/// <summary>The real app on a real port with a database of its own, and a real browser.</summary>
public sealed class LiveApp : WebApplicationFactory<Program>, IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
        "--disable-sync",
    ];

    private readonly string _folder = Directory.CreateTempSubdirectory("stashmatch-browser-").FullName;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Where the app listens.</summary>
    public string Address { get; private set; } = "";

    /// <summary>Why no browser test can run here; null where one can. On the build machine a missing browser is a failure, not a skip.</summary>
    public static string? NoBrowser => Array.Exists(Places, File.Exists) || Environment.GetEnvironmentVariable("CI") == "true" ? null : "no chromium on this machine";

    public async ValueTask InitializeAsync()
    {
        UseKestrel(0);
        StartServer();
        Address = Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First().Replace("[::]", "127.0.0.1", StringComparison.Ordinal);
        if (NoBrowser is null)
        {
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new()
            {
                ExecutablePath = Array.Find(Places, File.Exists) ?? throw new InvalidOperationException("The browser is missing: install chromium."),
                Args = Flags,
            });
        }
    }

    /// <summary>A page of a given width, light or dark.</summary>
    public async Task<IPage> PageAsync(int width, bool dark = false, bool scripts = true, int height = 900)
    {
        var context = await _browser!.NewContextAsync(new()
        {
            BaseURL = Address,
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            JavaScriptEnabled = scripts,
        });
        return await context.NewPageAsync();
    }

    public override async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        await base.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("Data:Folder", _folder);
        builder.UseSetting("Data:Demo", "false");
        builder.UseSetting("ReloadStaticAssetsAtRuntime", "false");
    }
}
