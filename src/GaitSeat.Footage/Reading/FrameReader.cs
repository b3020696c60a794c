using System.Runtime.CompilerServices;
using System.Threading.Channels;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>
/// Reads a clip frame by frame: upright, square pixels, deinterlaced, at analysis size, each with its exact presentation time.
/// At most <see cref="ReadSettings.FramesAhead"/> + 2 frames exist besides those the caller holds, however long the clip.
/// </summary>
/// <remarks>
/// Times are seconds from the presentation time of the video stream's first decodable frame, in the stream's own clock: sound, edit lists and the
/// start offset of the container play no part. They are the same whichever part of the clip is read. High dynamic range
/// pictures are not tone-mapped; the report says so.
/// </remarks>
/// <param name="tools">FFmpeg.</param>
/// <param name="colours">How the frames keep their colours.</param>
/// <param name="choice">Which frames are decoded; the thinning of <see cref="ReadSettings.MaxRateHz"/> leaves out of these.</param>
public sealed class FrameReader(FfmpegTools tools, FrameColours colours = FrameColours.Rgb, FrameChoice choice = FrameChoice.All)
{
    /// <summary>Size of the analysed picture: the display size, made smaller until the longest side fits, never larger; even, and at least 2.</summary>
    public static (int WidthPx, int HeightPx) AnalysisSize(ClipInfo clip, ReadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(clip);
        return AnalysisSize(clip.WidthPx, clip.HeightPx, settings);
    }

    /// <summary>The same from the display size, px.</summary>
    public static (int WidthPx, int HeightPx) AnalysisSize(int widthPx, int heightPx, ReadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var factor = Math.Min(1, (double)settings.MaxSidePx / Math.Max(widthPx, heightPx));
        return (Even(widthPx * factor), Even(heightPx * factor));

        // To the even number below, so that rounding never enlarges; the half pixel forgives a factor that is not exact.
        static int Even(double side) => Math.Max(2, (int)((side + 1e-6) / 2) * 2);
    }

    /// <summary>Time between two frames given out when the clip's rate is constant and all are decoded, s; infinite where the clip states no rate.</summary>
    public static double StepSeconds(ClipInfo clip, ReadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(clip);
        ArgumentNullException.ThrowIfNull(settings);
        return clip.AverageFrameRateHz > 0 ? Thinning.Every(clip, settings) / clip.AverageFrameRateHz : double.PositiveInfinity;
    }

    /// <inheritdoc cref="ReadAsync(ClipInfo, ReadSettings, ReadReport, CancellationToken)"/>
    public IAsyncEnumerable<Frame> ReadAsync(ClipInfo clip, ReadSettings settings, CancellationToken ct) =>
        ReadAsync(clip, settings, new ReadReport(), ct);

    /// <summary>The frames in order, times strictly rising. The caller disposes each. Breaking off ends FFmpeg.</summary>
    /// <param name="report">Filled while reading; says what of the clip could not be read.</param>
    /// <exception cref="ClipSetAsideException">All frames were to be decoded and not a single one could be. A clip damaged further on gives its good frames and a note in the report.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; FFmpeg has been ended.</exception>
    public IAsyncEnumerable<Frame> ReadAsync(ClipInfo clip, ReadSettings settings, ReadReport report, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(clip);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(report);
        if (settings.EndSeconds <= (settings.StartSeconds ?? 0))
            throw new ArgumentException($"The end ({settings.EndSeconds} s) must be after the start ({settings.StartSeconds ?? 0} s).", nameof(settings));
        return Impl(clip, settings, report, ct);
    }

    private async IAsyncEnumerable<Frame> Impl(ClipInfo clip, ReadSettings settings, ReadReport report, [EnumeratorCancellation] CancellationToken ct)
    {
        FileStart.Check(clip.Path);
        var (width, height) = AnalysisSize(clip, settings);
        var command = DecodeCommand.Build(clip, settings, colours, choice, width, height);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct);
        await using var process = ToolProcess.Start(tools.FfmpegPath, command, withInput: false, stop.Token);
        var ahead = Channel.CreateBounded<Frame>(new BoundedChannelOptions(settings.FramesAhead) { SingleReader = true, SingleWriter = true });
        var decoding = new FramePump(width, height, colours == FrameColours.Planes ? clip.Stream.Colours : null).RunAsync(process.Output, ahead.Writer, stop.Token);
        try
        {
            await foreach (var frame in ahead.Reader.ReadAllAsync(ct))
            {
                report.FramesRead++;
                report.LastTimeSeconds = frame.TimeSeconds;
                yield return frame;

                // Frames decoded ahead are not handed out any more: a stop is heard at the very next one.
                ct.ThrowIfCancellationRequested();
            }

            var exitCode = await process.WaitAsync();
            ct.ThrowIfCancellationRequested();
            ReadJudge.Conclude(clip, settings, choice, exitCode, process.Messages, report);
        }
        finally
        {
            await stop.CancelAsync();
            process.Kill();
            await decoding.ContinueWith(_ => { }, TaskScheduler.Default);
            while (ahead.Reader.TryRead(out var unread)) unread.Dispose();
        }
    }
}
