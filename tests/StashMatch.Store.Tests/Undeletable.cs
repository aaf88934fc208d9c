using System.Diagnostics;
using Xunit;

namespace StashMatch.Store.Tests;

/// <summary>A file nobody may delete, not even the administrator.</summary>
internal sealed class Undeletable : IDisposable
{
    private readonly string _file;

    public Undeletable(string file)
    {
        _file = file;
        Assert.SkipUnless(OperatingSystem.IsLinux() && Run("+i"), "no file can be held fast here: that needs the administrator");
    }

    public void Dispose() => Run("-i");

    private bool Run(string how)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("chattr", [how, _file]) { RedirectStandardError = true, UseShellExecute = false })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
