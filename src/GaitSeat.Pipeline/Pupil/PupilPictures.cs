using GaitSeat.Footage;
using GaitSeat.Footage.Pictures;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;

namespace GaitSeat.Pipeline.Pupil;

/// <summary>A short clip and two stills with everybody's head blurred.</summary>
/// <param name="Mp4">The short clip.</param>
/// <param name="Sit">JPEG of a sit; null where the clip shows no stride.</param>
/// <param name="Top">JPEG of the top that follows.</param>
public sealed record PupilPictures(byte[] Mp4, byte[]? Sit, byte[]? Top)
{
    /// <summary>Length of the clip, s: some five strides, a size that goes by mail.</summary>
    private const double ClipSeconds = 4;

    /// <summary>
    /// Measures the clip anew and paints it: where other people stand is in no table, and whether the dataset's own pictures were blurred is not written down.
    /// The painted files hold the frames alone: no sound, no place, no device, no name.
    /// </summary>
    /// <param name="around">A second that should be in it, s.</param>
    /// <exception cref="ClipSetAsideException">The clip cannot be measured any more.</exception>
    public static async Task<PupilPictures> MakeAsync(Workshop workshop, string clipPath, double around, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        var measured = await new ClipMeasurer(workshop).MeasureAsync(clipPath, BodyLengths.Unknown, null, ct);
        var (start, end) = Window(measured.Motion, measured.Info.DurationSeconds, around);
        var settings = workshop.Settings;
        var drawing = settings.Output.Drawing with { BlurHeads = true, ShowStrip = false };
        var motion = measured.Motion with { Strides = [.. measured.Motion.Strides.Where(s => s.StartSeconds >= start && s.EndSeconds <= end)] };
        var folder = Directory.CreateTempSubdirectory("gaitseat-report-").FullName;
        try
        {
            var maker = new OverlayMaker(new FrameReader(workshop.Ffmpeg), workshop.Ffmpeg);
            var made = await maker.MakeAsync(measured.Info, measured.Read with { StartSeconds = start, EndSeconds = end }, measured.Sightings, motion, folder, "report", drawing, measured.People.OthersAt, ct);
            return new(await File.ReadAllBytesAsync(made.VideoPath, ct), await BytesAsync(made.SitStillPath, ct), await BytesAsync(made.TopStillPath, ct));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Begins with the stride that holds the second, or with the first one after it; within the clip.</summary>
    internal static (double Start, double End) Window(ClipMotion motion, double durationSeconds, double around)
    {
        var from = motion.Strides.Where(s => s.EndSeconds > around).Select(s => s.StartSeconds).DefaultIfEmpty(around).First();
        var last = double.IsFinite(durationSeconds) && durationSeconds > 0 ? durationSeconds : from + ClipSeconds;
        var start = Math.Max(0, Math.Min(from, last - ClipSeconds));
        return (start, Math.Max(start + 1, Math.Min(last, start + ClipSeconds)));
    }

    private static async Task<byte[]?> BytesAsync(string? path, CancellationToken ct) => path is null ? null : await File.ReadAllBytesAsync(path, ct);
}
