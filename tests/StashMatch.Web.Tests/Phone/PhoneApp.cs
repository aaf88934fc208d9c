using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace StashMatch.Web.Tests.Phone;

/// <summary>The real app with the door to the home network open, on two real ports.</summary>
public sealed class PhoneApp : HomeApp, IAsyncLifetime
{
    private readonly int _desk = Free(), _phone = Free();

    /// <summary>This machine's own address.</summary>
    public Uri Desk => new($"http://127.0.0.1:{_desk}");

    /// <summary>What a phone opens.</summary>
    public Uri Network => new($"http://127.0.0.1:{_phone}");

    public ValueTask InitializeAsync()
    {
        UseKestrel();
        StartServer();
        return ValueTask.CompletedTask;
    }

    public static HttpClient Browser(Uri at) =>
        new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = at, DefaultRequestHeaders = { { "Accept", "text/html" } } };

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.UseSetting("urls", Desk.ToString());
        builder.UseSetting("Home:Phone", "true");
        builder.UseSetting("Home:PhonePort", $"{_phone}");
    }

    private static int Free()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
