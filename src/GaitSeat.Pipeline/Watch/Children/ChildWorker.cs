using System.Diagnostics;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch.Policies;

namespace GaitSeat.Pipeline.Watch.Children;

/// <summary>How the process of a clip is started.</summary>
/// <param name="Arguments">What comes before the clip, which stands there for people who list processes.</param>
public sealed record ChildCommand(string Program, IReadOnlyList<string> Arguments);

/// <summary>Does each clip in a process of its own, at low priority: a decoder or model that crashes takes that process down and nothing else.</summary>
public sealed class ChildWorker(ChildCommand command, int niceness, TimeSpan stop) : IClipWorker
{
    /// <summary>What the program returns when it was stopped by a signal that also went to it: no crash of the clip.</summary>
    public const int StoppedExitCode = 130;

    /// <summary>What .NET gives for a process that SIGKILL or SIGTERM ended.</summary>
    private static readonly int[] _killedExitCodes = [128 + 9, 128 + 15];

    public async Task<ClipReport> DoAsync(KeyedClip clip, Session? session, IProgress<int> progress, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(clip);
        ct.ThrowIfCancellationRequested();
        using var process = Start(clip.Path);
        Ask(process, new(clip, session));
        var lastWords = process.StandardError.ReadToEndAsync(CancellationToken.None);
        var said = ListenAsync(process, progress);
        await using (ct.Register(() => AskToStop(process)))
        {
            await EndAsync(process, ct);
        }

        var last = await said;
        ct.ThrowIfCancellationRequested();
        return last switch
        {
            { Report: { } report } => report,
            { Fault: { Kind: ChildFaultKind.Elsewhere } fault } => throw new ClipElsewhereException(fault.Message),
            { Fault: { Kind: ChildFaultKind.ToolKilled } fault } => throw new ClipKilledException(fault.Message),
            { Fault: { } fault } => throw new IOException(fault.Message),
            _ when _killedExitCodes.Contains(process.ExitCode) => throw new ClipKilledException($"its process was ended from outside (exit code {process.ExitCode}), as the system does when memory runs out"),
            _ when process.ExitCode == StoppedExitCode => throw new CanPassException("its process was stopped from outside"),
            _ => throw new ClipCrashException(LastWords(process.ExitCode, await lastWords)),
        };
    }

    private Process Start(string path)
    {
        var throughNice = niceness > 0 && !OperatingSystem.IsWindows() && File.Exists("/usr/bin/nice");
        string[] nice = throughNice ? ["-n", niceness.ToString(null, null), command.Program] : [];
        var start = new ProcessStartInfo(throughNice ? "/usr/bin/nice" : command.Program, [.. nice, .. command.Arguments, path])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        var process = Process.Start(start) ?? throw new InvalidOperationException($"'{command.Program}' did not start");
        if (niceness > 0 && OperatingSystem.IsWindows()) process.PriorityClass = ProcessPriorityClass.BelowNormal;
        return process;
    }

    private static void Ask(Process process, ChildRequest request)
    {
        try
        {
            process.StandardInput.WriteLine(JsonLines.Line(request));
            process.StandardInput.Flush();
        }
        catch (IOException)
        {
            // It is gone already; its exit code says why.
        }
    }

    private static async Task<ChildLine?> ListenAsync(Process process, IProgress<int> progress)
    {
        ChildLine? last = null;
        while (await process.StandardOutput.ReadLineAsync(CancellationToken.None) is { } text)
        {
            if (JsonLines.Parse<ChildLine>(text) is not { } line) continue;
            if (line.Frames is { } frames) progress.Report(frames);
            else last = line;
        }

        return last;
    }

    private static void AskToStop(Process process)
    {
        try
        {
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It is gone already.
        }
    }

    private async Task EndAsync(Process process, CancellationToken ct)
    {
        try
        {
            await process.WaitForExitAsync(ct);
        }
        catch (OperationCanceledException)
        {
            using var patience = new CancellationTokenSource(stop);
            try
            {
                await process.WaitForExitAsync(patience.Token);
            }
            catch (OperationCanceledException)
            {
                process.Kill(entireProcessTree: true);
                await process.WaitForExitAsync(CancellationToken.None);
            }
        }
    }

    private static string LastWords(int exitCode, string error)
    {
        var words = error.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault();
        return $"its process ended with code {exitCode}{(words is null ? "" : $": {words[..Math.Min(words.Length, 300)]}")}";
    }
}
