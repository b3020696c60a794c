using System.Diagnostics;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A real file system of a few megabytes in memory, which can be filled and made read-only.</summary>
internal sealed class SmallDisk : IDisposable
{
    private SmallDisk(string folder) => Folder = folder;

    public string Folder { get; }

    /// <summary>Mounts one, or skips the test where that is not allowed.</summary>
    public static SmallDisk Mount(int megabytes)
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("small file systems in memory are mounted on Linux only");
        var folder = Directory.CreateTempSubdirectory("gaitseat-disk-").FullName;
        if (Environment.UserName == "root" && Run("mount", "-t", "tmpfs", "-o", $"size={megabytes}m", "tmpfs", folder)) return new(folder);
        Directory.Delete(folder);
        Assert.Skip("mounting a tmpfs is not allowed here (it needs root and the right to mount), so no real disk is filled");
        return null!;
    }

    /// <summary>Writes until not a byte more goes in.</summary>
    /// <returns>The file that fills it.</returns>
    public string Fill()
    {
        var path = Path.Combine(Folder, "ballast");
        using var ballast = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            var page = new byte[4096];
            while (true) ballast.Write(page);
        }
        catch (IOException)
        {
            return path;
        }
    }

    public void SetReadOnly(bool readOnly) => Assert.True(Run("mount", "-o", $"remount,{(readOnly ? "ro" : "rw")}", Folder));

    public void Dispose()
    {
        Run("umount", "-l", Folder);
        Directory.Delete(Folder);
    }

    private static bool Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0;
    }
}
