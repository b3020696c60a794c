using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Review.Clips;
using GaitSeat.Store;

namespace GaitSeat.Review.Marks;

/// <summary>The tool's points in one frame, in pixels of the upright picture as it was filmed.</summary>
internal sealed class ToolPoints
{
    /// <summary>The ball of the foot on the way from heel to toe, as in the overlay.</summary>
    private const double TreadShare = 0.7;

    private readonly MotionTrace? _trace;
    private readonly int _frame;
    private readonly (double X, double Y) _zoom;

    /// <param name="trace">Null where the run kept no tracks.</param>
    internal ToolPoints(MotionTrace? trace, ClipFacts facts, ReadSettings read, double seconds)
    {
        var (width, height) = FrameReader.AnalysisSize(facts.WidthPx, facts.HeightPx, read);
        (_trace, _zoom) = (trace, ((double)facts.WidthPx / width, (double)facts.HeightPx / height));
        _frame = trace is null || trace.TimeSeconds.Length == 0 ? -1 : Enumerable.Range(0, trace.TimeSeconds.Length).MinBy(i => Math.Abs(trace.TimeSeconds[i] - seconds));
        TimeSeconds = _frame < 0 ? seconds : trace!.TimeSeconds[_frame];
    }

    /// <summary>Time of the frame nearest to the one asked for, s; that itself where the frames are not known.</summary>
    internal double TimeSeconds { get; }

    internal PointPx At(HandPoint point) => point switch
    {
        HandPoint.Shoulder => At(BodyPoint.Shoulder),
        HandPoint.Hip => At(BodyPoint.Hip),
        HandPoint.Knee => At(BodyPoint.Knee),
        HandPoint.Ankle => At(BodyPoint.Ankle),
        HandPoint.Heel => At(BodyPoint.Heel),
        HandPoint.Toe => At(BodyPoint.Toe),
        HandPoint.Tread => Between(At(BodyPoint.Heel), At(BodyPoint.Toe)),
        _ => PointPx.Missing,
    };

    private PointPx At(BodyPoint point) => _frame < 0 || _trace!.Points[(int)point][_frame].IsMissing
        ? PointPx.Missing
        : new(_trace.Points[(int)point].XPx[_frame] * _zoom.X, _trace.Points[(int)point].YPx[_frame] * _zoom.Y);

    private static PointPx Between(PointPx heel, PointPx toe) => new(heel.X + TreadShare * (toe.X - heel.X), heel.Y + TreadShare * (toe.Y - heel.Y));
}
