using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>
/// Moves the rider: the seat follows its course over the saddle, the foot stays on the tread, which hangs by the leather from the bar;
/// the knee follows from hip and ankle, the elbow from shoulder and hand.
/// </summary>
internal sealed class RiderMotion
{
    /// <summary>A leg straighter than this share of its length is refused: the knee would snap through.</summary>
    private const double LongestReach = 0.994;

    /// <summary>The heel comes up a little at the top of the rise, deg.</summary>
    private const double HeelLiftDeg = 3;

    private static readonly PlanePoint HandOverSeat = new(0.33, 0.205);
    private static readonly PlanePoint WithersOverSeat = new(0.33, 0.075);

    private readonly ClipScript _script;
    private readonly BodyPlan _body;
    private readonly double _forwardPerRise;

    /// <exception cref="ArgumentException">The script asks for a leg that cannot be; says which value to change.</exception>
    public RiderMotion(ClipScript script)
    {
        _script = script;
        _body = new BodyPlan(script);
        // A rider who turns about a fixed knee comes forward by cot(thigh) per unit of rise; half of that, the knee gives the rest.
        _forwardPerRise = Math.Clamp(0.5 / Math.Tan(script.ThighSitDeg * Math.PI / 180), 0.25, 0.7);
        LeatherM = CutLeather();
        var reach = LongestReachM();
        if (script.Gait == Gait.RisingTrot && reach > LongestReach)
        {
            throw new ArgumentException(
                $"A rise of {script.RiseCm} cm at a thigh angle of {script.ThighSitDeg} deg needs {100 * reach:F1} % of the leg's length "
                + $"(at most {100 * LongestReach} %): lower rise_cm or raise thigh_sit_deg.");
        }
    }

    public BodyPlan Body => _body;

    /// <summary>Bar to tread in the rider's plane, m.</summary>
    public double LeatherM { get; }

    public RiderPose At(double phase, double riseM, TrunkState trunk)
    {
        var saddle = new PlanePoint(0, trunk.SeatUpM);
        var bar = saddle + BarOverSeat.Turned(trunk.PitchDeg);
        var lift = _script.Gait == Gait.RisingTrot ? SeatMotion.Lift(phase) : 0;
        var hip = saddle + SeatOver(phase, riseM);
        var pitch = _script.FootPitchDeg - HeelLiftDeg * lift;
        var tread = TreadAt(saddle, bar, phase);
        var ankle = tread + AnkleOverTread.Turned(pitch);
        var lean = _script.TrunkLeanDeg + SeatMotion.LeanChangeDeg(_script.Gait, phase);
        var shoulder = hip - Plane.Hung(_body.TrunkM, -lean);
        var wrist = HandAt(saddle, shoulder, lift * riseM, trunk.PitchDeg);
        var headLean = 0.3 * lean;
        var ear = shoulder + new PlanePoint(_body.Ear.Forward, _body.Ear.Up).Turned(-headLean);
        return new RiderPose
        {
            Saddle = saddle,
            Bar = bar,
            Withers = saddle + WithersOverSeat.Turned(trunk.PitchDeg),
            Hip = hip,
            Knee = Plane.MiddleJoint(hip, ankle, _body.ThighInPlaneM, _body.ShankInPlaneM, side: 1),
            Ankle = ankle,
            Heel = ankle + new PlanePoint(-_body.HeelBackM, -0.8 * _body.AnkleOverSoleM).Turned(pitch),
            Toe = ankle + new PlanePoint(_body.ToeForwardM, -0.8 * _body.AnkleOverSoleM).Turned(pitch),
            Tread = tread,
            Shoulder = shoulder,
            Wrist = wrist,
            Elbow = Plane.MiddleJoint(shoulder, wrist, _body.UpperArmInPlaneM, _body.ForearmInPlaneM, side: -1),
            Ear = ear,
            HelmetTop = ear + new PlanePoint(_body.HelmetTop.Forward, _body.HelmetTop.Up).Turned(-headLean),
            FootPitchDeg = pitch,
            HeadLeanDeg = headLean,
        };
    }

    /// <summary>The tread's forward distance from its place at rest under the bar, m.</summary>
    public double DriftAt(double phase) =>
        (_script.DriftOffsetCm + _script.DriftSwingCm / 2 * Math.Cos(2 * Math.PI * (phase - _script.DriftPhase))) / 100;

    private static PlanePoint BarOverSeat => new(BodyPlan.BarForwardM, -BodyPlan.BarBelowSeatM);

    private PlanePoint AnkleOverTread => new(-_body.BallForwardM, _body.AnkleOverSoleM);

    private PlanePoint SeatOver(double phase, double riseM)
    {
        var up = _script.Gait == Gait.RisingTrot ? SeatMotion.Rising(phase, riseM) : SeatMotion.Following(_script.Gait, phase);
        var forward = SeatMotion.Slide(_script.Gait, phase);
        if (_script.Gait == Gait.RisingTrot) forward += _forwardPerRise * riseM * SeatMotion.Lift(phase);
        return new(forward, BodyPlan.HipOverSeatM + up);
    }

    // The place at rest is counted from the saddle, so a pitching trunk does not count as drift.
    private PlanePoint TreadAt(PlanePoint saddle, PlanePoint bar, double phase)
    {
        var forward = saddle.Forward + BodyPlan.BarForwardM + DriftAt(phase);
        var across = forward - bar.Forward;
        return new(forward, bar.Up - Math.Sqrt(LeatherM * LeatherM - across * across));
    }

    // Hands stay by the withers; they give a little with the rise, and never further from the shoulder than the arm reaches.
    private PlanePoint HandAt(PlanePoint saddle, PlanePoint shoulder, double liftedM, double pitchDeg)
    {
        var hand = saddle + HandOverSeat.Turned(pitchDeg) + new PlanePoint(0, 0.12 * liftedM);
        var reach = hand - shoulder;
        var longest = 0.985 * (_body.UpperArmInPlaneM + _body.ForearmInPlaneM);
        return reach.Length <= longest ? hand : shoulder + new PlanePoint(reach.Forward * longest / reach.Length, reach.Up * longest / reach.Length);
    }

    private double CutLeather()
    {
        var hip = SeatOver(0, _script.RiseCm / 100);
        var knee = hip + Plane.Hung(_body.ThighInPlaneM, _script.ThighSitDeg);
        var foot = AnkleOverTread.Turned(_script.FootPitchDeg);
        var ankleForward = BodyPlan.BarForwardM + DriftAt(0) + foot.Forward;
        var across = ankleForward - knee.Forward;
        if (Math.Abs(across) > 0.9 * _body.ShankInPlaneM)
        {
            throw new ArgumentException(
                $"A thigh angle of {_script.ThighSitDeg} deg with a drift offset of {_script.DriftOffsetCm} cm puts the foot {Math.Abs(across) * 100:F0} cm from under the knee, "
                + $"more than the shank of {_body.ShankInPlaneM * 100:F0} cm allows: bring drift_offset_cm nearer to 0 or lower thigh_sit_deg.");
        }

        var ankleUp = knee.Up - Math.Sqrt(_body.ShankInPlaneM * _body.ShankInPlaneM - across * across);
        var treadDrop = -BodyPlan.BarBelowSeatM - (ankleUp - foot.Up);
        return Math.Sqrt(treadDrop * treadDrop + DriftAt(0) * DriftAt(0));
    }

    private double LongestReachM()
    {
        var trunk = new TrunkState(TrunkMotion.SeatHeightM, 0, 0, 0);
        var saddle = new PlanePoint(0, trunk.SeatUpM);
        var tread = TreadAt(saddle, saddle + BarOverSeat, 0.5);
        var ankle = tread + AnkleOverTread.Turned(_script.FootPitchDeg - HeelLiftDeg);
        // The largest draw of the stride-to-stride variation of the rise must fit too.
        var rise = _script.RiseCm / 100 * (1 + RideVariation.RiseClamp * _script.RiseCvPct / 100);
        return (saddle + SeatOver(0.5, rise) - ankle).Length / (_body.ThighInPlaneM + _body.ShankInPlaneM);
    }
}
