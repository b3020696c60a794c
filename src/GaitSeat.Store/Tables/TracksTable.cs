using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record TrackRow(ClipRecord Clip, MotionTrace Trace, int Frame) : IClipRow;

/// <summary>One row a frame. Large, so it is written only where asked for.</summary>
internal static class TracksTable
{
    internal const string Name = "tracks";
    private const string NotKnown = "Not known in this frame.";

    internal static Table Table { get; } = new Table<TrackRow>(
        Name,
        "One row a frame: the smoothed body points and signals. Written only where the run asks for it.",
        [
            .. SharedColumns.Clip<TrackRow>(),
            Columns.Whole<TrackRow>("frame", "", "Number of the analysed frame, from 0.", r => r.Frame),
            Columns.Real<TrackRow>("t_s", "s", "Presentation time, from the start of the video.", r => r.Trace.TimeSeconds[r.Frame]),
            Columns.Text<TrackRow>("frame_reason", "Why the frame is not measured.", ReasonOf, "The frame is good."),
            .. Signals(),
            .. Enum.GetValues<BodyPoint>().SelectMany(Point),
            .. SharedColumns.Provenance<TrackRow>(),
        ],
        clip => clip.Motion is { Trace: var trace } ? [.. Enumerable.Range(0, trace.TimeSeconds.Length).Select(i => new TrackRow(clip, trace, i))] : []);

    private static IEnumerable<Column<TrackRow>> Signals() =>
    [
        Columns.Real<TrackRow>("seat_pct_leg", "% of leg length", "Seat height over the trunk anchor, + up, zero at the sits.", r => r.Trace.SeatPctLeg[r.Frame], NotKnown),
        Columns.Real<TrackRow>("bounce_pct_leg", "% of leg length", "Vertical motion of the trunk, + up, camera motion removed.", r => r.Trace.BouncePctLeg[r.Frame], NotKnown),
        Columns.Real<TrackRow>("tread_forward_pct_leg", "% of leg length", "Forward position of the tread in the trunk frame, mean taken off.", r => r.Trace.TreadForwardPctLeg[r.Frame], NotKnown),
        Columns.Real<TrackRow>("thigh_angle_deg", "deg", "Hip to knee against straight down, + knee forward.", r => r.Trace.ThighAngleDeg[r.Frame], NotKnown),
    ];

    private static IEnumerable<Column<TrackRow>> Point(BodyPoint point)
    {
        var name = point.ToTerm();
        var i = (int)point;
        return
        [
            Columns.Real<TrackRow>(name + "_x_px", "px", $"Smoothed position of the {name}, right of the left edge of the analysed picture.", r => r.Trace.Points[i].XPx[r.Frame], NotKnown),
            Columns.Real<TrackRow>(name + "_y_px", "px", $"Smoothed position of the {name}, below the top edge.", r => r.Trace.Points[i].YPx[r.Frame], NotKnown),
            Columns.Real<TrackRow>(name + "_confidence", "0..1", $"How sure the models are of the {name}; 0 where it was not seen.", r => r.Trace.Points[i].Confidence[r.Frame], NotKnown),
        ];
    }

    private static string? ReasonOf(TrackRow row) =>
        row.Clip.Sightings is { } sightings && sightings.Reason[row.Frame] is var reason and not FrameReason.None ? reason.ToTerm() : null;
}
