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
    private readonly Process _process;
    private readonly Task _messagesRead;
    private readonly CancellationTokenRegistration _killOnCancel;

    private ToolProcess(Process process, CancellationToken cancellationToken)
    {
        _process = process;
        _messagesRead = DrainMessagesAsync();
        _killOnCancel = cancellationToken.Register(Kill);
    }

    public ToolMessages Messages { get; } = new();

    public Stream Output => _process.StandardOutput.BaseStream;

    public Stream Input => _process.StandardInput.BaseStream;

    public int Id => _process.Id;

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
        return new(process, cancellationToken);
    }

    /// <summary>Waits for the end and for the last message; the exit code.</summary>
    public async Task<int> WaitAsync()
    {
        await _process.WaitForExitAsync(CancellationToken.None);
        await _messagesRead;
        return _process.ExitCode;
    }

    public void Kill()
    {
        try
        {
            _process.Kill(entireProcessTree: true);
        }
        catch (InvalidOperationException)
        {
            // It has ended by itself in the meantime.
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _killOnCancel.DisposeAsync();
        if (!_process.HasExited) Kill();
        await WaitAsync();
        _process.Dispose();
    }

    private async Task DrainMessagesAsync()
    {
        while (await _process.StandardError.ReadLineAsync() is { } line) Messages.Add(line);
    }
}
