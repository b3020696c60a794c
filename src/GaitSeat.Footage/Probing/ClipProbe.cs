using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>Looks at a file before any of it is decoded, and says why it cannot be measured if it cannot.</summary>
public sealed class ClipProbe
{
    private readonly ProbeSettings _settings;
    private readonly ProbeCommand _command;
    private readonly PacketScan _scan;
    private readonly ProbeJudge _judge;

    public ClipProbe(FfmpegTools tools, ProbeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(tools);
        ArgumentNullException.ThrowIfNull(settings);
        _settings = settings;
        _command = new ProbeCommand(tools, TimeSpan.FromSeconds(settings.TimeoutSeconds));
        _scan = new PacketScan(tools);
        _judge = new ProbeJudge(_command, _scan, settings);
    }

    /// <summary>What the clip is. The first frames are decoded to make sure that they can be.</summary>
    /// <param name="path">A local file.</param>
    /// <exception cref="ClipSetAsideException">It cannot be measured; the reason is one of <see cref="ClipReasons"/>.</exception>
    public async Task<ClipInfo> ProbeAsync(string path, CancellationToken ct)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        path = Path.GetFullPath(path);
        FileStart.Check(path);
        var (answer, stream) = await _command.LookAsync(path, _settings.MinFrames, ct);
        await _judge.CheckAsync(path, answer, stream, ct);
        var (duration, rate) = await LengthAsync(path, stream!, ct);
        var (width, height) = stream!.DisplaySize();
        return new(path, duration, width, height, rate, stream.Codec, stream.PixelFormat, stream.RotationDegrees, stream.Interlaced, stream.Stream);
    }

    /// <summary>Streamed recordings carry no length; then the packets are counted, which reads the file once without decoding.</summary>
    private async Task<(double Seconds, double RateHz)> LengthAsync(string path, StreamLook stream, CancellationToken ct)
    {
        if (stream is { DurationSeconds: { } seconds, RateHz: { } rate }) return (seconds, rate);
        var (scanned, packets) = await _scan.RunAsync(path, stream.Stream, ct);
        var length = stream.DurationSeconds ?? scanned;
        return (length, stream.RateHz ?? (length > 0 ? packets / length : 0));
    }
}
