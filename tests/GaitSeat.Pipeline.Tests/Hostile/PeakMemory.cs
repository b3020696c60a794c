using System.Diagnostics;
using System.Globalization;

namespace GaitSeat.Pipeline.Tests.Hostile;

/// <summary>
/// The most memory that a process or one it started was seen to hold: the kernel's own high-water mark of each (VmHWM, proc(5)), looked at many times a second. A child may still grow between the
/// last look and its end. (What getrusage(2) says of children holds this process's own size too, from before each became another program.)
/// </summary>
internal static class PeakMemory
{
    private const long KilobytesPerMegabyte = 1000;
    private static readonly TimeSpan _betweenLooks = TimeSpan.FromMilliseconds(20);

    public static async Task<long> OfMegabytesAsync(Process process)
    {
        long most = 0;
        while (!process.HasExited)
        {
            foreach (var id in Family(process.Id.ToString(CultureInfo.InvariantCulture))) most = Math.Max(most, HighWaterKilobytes(id));
            await Task.Delay(_betweenLooks);
        }

        return most / KilobytesPerMegabyte;
    }

    /// <summary>The process, its children, theirs, and so on.</summary>
    private static IEnumerable<string> Family(string id) =>
        Tasks(id).SelectMany(t => Text($"{t}/children").Split(' ', StringSplitOptions.RemoveEmptyEntries)).SelectMany(Family).Prepend(id);

    private static string[] Tasks(string id)
    {
        try
        {
            return Directory.GetDirectories($"/proc/{id}/task");
        }
        catch (IOException)
        {
            return [];
        }
    }

    private static long HighWaterKilobytes(string id)
    {
        var line = Text($"/proc/{id}/status").Split('\n').FirstOrDefault(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
        return line is null ? 0 : long.Parse(line.Split(' ', '\t').First(w => w.Length > 0 && char.IsAsciiDigit(w[0])), CultureInfo.InvariantCulture);
    }

    /// <summary>Nothing where the process ended meanwhile.</summary>
    private static string Text(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (IOException)
        {
            return "";
        }
    }
}
