using GaitSeat.Footage.Pictures;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests.Pictures;

/// <summary>A made-up rider in the middle of a made-up picture; every frame of the trace is the same but for the seat.</summary>
internal static class Scenes
{
    public const int Frames = 61;
    public const double RateHz = 30;

    /// <summary>Points of a rider 240 px high in a 640 x 360 picture, facing right.</summary>
    private static readonly Dictionary<BodyPoint, PointPx> Body = new()
    {
        [BodyPoint.Ear] = new(318, 60),
        [BodyPoint.Nose] = new(334, 64),
        [BodyPoint.Shoulder] = new(312, 100),
        [BodyPoint.Elbow] = new(318, 136),
        [BodyPoint.Wrist] = new(352, 146),
        [BodyPoint.Hip] = new(305, 170),
        [BodyPoint.Knee] = new(353, 218),
        [BodyPoint.Ankle] = new(320, 270),
        [BodyPoint.Heel] = new(308, 280),
        [BodyPoint.Toe] = new(346, 276),
    };

    public static BoxPx Rider => new(290, 38, 80, 250);

    public static MotionTrace Trace(params BodyPoint[] missing)
    {
        var times = Enumerable.Range(0, Frames).Select(i => i / RateHz).ToArray();
        var points = Enum.GetValues<BodyPoint>().Select(p => Body.TryGetValue(p, out var at) && !missing.Contains(p) ? Still(at) : PointTrack.Empty(Frames)).ToArray();
        return new()
        {
            TimeSeconds = times,
            SeatPctLeg = [.. times.Select(t => 6 - 6 * Math.Cos(2 * Math.PI * t / 0.7))],
            BouncePctLeg = new double[Frames],
            TreadForwardPctLeg = new double[Frames],
            ThighAngleDeg = [.. times.Select(_ => 45.0)],
            Points = points,
        };
    }

    public static MotionTrace NoTrace => new()
    {
        TimeSeconds = [], SeatPctLeg = [], BouncePctLeg = [], TreadForwardPctLeg = [], ThighAngleDeg = [],
        Points = [.. Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(0))],
    };

    public static Stride[] Strides => [.. Enumerable.Range(0, 2).Select(i =>
    {
        var m = new MeasureSet();
        m[StrideMeasure.RiseHeightPctLeg] = new(12 + i, 0.8);
        m[StrideMeasure.StirrupDriftSwingPctLeg] = new(4, 0.8);
        return new Stride(1, i + 1, Facing.Right, 0.7 * i, 0.7 * i + 0.35, 0.7 * i + 0.7, 0.9, "good", m);
    })];

    public static OverlayScene At(int frame, MotionTrace trace, BoxPx? rider = null, IReadOnlyList<BoxPx>? others = null) =>
        new(frame < 0 ? 0 : trace.TimeSeconds[frame], trace, frame, Strides,
            [new(1, Gait.RisingTrot, Facing.Right, 0, 2, 0.9, 2.8, 6, 7, 2, 0, Measured.Missing, double.NaN)], Facing.Right, rider, others);

    /// <summary>A picture in which every pixel differs from its neighbours, so that nothing painted or blurred goes unseen.</summary>
    public static Frame Noise(int widthPx = 640, int heightPx = 360, int seed = 5)
    {
        var frame = new Frame(0, 0, widthPx, heightPx);
        new Random(seed).NextBytes(frame.Rgb);
        return frame;
    }

    private static PointTrack Still(PointPx at)
    {
        double[] Fill(double v) => [.. Enumerable.Repeat(v, Frames)];
        return new(Fill(at.X), Fill(at.Y), Fill(0.9), Fill(1));
    }
}
