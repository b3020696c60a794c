using System.ComponentModel;
using System.Diagnostics;

namespace GaitSeat.Footage;

/// <summary>
/// One running ffmpeg or ffprobe. Its messages are drained all the time, so that it can never block on them, and only the first and last
/// few are kept. Disposing ends it and waits for its end.
/// <para>FFMpegCore builds the command line but does not run it: its runner closes the pipe as soon as ffmpeg ends, so a reader slower than
/// the decoder would lose the last frames, and it keeps every line of output in memory.</para>
/// </summary>
internal sealed class ToolProcess : IAsyncDisposable
{
    /// <summary>What a tool returns that was ended by SIGHUP, SIGINT, SIGKILL (how the system takes memory back) or SIGTERM; 255 is ffmpeg's own word for the ones it hears.</summary>
    private static readonly int[] _endedFromOutside = [128 + 1, 128 + 2, 128 + 9, 128 + 15, 255];

    private readonly string _program;
    private readonly Process _process;
    private readonly Task _messagesRead;
    private readonly CancellationTokenRegistration _killOnCancel;

    private volatile bool _killedHere;

    private ToolProcess(string program, Process process, CancellationToken cancellationToken)
    {
        (_program, _process) = (program, process);
        _messagesRead = DrainMessagesAsync();
        _killOnCancel = cancellationToken.Register(Kill);
    }

    public ToolMessages Messages { get; } = new();

    public Stream Output => _process.StandardOutput.BaseStream;

    public Stream Input => _process.StandardInput.BaseStream;

    public int Id => _process.Id;

    /// <summary>Processor time it had used when it was killed from here; zero if it was not.</summary>
    public TimeSpan UsedBeforeKill { get; private set; }

    /// <summary>Starts it; when <paramref name="cancellationToken"/> fires it is killed.</summary>
    public static ToolProcess Start(string program, string arguments, bool withInput, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var start = new ProcessStartInfo(program, arguments)
        {
            UseShellExecute = false,
            CreateNoWindow = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = withInput,
        };
        // FFREPORT in the surroundings would make ffmpeg write log files beside the clips.
        start.Environment.Remove("FFREPORT");
        var process = Process.Start(start) ?? throw new InvalidOperationException($"'{program}' did not start.");
        return new(program, process, cancellationToken);
    }

    /// <summary>Waits for the end and for the last message; the exit code.</summary>
    /// <exception cref="ToolKilledException">Somebody else ended it: what it gave stops at a moment of chance.</exception>
    public async Task<int> WaitAsync()
    {
        await EndAsync();
        return !_killedHere && _endedFromOutside.Contains(_process.ExitCode)
            ? throw new ToolKilledException($"{Path.GetFileNameWithoutExtension(_program)} was ended from outside (exit code {_process.ExitCode}), as the system does when memory runs out")
            : _process.ExitCode;
    }

    public void Kill()
    {
        try
        {
            // Killing what has ended by itself must not hide how it ended.
            if (_process.HasExited) return;
            UsedBeforeKill = _process.TotalProcessorTime;
            _killedHere = true;
            _process.Kill(entireProcessTree: true);
        }
        catch (Exception e) when (e is InvalidOperationException or Win32Exception)
        {
            // It has ended by itself in the meantime.
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _killOnCancel.DisposeAsync();
        Kill();
        await EndAsync();
        _process.Dispose();
    }

    private async Task EndAsync()
    {
        await _process.WaitForExitAsync(CancellationToken.None);
        await _messagesRead;
    }

    private async Task DrainMessagesAsync()
    {
        while (await _process.StandardError.ReadLineAsync() is { } line) Messages.Add(line);
    }
}
