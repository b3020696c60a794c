using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Studio.Accuracy.Marks;

namespace GaitSeat.Cli.Marks;

/// <summary>Measures a clip as ever and takes out the marked frames.</summary>
internal sealed class ClipSight(Workshop workshop)
{
    private const string FrameNotFollowed = "frame_not_followed";

    /// <param name="pictures">Marked frames of this clip.</param>
    /// <param name="path">The clip.</param>
    /// <param name="ct">Stops between frames.</param>
    public async Task<IReadOnlyList<PictureReading>> ReadAsync(IReadOnlyList<MarkedPicture> pictures, string path, CancellationToken ct)
    {
        try
        {
            var sightings = (await new ClipMeasurer(workshop).MeasureAsync(path, new BodyLengths(), null, ct)).Sightings;
            return [.. pictures.Select(p => At(sightings, p))];
        }
        catch (ClipSetAsideException e)
        {
            return [.. pictures.Select(p => PictureReading.Missing(p, e.Reason))];
        }
    }

    private static PictureReading At(Sightings seen, MarkedPicture picture)
    {
        var time = picture.TimeSeconds!.Value;
        var frame = Enumerable.Range(0, seen.Count).MinBy(i => Math.Abs(seen.TimeSeconds[i] - time));
        var step = seen.Count < 2 ? 0 : (seen.TimeSeconds[^1] - seen.TimeSeconds[0]) / (seen.Count - 1);
        if (Math.Abs(seen.TimeSeconds[frame] - time) > step / 2 || seen.Facing[frame] == Facing.Unknown) return PictureReading.Missing(picture, FrameNotFollowed);
        var scale = (double)picture.WidthPx / seen.WidthPx;
        return new(picture, seen.Facing[frame], [.. seen.Points.Select(t => new PointPx(scale * Weighed(t.XPx, frame), scale * Weighed(t.YPx, frame)))], null);
    }

    // Frames beside this one are read in a mirror where it is not, and the other way round: 1-2-1 gives both the same say, as the smoothing of a track does.
    private static double Weighed(double[] track, int frame)
    {
        var around = frame > 0 && frame < track.Length - 1 ? (track[frame - 1] + 2 * track[frame] + track[frame + 1]) / 4 : double.NaN;
        return double.IsNaN(around) ? track[frame] : around;
    }
}
