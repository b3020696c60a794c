using GaitSeat.Model;

namespace GaitSeat.Study.Tests.Plots;

/// <summary>A made-up clip of rising trot at 30 frames a second.</summary>
internal static class Motions
{
    public const double StrideSeconds = 0.75;

    public static ClipMotion Trot(int strides = 6, bool scale = true, bool gap = false)
    {
        var times = Enumerable.Range(0, (int)((strides + 1) * StrideSeconds * 30)).Select(i => i / 30.0).ToArray();
        var seat = times.Select(t => 6 - 6 * Math.Cos(2 * Math.PI * t / StrideSeconds)).ToArray();
        if (gap) Array.Fill(seat, double.NaN, 40, 10);
        return new(
            [new(1, Gait.RisingTrot, Facing.Right, 0, strides * StrideSeconds, 0.95, 2.7, 8, 10, strides, 0, Measured.Missing, 1)],
            [.. Enumerable.Range(0, strides).Select(i => Stride(i, scale))], [],
            new()
            {
                TimeSeconds = times, SeatPctLeg = seat, BouncePctLeg = new double[times.Length], TreadForwardPctLeg = new double[times.Length],
                ThighAngleDeg = [.. seat.Select(s => 46 - s)], Points = [.. Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(times.Length))],
            });
    }

    public static ClipMotion Empty => new([], [], [], new()
    {
        TimeSeconds = [], SeatPctLeg = [], BouncePctLeg = [], TreadForwardPctLeg = [], ThighAngleDeg = [],
        Points = [.. Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(0))],
    });

    private static Stride Stride(int i, bool scale)
    {
        var m = new MeasureSet();
        if (scale) m[StrideMeasure.RiseHeightCm] = new(9.6 + 0.1 * i, 0.5);
        m[StrideMeasure.RiseHeightPctLeg] = new(12 + 0.1 * i, 0.6);
        m[StrideMeasure.ThighAngleSit] = new(46, 1);
        return new(1, i + 1, Facing.Right, i * StrideSeconds, (i + 0.5) * StrideSeconds, (i + 1) * StrideSeconds, 0.95, "good", m);
    }
}
