using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>One instant of a ride.</summary>
/// <param name="Phase">0 at the sit, 1 at the next.</param>
/// <param name="HorsePhase">The same for the horse's legs.</param>
/// <param name="WayM">Ground covered since the middle of the clip, without the surge, m.</param>
internal readonly record struct RideMoment(
    double Seconds, int Stride, double Phase, double HorsePhase, GaitMix Mix, double WayM, TrunkState Trunk, double RiseM, RiderPose Pose);

/// <summary>A whole ride as a function of time: everything drawn and everything written as truth comes from here.</summary>
internal sealed class Ride
{
    private readonly RiderMotion _rider;
    private readonly double[] _riseM;
    private readonly WayCovered _way;

    public Ride(ClipScript script)
    {
        ScriptCheck.Demand(script);
        Script = script;
        Clock = new StrideClock(script, new SeededNoise(script.Seed, stream: 1));
        _rider = new RiderMotion(script);
        _way = new WayCovered(script, Clock);
        var noise = new SeededNoise(script.Seed, stream: 2);
        _riseM = new double[Clock.Instants.Count];
        for (var i = 0; i < _riseM.Length; i++)
        {
            var draw = Math.Clamp(noise.Normal(), -RideVariation.RiseClamp, RideVariation.RiseClamp);
            var rises = Clock.Strides[i] is { Gait: Gait.RisingTrot, HorseStrides: 1 };
            // Where the rider sits through, the seat keeps to the depth of the sits on either side.
            _riseM[i] = rises ? script.RiseCm / 100 * (1 + script.RiseCvPct / 100 * draw) : SeatMotion.SinkM;
        }
    }

    public ClipScript Script { get; }

    public StrideClock Clock { get; }

    public BodyPlan Body => _rider.Body;

    public double LeatherM => _rider.LeatherM;

    /// <summary>Metres a second in the clip's first gait: stride length times stride frequency.</summary>
    public double SpeedMS => GaitDefaults.StrideLengthM(Script.Gait) * Script.StrideHzOrUsual;

    public RideMoment At(double seconds)
    {
        var at = Clock.At(seconds);
        var mix = Clock.HasStrides ? GaitMix.At(Clock, at) : new GaitMix(Script.Gait, Script.Gait, 0);
        var trunk = TrunkMotion.At(Script, mix, at);
        var rise = Clock.HasStrides ? _riseM[at.Stride] : 0;
        var pose = _rider.At(mix, at.Phase, rise, trunk, _rider.LeatherAt(seconds));
        return new(seconds, at.Stride, at.Phase, at.HorsePhase, mix, _way.At(seconds), trunk, rise, pose);
    }

    /// <summary>Seat over the saddle, m, in the trunk frame.</summary>
    public static double SeatOverSaddleM(RideMoment moment) => moment.Pose.Hip.Up - moment.Pose.Saddle.Up;

    /// <summary>Tread forward of its place at rest under the bar, in the trunk frame, m.</summary>
    public static double TreadOverRestM(RideMoment moment) =>
        moment.Pose.Tread.Forward - moment.Pose.Saddle.Forward - BodyPlan.BarForwardM;
}
