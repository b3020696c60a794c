using GaitSeat.Model;

namespace GaitSeat.Motion.Tests.Made;

/// <summary>
/// A pinhole camera that stands in one place and turns with a rider who passes, on a straight line or in a bend: perspective, growth and turn as they truly go together.
/// Times from the middle of the clip.
/// </summary>
internal sealed record StandingCamera
{
    public double FrameRateHz { get; init; } = 30;
    public double Seconds { get; init; } = 6;
    public double FocalPx { get; init; } = 2000;

    /// <summary>From camera to rider at the middle of the clip.</summary>
    public double DistanceCm { get; init; } = 1200;

    /// <summary>Turn at the middle of the clip, + going away.</summary>
    public double TurnDeg { get; init; }

    /// <summary>How fast the horse turns in a bend, + towards going away sooner.</summary>
    public double BendDegPerSecond { get; init; }

    /// <summary>Relative zoom a second.</summary>
    public double ZoomPerSecond { get; init; }

    /// <summary>How much nearer to the camera than the hip knee and foot stand.</summary>
    public double KneeOutCm { get; init; } = 20;

    /// <summary>How far to the right of the middle of the picture the camera holds the rider.</summary>
    public double OffMiddlePx { get; init; }

    private const int Width = 1280, Height = 720;

    public (Sightings Seen, double[] TurnDeg) Film(MadeRider rider)
    {
        var n = (int)(Seconds * FrameRateHz);
        double[] times = [.. Enumerable.Range(0, n).Select(i => i / FrameRateHz)];
        var points = Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(n)).ToArray();
        var turn = new double[n];
        PatchMotion trunk = MadeCamera.Still(n), ground = MadeCamera.Still(n);
        var before = Place(0);
        for (var i = 0; i < n; i++)
        {
            var t = times[i];
            var place = Place(t);
            turn[i] = place.TurnDeg;
            var pose = rider.At(t);
            double x0 = rider.SpeedCmS * t, size = FocalPx * (1 + ZoomPerSecond * (t - Seconds / 2)) / place.Depth;
            var (s, c) = Math.SinCos(double.DegreesToRadians(place.TurnDeg));
            (double X, double Y) Seen((double X, double Z) at, double nearer = 0) => (Width / 2 + OffMiddlePx + size * ((at.X - x0) * c + nearer * s), Height / 2 - size * at.Z);
            foreach (var (point, at) in MadeCamera.Named(pose))
            {
                var limb = point is BodyPoint.Knee or BodyPoint.Ankle or BodyPoint.Heel or BodyPoint.Toe;
                (points[(int)point].XPx[i], points[(int)point].YPx[i]) = Seen(at, limb ? KneeOutCm : 0);
                points[(int)point].Confidence[i] = 1;
            }

            if (i > 0)
            {
                // The anchor keeps its place on the horse, which stays in the middle of the picture.
                var last = Seen(((rider.At(times[i - 1]).Anchor.X - rider.SpeedCmS * times[i - 1]) + x0, rider.At(times[i - 1]).Anchor.Z));
                (trunk.XPx[i], trunk.YPx[i]) = (Seen(pose.Anchor).X - last.X, Seen(pose.Anchor).Y - last.Y);
                ground.XPx[i] = -FocalPx * (place.PanRad - before.PanRad);
                ground.Zoom[i] = 1 + ZoomPerSecond / FrameRateHz / (1 + ZoomPerSecond * (t - Seconds / 2))
                    + PanFlow.Growth(place.PanRad - before.PanRad, FocalPx, OffMiddlePx, Width, 0.65 * Height);
            }

            before = place;
        }

        return (new()
        {
            WidthPx = Width,
            HeightPx = Height,
            TimeSeconds = times,
            Rider = [.. times.Select(_ => (BoxPx?)new BoxPx(500, 200, 100, 300))],
            Horse = new BoxPx?[n],
            Facing = [.. Enumerable.Repeat(Facing.Right, n)],
            Reason = new FrameReason[n],
            CutBefore = new bool[n],
            Points = points,
            PointsAreJoints = true,
            Trunk = trunk,
            Surroundings = ground,
        }, turn);

        // The way is stepped through from the middle; + across to the right, + deep away from the camera.
        (double Depth, double PanRad, double TurnDeg) Place(double t)
        {
            const int steps = 400;
            double across = 0, deep = DistanceCm, dt = (t - Seconds / 2) / steps;
            double Heading(double at) => double.DegreesToRadians(TurnDeg + BendDegPerSecond * at);
            for (var k = 0; k < steps; k++)
            {
                across += rider.SpeedCmS * dt * Math.Cos(Heading((k + 0.5) * dt));
                deep += rider.SpeedCmS * dt * Math.Sin(Heading((k + 0.5) * dt));
            }

            var pan = Math.Atan2(across, deep);
            return (Math.Sqrt(across * across + deep * deep), pan, double.RadiansToDegrees(Heading(t - Seconds / 2) + pan));
        }
    }
}
