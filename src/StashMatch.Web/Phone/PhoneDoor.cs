using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace StashMatch.Web.Phone;

/// <summary>Whether the home network is listened to as well, for the phone beside the scale, and on which port.</summary>
public sealed record PhoneDoor(bool Open, int Port)
{
    /// <summary>The port unless <c>Home:PhonePort</c> names another.</summary>
    public const int UsualPort = 5180;

    public static PhoneDoor From(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        return new(configuration.GetValue<bool>("Home:Phone"), configuration.GetValue("Home:PhonePort", UsualPort));
    }

    /// <summary>The address to listen on besides.</summary>
    public string ListenOn => $"http://*:{Port}";

    /// <summary>What a phone may be told to open: this machine's addresses on the home network.</summary>
    public IReadOnlyList<string> Addresses() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Where(a => a.Address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a.Address))
            .Select(a => $"http://{a.Address}:{Port}").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    /// <summary>Whether a host is this machine called by number or by its own name: a name from elsewhere that points here is not.</summary>
    public static bool IsThisMachine(string host) =>
        IPAddress.TryParse(host.Trim('[', ']'), out _)
        || host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || host.Equals(Environment.MachineName, StringComparison.OrdinalIgnoreCase)
        || host.Equals($"{Environment.MachineName}.local", StringComparison.OrdinalIgnoreCase);
}
