using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>One instant of a ride.</summary>
internal readonly record struct RideMoment(double Seconds, int Stride, double Phase, TrunkState Trunk, double RiseM, RiderPose Pose);

/// <summary>A whole ride as a function of time: everything drawn and everything written as truth comes from here.</summary>
internal sealed class Ride
{
    private readonly RiderMotion _rider;
    private readonly double[] _riseM;

    public Ride(ClipScript script)
    {
        ScriptCheck.Demand(script);
        Script = script;
        Clock = new StrideClock(script.StrideHzOrUsual, script.DurationSeconds, script.DurationCvPct, new SeededNoise(script.Seed, stream: 1));
        _rider = new RiderMotion(script);
        var noise = new SeededNoise(script.Seed, stream: 2);
        _riseM = new double[Clock.Instants.Count];
        for (var i = 0; i < _riseM.Length; i++)
        {
            var draw = Math.Clamp(noise.Normal(), -RideVariation.RiseClamp, RideVariation.RiseClamp);
            _riseM[i] = script.Gait == Gait.RisingTrot ? script.RiseCm / 100 * (1 + script.RiseCvPct / 100 * draw) : 0;
        }
    }

    public ClipScript Script { get; }

    public StrideClock Clock { get; }

    public BodyPlan Body => _rider.Body;

    public double LeatherM => _rider.LeatherM;

    /// <summary>Metres a second: stride length times stride frequency.</summary>
    public double SpeedMS => GaitDefaults.StrideLengthM(Script.Gait) * Script.StrideHzOrUsual;

    public RideMoment At(double seconds)
    {
        var (stride, phase) = Clock.At(seconds);
        var trunk = TrunkMotion.At(Script, phase);
        var rise = Clock.HasStrides ? _riseM[stride] : 0;
        return new(seconds, stride, phase, trunk, rise, _rider.At(phase, rise, trunk));
    }

    /// <summary>Seat over the saddle, m, in the trunk frame.</summary>
    public static double SeatOverSaddleM(RideMoment moment) => moment.Pose.Hip.Up - moment.Pose.Saddle.Up;

    /// <summary>Tread forward of its place at rest under the bar, in the trunk frame, m.</summary>
    public static double TreadOverRestM(RideMoment moment) =>
        moment.Pose.Tread.Forward - moment.Pose.Saddle.Forward - BodyPlan.BarForwardM;
}
