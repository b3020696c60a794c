using GaitSeat.Model;

namespace GaitSeat.Faults.Tests;

/// <summary>How each fault is planted: the measures that make it, well past the default limits.</summary>
internal static class Plants
{
    public static Action<MeasureSet, int> Of(Fault fault) => (m, stride) =>
    {
        switch (fault)
        {
            case Fault.StirrupShort: m[StrideMeasure.ThighAngleSit] = new(58, 1); break;
            case Fault.StirrupLong:
                m[StrideMeasure.ThighAngleSit] = new(30, 1);
                Rise(m, 5.4, 0.3);
                break;
            case Fault.SmallRise: Rise(m, 3, 0.5); break;
            case Fault.ChairSeat:
                Foot(m, 28);
                Heel(m, 12);
                break;
            case Fault.ForkSeat:
                Heel(m, -16);
                m[StrideMeasure.TrunkLeanSit] = new(17, 1);
                break;
            case Fault.PressingTheStirrup:
                Swing(m, 9.5);
                Foot(m, 21);
                break;
            case Fault.ForcedHeel:
                m[StrideMeasure.FootPitchSit] = new(28, 2);
                Foot(m, 21);
                break;
            case Fault.SwingingLowerLeg: Swing(m, 11); break;
            case Fault.BusyHands: Rides.Length(m, StrideMeasure.HandTravelCm, StrideMeasure.HandTravelPctLeg, 6, 0.4); break;
            case Fault.BehindTheMovement: m[StrideMeasure.TrunkLeanSit] = new(-10, 1.5); break;
            case Fault.AheadOfTheMovement: m[StrideMeasure.TrunkLeanSit] = new(26, 1.5); break;
            case Fault.HeavyLanding: m[StrideMeasure.SitImpact] = new(85, 6); break;
            case Fault.IrregularRise: Rise(m, stride % 2 == 0 ? 5.5 : 15, 0.5); break;
            default: throw new ArgumentOutOfRangeException(nameof(fault), fault, "No plant for it.");
        }
    };

    private static void Rise(MeasureSet m, double cm, double error) => Rides.Length(m, StrideMeasure.RiseHeightCm, StrideMeasure.RiseHeightPctLeg, cm, error);

    private static void Foot(MeasureSet m, double cm) => Rides.Length(m, StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.StirrupDriftOffsetPctLeg, cm, 1);

    private static void Heel(MeasureSet m, double cm) => Rides.Length(m, StrideMeasure.HeelOffsetCm, StrideMeasure.HeelOffsetPctLeg, cm, 1);

    private static void Swing(MeasureSet m, double cm) => Rides.Length(m, StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftSwingPctLeg, cm, 0.5);
}
