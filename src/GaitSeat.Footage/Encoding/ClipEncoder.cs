namespace GaitSeat.Footage;

/// <summary>
/// Writes frames into an MP4 (H.264, 4:2:0, index in front) that plays in a browser. Nothing appears under the name before <see cref="FinishAsync"/>:
/// it is written beside and renamed when whole. The same frames and settings give the same bytes with the same FFmpeg. No metadata is written.
/// </summary>
public sealed class ClipEncoder : IAsyncDisposable
{
    /// <summary>The clock of MPEG: exact for 24, 25, 30, 50, 60, 120 Hz and for their 1000/1001 kin.</summary>
    public const int TicksPerSecond = 90_000;

    private readonly string _path;
    private readonly string _partPath;
    private readonly int _frameBytes;
    private readonly double _rateHz;
    private readonly ToolProcess _process;
    private readonly NutWriter _writer;
    private long _lastTicks = -1;
    private int _frames;
    private bool _finished;

    /// <param name="path">The MP4 to make; its folder must exist. A file of that name is replaced.</param>
    /// <param name="widthPx">Even, px.</param>
    /// <param name="heightPx">Even, px.</param>
    /// <param name="rateHz">Frame rate for frames written without a time, Hz.</param>
    /// <param name="settings">How to encode; null for the defaults.</param>
    /// <exception cref="ArgumentException">A size is odd or not positive, or the rate is not positive.</exception>
    public ClipEncoder(FfmpegTools tools, string path, int widthPx, int heightPx, double rateHz, EncodeSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(tools);
        ArgumentException.ThrowIfNullOrEmpty(path);
        ThrowIfNotEven(widthPx, nameof(widthPx));
        ThrowIfNotEven(heightPx, nameof(heightPx));
        if (!(rateHz > 0 && rateHz <= TicksPerSecond)) throw new ArgumentOutOfRangeException(nameof(rateHz), rateHz, $"Allowed: above 0, up to {TicksPerSecond} Hz.");
        _path = Path.GetFullPath(path);
        _partPath = Path.Combine(Path.GetDirectoryName(_path)!, $".{Path.GetFileName(_path)}.part");
        _frameBytes = checked(widthPx * heightPx * 3);
        _rateHz = rateHz;
        _process = ToolProcess.Start(tools.FfmpegPath, EncodeCommand.Build(_partPath, settings ?? new()), withInput: true, CancellationToken.None);
        _writer = new NutWriter(_process.Input, widthPx, heightPx, TicksPerSecond);
    }

    /// <summary>Adds a frame one step of the rate after the first, second, ... frame.</summary>
    /// <param name="rgb24">Packed RGB, rows top to bottom, <c>width * height * 3</c> bytes.</param>
    public ValueTask WriteAsync(ReadOnlyMemory<byte> rgb24, CancellationToken ct) => WriteAsync(rgb24, _frames / _rateHz, ct);

    /// <summary>Adds a frame shown from a time on, which is kept to the nearest 1/90000 s.</summary>
    /// <param name="timeSeconds">s from the start of the clip; after the frame before.</param>
    /// <exception cref="ArgumentException">The bytes are too few or too many, or the time does not rise.</exception>
    /// <exception cref="IOException">FFmpeg could not write; the message says why.</exception>
    public async ValueTask WriteAsync(ReadOnlyMemory<byte> rgb24, double timeSeconds, CancellationToken ct)
    {
        if (rgb24.Length != _frameBytes) throw new ArgumentException($"A frame has {_frameBytes} bytes; {rgb24.Length} were given.", nameof(rgb24));
        var ticks = (long)Math.Round(timeSeconds * TicksPerSecond);
        if (!(ticks > _lastTicks)) throw new ArgumentException($"Times must rise: {timeSeconds} s comes after {(double)_lastTicks / TicksPerSecond} s.", nameof(timeSeconds));
        try
        {
            await _writer.WriteFrameAsync(ticks, rgb24, ct);
        }
        catch (IOException e)
        {
            await _process.WaitAsync();
            throw new IOException($"'{_path}' could not be encoded: {_process.Messages.LastLine()}.", e);
        }

        _lastTicks = ticks;
        _frames++;
    }

    /// <summary>Ends the file and gives it its name.</summary>
    /// <exception cref="IOException">FFmpeg could not write; the message says why, and no file appears.</exception>
    public async Task FinishAsync(CancellationToken ct = default)
    {
        if (_frames == 0) throw new InvalidOperationException($"'{_path}' has no frames; write at least one.");
        await _process.Input.DisposeAsync();
        await using var kill = ct.Register(_process.Kill);
        var exitCode = await _process.WaitAsync();
        ct.ThrowIfCancellationRequested();
        if (exitCode != 0) throw new IOException($"'{_path}' could not be encoded: {_process.Messages.LastLine()}.");
        using (var file = File.OpenHandle(_partPath, FileMode.Open, FileAccess.ReadWrite)) RandomAccess.FlushToDisk(file);
        File.Move(_partPath, _path, overwrite: true);
        _finished = true;
    }

    /// <summary>Ends FFmpeg; an unfinished file is removed.</summary>
    public async ValueTask DisposeAsync()
    {
        await _process.DisposeAsync();
        if (!_finished && File.Exists(_partPath)) File.Delete(_partPath);
    }

    private static void ThrowIfNotEven(int side, string name)
    {
        if (side < 2 || side % 2 != 0) throw new ArgumentOutOfRangeException(name, side, "Allowed: even numbers from 2, since H.264 4:2:0 halves the colour.");
    }
}
