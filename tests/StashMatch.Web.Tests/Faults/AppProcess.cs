using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace StashMatch.Web.Tests.Faults;

/// <summary>The real program in a process of its own, to be killed.</summary>
internal sealed class AppProcess : IDisposable
{
    private readonly Process _process;

    private AppProcess(Process process, Uri address) => (_process, Client) = (process, new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromMinutes(3) });

    public HttpClient Client { get; }

    public bool HasEnded => _process.HasExited;

    /// <summary>Starts it on a folder; <paramref name="limit"/> is a shell's words before it, such as a limit on how large a file may grow.</summary>
    public static AppProcess Start(string folder, string? limit = null)
    {
        var port = FreePort();
        var start = new ProcessStartInfo("/bin/sh", ["-c", $"{limit ?? ":"}; exec dotnet StashMatch.Web.dll"])
        {
            WorkingDirectory = AppContext.BaseDirectory,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in new[]
        {
            ("ASPNETCORE_URLS", $"http://127.0.0.1:{port}"), ("Data__Folder", folder), ("Data__Demo", "false"), ("Data__Backups", "false"), ("DOTNET_TieredPGO", "0"),
            ("DOTNET_EnableWriteXorExecute", "0"), ("Logging__LogLevel__Default", "None"), ("Logging__LogLevel__Microsoft.Hosting.Lifetime", "None"), ("ASPNETCORE_ENVIRONMENT", "Production"),
        })
        {
            start.Environment[name] = value;
        }

        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return new AppProcess(process, new Uri($"http://127.0.0.1:{port}/"));
    }

    /// <summary>Waits until it answers; false where it ended instead.</summary>
    public async Task<bool> ReadyAsync(CancellationToken cancel)
    {
        for (var attempt = 0; attempt < 3_000 && !_process.HasExited; attempt++)
        {
            try
            {
                using var response = await Client.GetAsync(new Uri("health/ready", UriKind.Relative), cancel);
                if (response.IsSuccessStatusCode)
                {
                    return true;
                }
            }
            catch (Exception e) when (e is HttpRequestException or OperationCanceledException && !cancel.IsCancellationRequested)
            {
                // Not yet.
            }

            await Task.Delay(20, cancel);
        }

        return false;
    }

    /// <summary>kill -9.</summary>
    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            Kill();
        }

        _process.Dispose();
        Client.Dispose();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
