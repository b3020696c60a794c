using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>Makes the overlay video and stills of a clip in one pass over its frames.</summary>
public sealed class OverlayMaker(FrameReader reader, FfmpegTools tools)
{
    private readonly FrameReader _reader = reader ?? throw new ArgumentNullException(nameof(reader));
    private readonly FfmpegTools _tools = tools ?? throw new ArgumentNullException(nameof(tools));

    /// <param name="read">How to read the frames; best as they were read for <paramref name="sightings"/>. Frames are matched by time, so a thinner or shorter reading does too.</param>
    /// <param name="othersAt">Boxes of people other than the rider at a time (s), px of the pictures of <paramref name="sightings"/>; their heads are blurred. Null where there is nobody else.</param>
    /// <param name="folder">An existing folder for the files.</param>
    /// <param name="name">Start of the file names: <c>name-overlay.mp4</c>, <c>name-sit.jpg</c>, <c>name-top.jpg</c>. Files of these names are replaced.</param>
    /// <exception cref="ClipSetAsideException">The clip has no readable frame.</exception>
    /// <exception cref="IOException">A file cannot be written.</exception>
    public async Task<OverlayFiles> MakeAsync(
        ClipInfo clip, ReadSettings read, Sightings sightings, ClipMotion motion, string folder, string name, OverlaySettings settings,
        Func<double, IReadOnlyList<BoxPx>>? othersAt, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(clip);
        ArgumentNullException.ThrowIfNull(motion);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentException.ThrowIfNullOrEmpty(name);
        var (width, height) = FrameReader.AnalysisSize(clip, read);
        var scenes = new SceneSource(sightings, motion, othersAt, width, height);
        var stills = new StillPicker(motion, Path.Combine(folder, name));
        var videoPath = Path.Combine(folder, $"{name}-overlay.mp4");
        double? first = null;
        using var painter = new OverlayPainter(settings);
        await using var encoder = new ClipEncoder(_tools, videoPath, width, height, clip.AverageFrameRateHz, settings.Encode);
        await foreach (var frame in _reader.ReadAsync(clip, read, ct).WithCancellation(ct))
        {
            using (frame)
            {
                painter.Paint(frame, scenes.At(frame.TimeSeconds));
                stills.Offer(frame);
                await encoder.WriteAsync(frame.Memory, frame.TimeSeconds - (first ??= frame.TimeSeconds), ct);
            }
        }

        await encoder.FinishAsync(ct);
        return new(videoPath, stills.SitPath, stills.TopPath);
    }
}
