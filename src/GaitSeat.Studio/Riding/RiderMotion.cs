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

    /// <summary>How long the buckling of both leathers takes, s: quick, so that a clip of a few seconds shows both lengths.</summary>
    private const double BuckleSeconds = 0.6;

    private static readonly PlanePoint HandOverSeat = new(0.33, 0.205);
    private static readonly PlanePoint WithersOverSeat = new(0.33, 0.075);

    private readonly ClipScript _script;
    private readonly BodyPlan _body;
    private readonly double _forwardPerRise;
    private readonly double _laterLeatherM;

    /// <exception cref="ArgumentException">The script asks for a leg that cannot be; says which value to change.</exception>
    public RiderMotion(ClipScript script)
    {
        _script = script;
        _body = new BodyPlan(script);
        // A rider who turns about a fixed knee comes forward by cot(thigh) per unit of rise; half of that, the knee gives the rest.
        _forwardPerRise = Math.Clamp(0.5 / Math.Tan(script.ThighSitDeg * Math.PI / 180), 0.25, 0.7);
        LeatherM = CutLeather(script.ThighSitDeg);
        _laterLeatherM = script.StirrupChange is { } change ? CutLeather(change.ThighSitDeg) : LeatherM;
        DemandReach(LeatherM, script.ThighSitDeg);
        DemandReach(_laterLeatherM, script.StirrupChange?.ThighSitDeg ?? script.ThighSitDeg);
    }

    public BodyPlan Body => _body;

    /// <summary>Bar to tread in the rider's plane at the start of the clip, m.</summary>
    public double LeatherM { get; }

    public double LeatherAt(double seconds)
    {
        if (_script.StirrupChange is not { } change) return LeatherM;
        var share = Math.Clamp((seconds - change.AtSeconds) / BuckleSeconds + 0.5, 0, 1);
        return LeatherM + share * share * (3 - 2 * share) * (_laterLeatherM - LeatherM);
    }

    public RiderPose At(GaitMix mix, double phase, double riseM, TrunkState trunk, double leatherM)
    {
        var saddle = new PlanePoint(0, trunk.SeatUpM);
        var bar = saddle + BarOverSeat.Turned(trunk.PitchDeg);
        var seat = SeatCourse.At(mix, phase, riseM, _forwardPerRise);
        var hip = saddle + HipOver(seat);
        var pitch = _script.FootPitchDeg - HeelLiftDeg * seat.Lift;
        var tread = TreadAt(saddle, bar, DriftAt(phase, SwingShare(mix)), leatherM);
        var ankle = tread + AnkleOverTread.Turned(pitch);
        var lean = _script.TrunkLeanDeg + seat.LeanChangeDeg;
        var shoulder = hip - Plane.Hung(_body.TrunkM, -lean);
        var wrist = HandAt(saddle, shoulder, seat.Lift * riseM, trunk.PitchDeg);
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
    /// <param name="swingShare">1 in motion, 0 where the horse stands between other gaits.</param>
    public double DriftAt(double phase, double swingShare = 1) =>
        (_script.DriftOffsetCm + swingShare * _script.DriftSwingCm / 2 * Math.Cos(2 * Math.PI * (phase - _script.DriftPhase))) / 100;

    private double SwingShare(GaitMix mix) => _script.GaitChanges.Count == 0 ? 1 : mix.Of(g => g == Gait.Halt ? 0 : 1);

    private static PlanePoint BarOverSeat => new(BodyPlan.BarForwardM, -BodyPlan.BarBelowSeatM);

    private PlanePoint AnkleOverTread => new(-_body.BallForwardM, _body.AnkleOverSoleM);

    private static PlanePoint HipOver(SeatCourse seat) => new(seat.Forward, BodyPlan.HipOverSeatM + seat.Up);

    private PlanePoint HipOver(double phase, double riseM) => HipOver(SeatCourse.Of(_script.Rises ? Gait.RisingTrot : _script.Gait, phase, riseM, _forwardPerRise));

    // The place at rest is counted from the saddle, so a pitching trunk does not count as drift.
    private static PlanePoint TreadAt(PlanePoint saddle, PlanePoint bar, double driftM, double leatherM)
    {
        var forward = saddle.Forward + BodyPlan.BarForwardM + driftM;
        var across = forward - bar.Forward;
        return new(forward, bar.Up - Math.Sqrt(leatherM * leatherM - across * across));
    }

    // Hands stay by the withers; they give a little with the rise, and never further from the shoulder than the arm reaches.
    private PlanePoint HandAt(PlanePoint saddle, PlanePoint shoulder, double liftedM, double pitchDeg)
    {
        var hand = saddle + HandOverSeat.Turned(pitchDeg) + new PlanePoint(0, 0.12 * liftedM);
        var reach = hand - shoulder;
        var longest = 0.985 * (_body.UpperArmInPlaneM + _body.ForearmInPlaneM);
        return reach.Length <= longest ? hand : shoulder + new PlanePoint(reach.Forward * longest / reach.Length, reach.Up * longest / reach.Length);
    }

    private double CutLeather(double thighSitDeg)
    {
        var hip = HipOver(0, _script.RiseCm / 100);
        var knee = hip + Plane.Hung(_body.ThighInPlaneM, thighSitDeg);
        var foot = AnkleOverTread.Turned(_script.FootPitchDeg);
        var ankleForward = BodyPlan.BarForwardM + DriftAt(0) + foot.Forward;
        var across = ankleForward - knee.Forward;
        if (Math.Abs(across) > 0.9 * _body.ShankInPlaneM)
        {
            throw new ArgumentException(
                $"A thigh angle of {thighSitDeg} deg with a drift offset of {_script.DriftOffsetCm} cm puts the foot {Math.Abs(across) * 100:F0} cm from under the knee, "
                + $"more than the shank of {_body.ShankInPlaneM * 100:F0} cm allows: bring drift_offset_cm nearer to 0 or lower thigh_sit_deg.");
        }

        var ankleUp = knee.Up - Math.Sqrt(_body.ShankInPlaneM * _body.ShankInPlaneM - across * across);
        var treadDrop = -BodyPlan.BarBelowSeatM - (ankleUp - foot.Up);
        return Math.Sqrt(treadDrop * treadDrop + DriftAt(0) * DriftAt(0));
    }

    private void DemandReach(double leatherM, double thighSitDeg)
    {
        var reach = LongestReachM(leatherM);
        if (!_script.Rises || reach <= LongestReach) return;
        throw new ArgumentException(
            $"A rise of {_script.RiseCm} cm at a thigh angle of {thighSitDeg} deg needs {100 * reach:F1} % of the leg's length "
            + $"(at most {100 * LongestReach} %): lower rise_cm or raise thigh_sit_deg.");
    }

    private double LongestReachM(double leatherM)
    {
        var trunk = new TrunkState(TrunkMotion.SeatHeightM, 0, 0, 0);
        var saddle = new PlanePoint(0, trunk.SeatUpM);
        var tread = TreadAt(saddle, saddle + BarOverSeat, DriftAt(0.5), leatherM);
        var ankle = tread + AnkleOverTread.Turned(_script.FootPitchDeg - HeelLiftDeg);
        // The largest draw of the stride-to-stride variation of the rise must fit too.
        var rise = _script.RiseCm / 100 * (1 + RideVariation.RiseClamp * _script.RiseCvPct / 100);
        return (saddle + HipOver(0.5, rise) - ankle).Length / (_body.ThighInPlaneM + _body.ShankInPlaneM);
    }
}
