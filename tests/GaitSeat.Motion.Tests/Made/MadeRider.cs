using GaitSeat.Model;

namespace GaitSeat.Motion.Tests.Made;

/// <summary>A rider whose every motion is known in closed form. Side-on, no perspective. Lengths cm, world x along travel, z up.</summary>
internal sealed record MadeRider
{
    public Gait Gait { get; init; } = Gait.RisingTrot;
    public double StrideHz { get; init; } = 1.35;
    public double BounceCm { get; init; } = 9;
    public double RiseCm { get; init; } = 9;
    public double SeatedShare { get; init; } = 0.44;
    public double SwingCm { get; init; } = 3;
    public double SpeedCmS { get; init; } = 300;
    public double ThighCm { get; init; } = 41;
    public double ShankCm { get; init; } = 41;
    public double TrunkCm { get; init; } = 49;
    public double HipOverTreadCm { get; init; } = 64;
    public double TreadAheadCm { get; init; } = 2;
    public double Phase0 { get; init; } = 0.3;

    /// <summary>Whole phase at which the rider stays down for one more beat and rises on the other diagonal from then on.</summary>
    public int? SecondSit { get; init; }

    /// <summary>The horse's stride phase.</summary>
    public double Phase(double t) => StrideHz * t + Phase0;

    /// <summary>The rider's: sits at whole numbers.</summary>
    private double SeatPhase(double t) => Phase(t) is var p && SecondSit is { } k && p > k ? Math.Max(k, p - 0.5) : Phase(t);

    public double BounceZ(double t) => BounceCm / 2 * Math.Cos(2 * Math.PI * BouncesAStride * Phase(t));

    /// <summary>Height of the hip over its place at the sit.</summary>
    public double SeatZ(double t) => Gait switch
    {
        Gait.RisingTrot => RiseCm * Rise(SeatPhase(t)),
        Gait.SittingTrot => 1.0 * Math.Cos(2 * Math.PI * 2 * Phase(t) + 1),
        Gait.Walk => 0.3 * Math.Cos(2 * Math.PI * 2 * Phase(t) + 1),
        Gait.Canter => 2.5 * Math.Cos(2 * Math.PI * Phase(t) + 1),
        _ => 0,
    };

    public double SeatX(double t) => Gait == Gait.RisingTrot ? 0.8 * SeatZ(t) : 0.5 * SeatZ(t);

    public double TreadX(double t) => TreadAheadCm + SwingCm / 2 * Math.Cos(2 * Math.PI * Phase(t) + 0.7);

    public Pose At(double t)
    {
        double x0 = SpeedCmS * t, z0 = BounceZ(t);
        var hip = (X: x0 + SeatX(t), Z: z0 + SeatZ(t));
        var tread = (X: x0 + TreadX(t), Z: z0 - HipOverTreadCm);
        var ankle = (X: tread.X - 6, Z: tread.Z + 9);
        var heel = (X: tread.X - 12.98, Z: tread.Z - 1.2);
        var toe = (X: tread.X + 9.02, Z: tread.Z + 1.2 * 0.41 / 0.59);
        heel = (tread.X - 0.59 * 22, tread.Z - 0.59 * 2);
        toe = (tread.X + 0.41 * 22, tread.Z + 0.41 * 2);
        var knee = Knee(hip, ankle);
        var lean = double.DegreesToRadians(8 + 4 * SeatZ(t) / 10);
        var shoulder = (X: hip.X + TrunkCm * Math.Sin(lean), Z: hip.Z + TrunkCm * Math.Cos(lean));
        var ear = (X: shoulder.X + 3, Z: shoulder.Z + 24);
        var wrist = (X: x0 + 28 + 1.5 * Math.Sin(2 * Math.PI * Phase(t)), Z: z0 + 18);
        return new(hip, knee, ankle, heel, toe, shoulder, ear, wrist, (x0, z0 - 10));
    }

    public double ThighDeg(double t)
    {
        var pose = At(t);
        return double.RadiansToDegrees(Math.Atan2(pose.Knee.X - pose.Hip.X, pose.Hip.Z - pose.Knee.Z));
    }

    public IEnumerable<double> Sits(double from, double to)
    {
        for (var k = (int)Math.Ceiling(SeatPhase(from)); k <= SeatPhase(to); k++)
        {
            if (!(k > SecondSit)) yield return (k - Phase0) / StrideHz;
            if (k >= SecondSit) yield return (k + 0.5 - Phase0) / StrideHz;
        }
    }

    private int BouncesAStride => Gait == Gait.Canter ? 1 : 2;

    /// <summary>0 while seated (centred on whole phases), a squared sine while aloft: as smooth as the rendered riders' rise.</summary>
    private double Rise(double phase)
    {
        var u = (phase - Math.Floor(phase) - SeatedShare / 2) / (1 - SeatedShare);
        return u is <= 0 or >= 1 ? 0 : Math.Pow(Math.Sin(Math.PI * u), 2);
    }

    private (double X, double Z) Knee((double X, double Z) hip, (double X, double Z) ankle)
    {
        double dx = ankle.X - hip.X, dz = ankle.Z - hip.Z;
        var d = Math.Sqrt(dx * dx + dz * dz);
        var along = (d * d + ThighCm * ThighCm - ShankCm * ShankCm) / (2 * d);
        var off = Math.Sqrt(ThighCm * ThighCm - along * along);
        return (hip.X + (along * dx - off * dz) / d, hip.Z + (along * dz + off * dx) / d);
    }
}

internal sealed record Pose(
    (double X, double Z) Hip,
    (double X, double Z) Knee,
    (double X, double Z) Ankle,
    (double X, double Z) Heel,
    (double X, double Z) Toe,
    (double X, double Z) Shoulder,
    (double X, double Z) Ear,
    (double X, double Z) Wrist,
    (double X, double Z) Anchor);
