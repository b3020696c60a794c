using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Whether a point can be seen in the picture.</summary>
public enum PointVisibility
{
    /// <summary>Outside the picture.</summary>
    Outside = 0,

    /// <summary>In the picture, behind horse or tack.</summary>
    Hidden = 1,

    Seen = 2,
}

/// <summary>A point in the rider's own frame, m: + forward, + up from the ground, + towards the camera side from the horse's middle plane.</summary>
public readonly record struct Point3(double Forward, double Up, double Near)
{
    public static Point3 operator +(Point3 a, Point3 b) => new(a.Forward + b.Forward, a.Up + b.Up, a.Near + b.Near);

    public static Point3 operator -(Point3 a, Point3 b) => new(a.Forward - b.Forward, a.Up - b.Up, a.Near - b.Near);

    public double Length => Math.Sqrt(Forward * Forward + Up * Up + Near * Near);
}

/// <summary>Where a point is: in the picture and in space.</summary>
public readonly record struct PointTruth(PointPx Px, PointVisibility Visibility, Point3? Metres);

/// <summary>One frame as it truly is.</summary>
public sealed record FrameTruth
{
    /// <summary>The points each file carries, in column order; joints are joint centres of the near side.</summary>
    public static IReadOnlyList<string> PointNames { get; } =
    [
        "ear", "shoulder", "elbow", "wrist", "hip", "knee", "ankle", "heel", "toe", "saddle", "bar", "withers", "tread", "helmet_top",
    ];

    public required int Frame { get; init; }

    /// <summary>Mid-exposure, s from the first frame: what the clip's own time stamps say.</summary>
    public required double TimeSeconds { get; init; }

    public required IReadOnlyDictionary<string, PointTruth> Points { get; init; }

    /// <summary>0 at the sit, 1 at the next.</summary>
    public required double StridePhase { get; init; }

    /// <summary>Picture scale at the middle of the pelvis, px per m.</summary>
    public required double PxPerM { get; init; }

    /// <summary>
    /// Turn out of the picture plane, deg: 0 is exactly side-on. In our files + is a horse that comes towards the camera; other renderers may count the other way,
    /// so compare sizes. On a circle it runs to 90 and back.
    /// </summary>
    public required double YawDeg { get; init; }

    /// <summary>Which way the horse goes in this frame's picture; null where the file does not tell (then that of the clip). The points are those of the side seen here.</summary>
    public Facing? Facing { get; init; }

    /// <summary>Helmet top to lowest point of the boot, px.</summary>
    public required double RiderPxHeight { get; init; }

    public required bool RiderFullInFrame { get; init; }

    public required double ThighDeg { get; init; }

    public required double TrunkDeg { get; init; }

    /// <summary>Seat over its place at the sit, trunk frame, cm.</summary>
    public required double RiseCm { get; init; }

    public required double TreadFwdOfBarCm { get; init; }

    public double? AnkleFwdOfHipCm { get; init; }

    /// <summary>Vertical motion of the horse's trunk about its mean, cm.</summary>
    public required double BounceCm { get; init; }

    public PointTruth this[string point] => Points[point];
}
