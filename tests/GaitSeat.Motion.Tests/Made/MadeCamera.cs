using GaitSeat.Model;

namespace GaitSeat.Motion.Tests.Made;

/// <summary>Looks at a made rider side-on and writes down exact sightings.</summary>
internal sealed record MadeCamera
{
    public double FrameRateHz { get; init; } = 30;
    public double Seconds { get; init; } = 6;
    public double PxPerCm { get; init; } = 1.7;
    public Facing Facing { get; init; } = Facing.Right;

    /// <summary>Share of the rider's speed the camera pans with.</summary>
    public double PanShare { get; init; } = 1;

    /// <summary>Growth of the picture, share a second.</summary>
    public double ZoomPerSecond { get; init; }

    /// <summary>Amplitude of a slow tilt, px, and of a roll, deg, both at 0.7 Hz.</summary>
    public double TiltPx { get; init; }
    public double RollDeg { get; init; }

    /// <summary>View yaw at the start and the end, deg, + coming nearer, even in between; and how far knee and foot stand nearer to the camera than the hip, cm.</summary>
    public double YawFromDeg { get; init; }
    public double YawToDeg { get; init; }
    public double KneeOutCm { get; init; }

    /// <summary>Whether the turn is told with the sightings; otherwise it has to be seen.</summary>
    public bool TellsTurn { get; init; } = true;
    public double[]? Times { get; init; }

    public double[] FrameTimes => Times ?? [.. Enumerable.Range(0, (int)(Seconds * FrameRateHz)).Select(i => i / FrameRateHz)];

    private const int Width = 1280;
    private const int Height = 720;

    public Sightings Film(MadeRider rider)
    {
        var times = FrameTimes;
        var n = times.Length;
        var sign = Facing == Facing.Left ? -1 : 1;
        double Scale(double t) => PxPerCm * (1 + ZoomPerSecond * t);
        (double X, double Y) Project(double t, (double X, double Z) p)
        {
            var x = sign * (p.X - PanShare * rider.SpeedCmS * t) * Scale(t);
            var y = -p.Z * Scale(t) + TiltPx * Math.Sin(2 * Math.PI * 0.7 * t);
            var (s, c) = Math.SinCos(double.DegreesToRadians(RollDeg) * Math.Sin(2 * Math.PI * 0.7 * t));
            return (Width / 2 + c * x - s * y, Height / 2 + s * x + c * y);
        }

        var points = Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(n)).ToArray();
        var rider0 = new BoxPx?[n];
        PatchMotion trunk = Still(n), ground = Still(n);
        for (var i = 0; i < n; i++)
        {
            var pose = rider.At(times[i]);
            var yaw = double.DegreesToRadians(YawDeg(i, n));
            foreach (var (point, at) in Named(pose))
            {
                var nearer = point is BodyPoint.Knee or BodyPoint.Ankle or BodyPoint.Heel or BodyPoint.Toe ? KneeOutCm : 0;
                var hipX = pose.Hip.X + (at.X - pose.Hip.X) * Math.Cos(yaw) - nearer * Math.Sin(yaw);
                var (x, y) = Project(times[i], (hipX, at.Z));
                points[(int)point].XPx[i] = x;
                points[(int)point].YPx[i] = y;
                points[(int)point].Confidence[i] = 1;
            }

            rider0[i] = new BoxPx(500, 200, 100, 150 * Scale(times[i]));
            if (i == 0) continue;
            var before = rider.At(times[i - 1]);
            Step(trunk, i, Project(times[i - 1], before.Anchor), Project(times[i], pose.Anchor));
            Step(ground, i, Project(times[i - 1], before.Hip), Project(times[i], before.Hip));
            var roll = double.DegreesToRadians(RollDeg) * (Math.Sin(2 * Math.PI * 0.7 * times[i]) - Math.Sin(2 * Math.PI * 0.7 * times[i - 1]));
            ground.RotationRad[i] = trunk.RotationRad[i] = roll;
        }

        return new()
        {
            WidthPx = Width,
            HeightPx = Height,
            TimeSeconds = times,
            Rider = rider0,
            Horse = new BoxPx?[n],
            Facing = [.. Enumerable.Repeat(Facing, n)],
            KnownTurnDeg = TellsTurn ? [.. Enumerable.Range(0, n).Select(i => -YawDeg(i, n))] : null,
            Reason = new FrameReason[n],
            CutBefore = new bool[n],
            Points = points,
            PointsAreJoints = true,
            Trunk = trunk,
            Surroundings = ground,
        };
    }

    private double YawDeg(int i, int n) => YawFromDeg + (YawToDeg - YawFromDeg) * i / Math.Max(1, n - 1);

    public static PatchMotion Still(int n) =>
        new(new double[n], new double[n], new double[n], [.. Enumerable.Repeat(1.0, n)], new int[n], new double[n]);

    private static void Step(PatchMotion patch, int i, (double X, double Y) from, (double X, double Y) to)
    {
        patch.XPx[i] = to.X - from.X;
        patch.YPx[i] = to.Y - from.Y;
        patch.Points[i] = 50;
    }

    public static IEnumerable<(BodyPoint, (double X, double Z))> Named(Pose pose) =>
    [
        (BodyPoint.Hip, pose.Hip), (BodyPoint.Knee, pose.Knee), (BodyPoint.Ankle, pose.Ankle), (BodyPoint.Heel, pose.Heel),
        (BodyPoint.Toe, pose.Toe), (BodyPoint.Shoulder, pose.Shoulder), (BodyPoint.Ear, pose.Ear), (BodyPoint.Wrist, pose.Wrist),
    ];
}
