using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Angles between points of one frame, deg, signs as in the vocabulary; NaN where a point is missing or it is not known which way is forward.</summary>
/// <param name="Thigh">Hip to knee against straight down, + knee forward.</param>
/// <param name="Shank">Knee to ankle against straight down, + ankle forward.</param>
/// <param name="Knee">Interior angle hip-knee-ankle.</param>
/// <param name="FootPitch">Heel to toe against horizontal, + toe up.</param>
/// <param name="TrunkLean">Hip to shoulder against straight up, + shoulder forward.</param>
public sealed record HandAngles(double Thigh, double Shank, double Knee, double FootPitch, double TrunkLean)
{
    /// <param name="at">Where a point is, px, x right and y down in a picture of square pixels; missing where it is not.</param>
    public static HandAngles Of(Func<HandPoint, PointPx> at, Facing facing)
    {
        ArgumentNullException.ThrowIfNull(at);
        var forward = facing switch { Facing.Right => 1.0, Facing.Left => -1.0, _ => double.NaN };
        (double Forward, double Up) Limb(HandPoint from, HandPoint to) => (forward * (at(to).X - at(from).X), at(from).Y - at(to).Y);
        double AgainstDown((double Forward, double Up) limb) => double.RadiansToDegrees(Math.Atan2(limb.Forward, -limb.Up));
        var (thigh, shank) = (Limb(HandPoint.Hip, HandPoint.Knee), Limb(HandPoint.Knee, HandPoint.Ankle));
        var (foot, trunk) = (Limb(HandPoint.Heel, HandPoint.Toe), Limb(HandPoint.Hip, HandPoint.Shoulder));
        // Between the knee's directions to hip and ankle; which way is forward does not matter, where it is not known the angle is not told either.
        var (cross, dot) = (-thigh.Forward * shank.Up + thigh.Up * shank.Forward, -thigh.Forward * shank.Forward - thigh.Up * shank.Up);
        return new(
            AgainstDown(thigh), AgainstDown(shank), double.RadiansToDegrees(Math.Abs(Math.Atan2(cross, dot))),
            double.RadiansToDegrees(Math.Atan2(foot.Up, foot.Forward)), double.RadiansToDegrees(Math.Atan2(trunk.Forward, trunk.Up)));
    }
}
