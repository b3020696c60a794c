using GaitSeat.Footage.Pictures;
using GaitSeat.Model;

namespace GaitSeat.Review.Pictures;

/// <summary>Tracks of a spell for the canvas over the clip.</summary>
/// <param name="TimeSeconds">From the start of the video, one a frame.</param>
/// <param name="Points">x and y of each body point in turn, one list a frame, as shares of width and height of the picture; null where missing or too unsure.</param>
/// <param name="Names">Which points, in that order.</param>
/// <param name="ThighAngleDeg">Null where not known.</param>
/// <param name="Forward">1 where the horse moves to the right of the picture, -1 to the left, 0 not known.</param>
internal sealed record OverlayTrack(IReadOnlyList<double> TimeSeconds, IReadOnlyList<string> Names, IReadOnlyList<IReadOnlyList<double?>> Points, IReadOnlyList<double?> ThighAngleDeg, int Forward)
{
    /// <summary>Points less sure than this are not drawn, as in the overlay videos.</summary>
    private static readonly double LeastConfidence = new OverlaySettings().MinimumConfidence;

    private const double MarginSeconds = 1;

    private static readonly BodyPoint[] Drawn = [BodyPoint.Ear, BodyPoint.Shoulder, BodyPoint.Elbow, BodyPoint.Wrist, BodyPoint.Hip, BodyPoint.Knee, BodyPoint.Ankle, BodyPoint.Heel, BodyPoint.Toe];

    internal static OverlayTrack Of(MotionTrace trace, Spell spell, int widthPx, int heightPx)
    {
        int[] frames = [.. Enumerable.Range(0, trace.TimeSeconds.Length).Where(i => trace.TimeSeconds[i] >= spell.StartSeconds - MarginSeconds && trace.TimeSeconds[i] <= spell.EndSeconds + MarginSeconds)];
        return new(
            [.. frames.Select(i => Math.Round(trace.TimeSeconds[i], 4))],
            [.. Drawn.Select(p => p.ToTerm())],
            [.. frames.Select(i => (IReadOnlyList<double?>)[.. Drawn.SelectMany(p => Share(trace.Points[(int)p], i, widthPx, heightPx))])],
            [.. frames.Select(i => double.IsFinite(trace.ThighAngleDeg[i]) ? Math.Round(trace.ThighAngleDeg[i], 1) : (double?)null)],
            spell.Facing switch { Facing.Right => 1, Facing.Left => -1, _ => 0 });
    }

    private static double?[] Share(PointTrack track, int frame, int widthPx, int heightPx) =>
        track[frame].IsMissing || track.Confidence[frame] < LeastConfidence ? [null, null] : [Math.Round(track.XPx[frame] / widthPx, 4), Math.Round(track.YPx[frame] / heightPx, 4)];
}
