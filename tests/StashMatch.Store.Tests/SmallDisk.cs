using System.Diagnostics;
using Xunit;

namespace StashMatch.Store.Tests;

/// <summary>A disk of a few megabytes of its own; only the administrator of a machine can have one.</summary>
internal sealed class SmallDisk : IDisposable
{
    public SmallDisk(int kilobytes)
    {
        Folder = Directory.CreateTempSubdirectory("stashmatch-disk-").FullName;
        Assert.SkipUnless(OperatingSystem.IsLinux() && Run("mount", "-t", "tmpfs", "-o", $"size={kilobytes}k", "tmpfs", Folder), "no small disk can be had here: mounting needs the administrator");
    }

    public string Folder { get; }

    private string Filler => Path.Combine(Folder, "filler");

    /// <summary>Takes all the room that is left.</summary>
    public void Fill()
    {
        using var file = new FileStream(Filler, FileMode.Append, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            while (true)
            {
                file.Write(new byte[512]);
            }
        }
        catch (IOException)
        {
            // It is full.
        }
    }

    public void MakeRoom() => File.Delete(Filler);

    public void MakeReadOnly() => Assert.True(Run("mount", "-o", "remount,ro", Folder));

    public void Dispose()
    {
        Run("umount", "-l", Folder);
        Directory.Delete(Folder);
    }

    private static bool Run(string program, params string[] words)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardError = true, UseShellExecute = false })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
