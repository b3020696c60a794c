using System.Globalization;

namespace GaitSeat.Benchmarks;

/// <summary>What a process and those it started hold and spend, as /proc tells it (proc(5)). Looked at many times: what ended between two looks is missed, its processor time excepted.</summary>
internal sealed class ProcessFamily(int id)
{
    /// <summary>The unit of the times in /proc/PID/stat on every Linux of today (sysconf(_SC_CLK_TCK)).</summary>
    private const double TicksPerSecond = 100;

    private readonly string _id = id.ToString(CultureInfo.InvariantCulture);

    /// <summary>Most memory that the process itself held.</summary>
    public long OwnPeakKilobytes { get; private set; }

    /// <summary>Most that one of those it started held.</summary>
    public long ChildPeakKilobytes { get; private set; }

    /// <summary>Of the process and of all children that ended, up to the last look.</summary>
    public double ProcessorSeconds { get; private set; }

    public void Look()
    {
        OwnPeakKilobytes = Math.Max(OwnPeakKilobytes, HighWaterKilobytes(_id));
        foreach (var child in Children()) ChildPeakKilobytes = Math.Max(ChildPeakKilobytes, HighWaterKilobytes(child));
        if (Spent() is { } seconds) ProcessorSeconds = seconds;
    }

    private IEnumerable<string> Children() =>
        (Directory.Exists($"/proc/{_id}/task") ? Names($"/proc/{_id}/task") : []).SelectMany(t => Text($"/proc/{_id}/task/{t}/children").Split(' ', StringSplitOptions.RemoveEmptyEntries));

    /// <summary>User and system time of the process and of its ended children.</summary>
    private double? Spent()
    {
        const int AfterName = 11, Times = 4;
        var stat = Text($"/proc/{_id}/stat");
        // The name, in brackets, may hold blanks.
        var end = stat.LastIndexOf(')');
        return end < 0 ? null : stat[(end + 2)..].Split(' ').Skip(AfterName).Take(Times).Sum(t => long.Parse(t, CultureInfo.InvariantCulture)) / TicksPerSecond;
    }

    private static long HighWaterKilobytes(string process)
    {
        var line = Text($"/proc/{process}/status").Split('\n').FirstOrDefault(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
        return line is null ? 0 : long.Parse(line.Split(' ', '\t').First(w => w.Length > 0 && char.IsAsciiDigit(w[0])), CultureInfo.InvariantCulture);
    }

    private static string[] Names(string folder)
    {
        try
        {
            return [.. Directory.GetDirectories(folder).Select(d => Path.GetFileName(d))];
        }
        catch (IOException)
        {
            return [];
        }
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
