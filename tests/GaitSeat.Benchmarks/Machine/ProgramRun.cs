using System.Diagnostics;
using System.Globalization;

namespace GaitSeat.Benchmarks;

/// <summary>One run of the real program in a process of its own, watched from outside through /proc (Linux only).</summary>
/// <param name="Seconds">By the clock, start of the program included.</param>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="ProcessorSeconds">What the program and everything it started spent on all cores.</param>
/// <param name="PeakMegabytes">The kernel's high-water mark of the program's memory (VmHWM), millions of bytes.</param>
/// <param name="ToolPeakMegabytes">The same of the largest process it started (FFmpeg, or a clip's process of the worker).</param>
/// <param name="Out">Standard output.</param>
internal sealed record ProgramRun(double Seconds, int ExitCode, double ProcessorSeconds, long PeakMegabytes, long ToolPeakMegabytes, string Out)
{
    private const double KilobytesPerMegabyte = 1e6 / 1024;
    private static readonly TimeSpan _betweenLooks = TimeSpan.FromMilliseconds(100);

    /// <summary>The program's file, for <c>dotnet</c>.</summary>
    public static string Program => typeof(Cli.CommandLine).Assembly.Location;

    private static string Dotnet => Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";

    /// <param name="words">The command and its arguments.</param>
    public static async Task<ProgramRun> OfAsync(CancellationToken ct, params string[] words)
    {
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(new ProcessStartInfo(Dotnet, [Program, .. words]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var text = process.StandardOutput.ReadToEndAsync(ct);
        var said = process.StandardError.ReadToEndAsync(ct);
        var family = new ProcessFamily(process.Id);
        while (!process.HasExited)
        {
            family.Look();
            await Task.Delay(_betweenLooks, ct);
        }

        await process.WaitForExitAsync(ct);
        var seconds = clock.Elapsed.TotalSeconds;
        return new(seconds, process.ExitCode, family.ProcessorSeconds, Megabytes(family.OwnPeakKilobytes), Megabytes(family.ChildPeakKilobytes), await text + await said);
    }

    /// <summary>A worker that goes on until it is ended, held to some cores.</summary>
    /// <param name="core">0-based.</param>
    public static Process StartOnCore(int core, params string[] words) =>
        Process.Start(new ProcessStartInfo("taskset", ["-c", core.ToString(CultureInfo.InvariantCulture), Dotnet, Program, .. words]) { RedirectStandardError = true })!;

    private static long Megabytes(long kilobytes) => (long)Math.Round(kilobytes / KilobytesPerMegabyte);
}
