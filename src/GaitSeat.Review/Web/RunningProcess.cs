using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace GaitSeat.Review.Web;

/// <summary>Whether a worker's process is there still.</summary>
internal static class RunningProcess
{
    /// <param name="worker">Machine and process number, as <c>machine-123</c>.</param>
    /// <param name="lastWord">A process begun later is another one under the same number.</param>
    /// <returns><c>running</c>, <c>gone</c>, or <c>elsewhere</c> for another machine, of which nothing is known here.</returns>
    internal static string Of(string worker, DateTimeOffset lastWord)
    {
        var dash = worker.LastIndexOf('-');
        if (dash < 0 || worker[..dash] != Environment.MachineName || !int.TryParse(worker[(dash + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var id)) return "elsewhere";
        try
        {
            using var process = Process.GetProcessById(id);
            return process.StartTime.ToUniversalTime() <= lastWord.UtcDateTime ? "running" : "gone";
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException or Win32Exception)
        {
            return "gone";
        }
    }
}
