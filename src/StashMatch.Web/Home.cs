using System.Net;

namespace StashMatch.Web;

/// <summary>At home there is no sign-in, so nobody but this machine may come in.</summary>
public static class Home
{
    /// <summary>Where the program listens unless it is told otherwise.</summary>
    public const string Address = "http://127.0.0.1:5170";

    /// <summary>Why the program does not start on the addresses it was given; null when it may.</summary>
    public static string? Refusal(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        if (configuration.GetValue<bool>("Home:Contained"))
        {
            return null;
        }

        var addresses = (configuration["urls"] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Concat(configuration.GetSection("Kestrel:Endpoints").GetChildren().Select(e => e["Url"]).OfType<string>())
            .ToList();
        var open = addresses.Find(a => !IsLoopback(a));
        if (open is null && (configuration["HTTP_PORTS"] ?? configuration["HTTPS_PORTS"]) is { Length: > 0 } ports && addresses.Count == 0)
        {
            open = $"*:{ports}";
        }

        return open is null
            ? null
            : $"StashMatch has no sign-in at home and listens on this machine only, so it does not start on {open}. "
                + "Use an address such as http://127.0.0.1:5170, or set Home:Contained=true where a container publishes the port on 127.0.0.1 alone.";
    }

    /// <summary>What is said where another program listens on the address already.</summary>
    public static string PortTaken(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        return $"Another program, perhaps StashMatch itself, already uses {configuration["urls"] ?? Address}: "
            + "close it, or start StashMatch elsewhere with --urls http://127.0.0.1:5171.";
    }

    private static bool IsLoopback(string address) =>
        Uri.TryCreate(address.Replace("//*", "//any", StringComparison.Ordinal).Replace("//+", "//any", StringComparison.Ordinal), UriKind.Absolute, out var uri)
        && (uri.Host is "localhost" || (IPAddress.TryParse(uri.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip)));
}
