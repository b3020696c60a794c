using System.Diagnostics;

namespace GaitSeat.Pipeline.Tests;

/// <summary>Running processes by their command line, from /proc.</summary>
internal static class Processes
{
    /// <summary>Process ids whose words are as asked.</summary>
    public static List<int> Find(Func<string[], bool> isIt)
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("the processes to kill are looked up in /proc");
        var found = new List<int>();
        foreach (var folder in Directory.EnumerateDirectories("/proc"))
        {
            if (!int.TryParse(Path.GetFileName(folder), out var id)) continue;
            try
            {
                var words = File.ReadAllText(Path.Combine(folder, "cmdline")).TrimEnd('\0').Split('\0');
                if (words[0].Length > 0 && isIt(words)) found.Add(id);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // It ended while it was looked at.
            }
        }

        return found;
    }

    /// <summary>SIGKILL.</summary>
    /// <returns>Whether it was still there.</returns>
    public static bool Kill(int id)
    {
        try
        {
            using var process = Process.GetProcessById(id);
            process.Kill();
            return true;
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            return false;
        }
    }
}
