using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>The true points of a rendered clip in the place of a reading: what then is printed is how far the marker is off.</summary>
public static class TruthReading
{
    private const string NoSuchFrame = "no_such_frame";

    /// <param name="picture">A marked frame of the clip.</param>
    /// <param name="frames">The clip's per-frame truth.</param>
    /// <param name="frameRateHz">Frames a second.</param>
    public static PictureReading Of(MarkedPicture picture, IReadOnlyList<FrameTruth> frames, double frameRateHz)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(frames);
        var frame = frames.MinBy(r => Math.Abs(r.TimeSeconds - (picture.TimeSeconds ?? double.NaN)));
        if (frame is null || !(Math.Abs(frame.TimeSeconds - picture.TimeSeconds ?? double.NaN) < 0.5 / frameRateHz)) return PictureReading.Missing(picture, NoSuchFrame);
        return new(picture, picture.Facing, [.. Enum.GetValues<BodyPoint>().Select(p => FrameTruth.PointNames.Contains(p.ToTerm()) ? frame[p.ToTerm()].Px : PointPx.Missing)], null);
    }
}
