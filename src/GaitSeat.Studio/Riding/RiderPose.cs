namespace GaitSeat.Studio;

/// <summary>The rider's near side at one instant, in the rider's plane; heights from the ground, forward from the saddle's seat.</summary>
internal sealed record RiderPose
{
    public required PlanePoint Ear { get; init; }
    public required PlanePoint Shoulder { get; init; }
    public required PlanePoint Elbow { get; init; }
    public required PlanePoint Wrist { get; init; }
    public required PlanePoint Hip { get; init; }
    public required PlanePoint Knee { get; init; }
    public required PlanePoint Ankle { get; init; }
    public required PlanePoint Heel { get; init; }
    public required PlanePoint Toe { get; init; }
    public required PlanePoint Tread { get; init; }
    public required PlanePoint HelmetTop { get; init; }
    public required PlanePoint Saddle { get; init; }
    public required PlanePoint Bar { get; init; }
    public required PlanePoint Withers { get; init; }

    /// <summary>Turn of the foot, deg, + toe above heel.</summary>
    public required double FootPitchDeg { get; init; }

    /// <summary>Turn of the head from upright, deg, + forward.</summary>
    public required double HeadLeanDeg { get; init; }

    public double ThighDeg => Plane.FromDown(Hip, Knee);

    public double ShankDeg => Plane.FromDown(Knee, Ankle);

    public double KneeDeg => Plane.Interior(Hip, Knee, Ankle);

    public double TrunkDeg => Plane.FromUp(Hip, Shoulder);
}
