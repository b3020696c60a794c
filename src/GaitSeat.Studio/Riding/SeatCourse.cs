using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Where the seat is over the saddle and how the trunk goes with it.</summary>
/// <param name="Forward">m.</param>
/// <param name="Up">m, over the saddle at rest.</param>
/// <param name="Lift">0 on the saddle, 1 at the top of a rise.</param>
/// <param name="LeanChangeDeg">Added to the lean at the sit.</param>
internal readonly record struct SeatCourse(double Forward, double Up, double Lift, double LeanChangeDeg)
{
    public static SeatCourse At(GaitMix mix, double phase, double riseM, double forwardPerRise)
    {
        var a = Of(mix.A, phase, riseM, forwardPerRise);
        if (mix.IsPure) return a;
        var (b, s) = (Of(mix.B, phase, riseM, forwardPerRise), mix.ShareB);
        return new(a.Forward + s * (b.Forward - a.Forward), a.Up + s * (b.Up - a.Up), a.Lift + s * (b.Lift - a.Lift), a.LeanChangeDeg + s * (b.LeanChangeDeg - a.LeanChangeDeg));
    }

    public static SeatCourse Of(Gait gait, double phase, double riseM, double forwardPerRise)
    {
        var (forward, lean) = (SeatMotion.Slide(gait, phase), SeatMotion.LeanChangeDeg(gait, phase));
        if (gait != Gait.RisingTrot) return new(forward, SeatMotion.Following(gait, phase), 0, lean);
        // A rise no higher than the sink is a seat that stays in the saddle: the body does not go with it.
        var lift = riseM > SeatMotion.SinkM ? SeatMotion.Lift(phase) : 0;
        return new(forward + forwardPerRise * riseM * lift, SeatMotion.Rising(phase, riseM), lift, lift > 0 ? lean : 0);
    }
}
