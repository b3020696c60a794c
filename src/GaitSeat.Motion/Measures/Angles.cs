namespace GaitSeat.Motion.Measures;

/// <summary>Angles in the rider plane from forward and up components, deg; signs as in the vocabulary.</summary>
internal static class Angles
{
    /// <summary>A limb from its upper to its lower end against straight down, + lower end forward.</summary>
    public static double AgainstDown(double forward, double up) => double.RadiansToDegrees(Math.Atan2(forward, -up));

    /// <summary>A limb from its lower to its upper end against straight up, + upper end forward.</summary>
    public static double AgainstUp(double forward, double up) => double.RadiansToDegrees(Math.Atan2(forward, up));

    /// <summary>Heel to toe against horizontal, + toe above heel.</summary>
    public static double AgainstHorizontal(double forward, double up) => double.RadiansToDegrees(Math.Atan2(up, forward));

    /// <summary>Interior angle at a joint between the directions to its two neighbours, 0 to 180.</summary>
    public static double Between(double forwardA, double upA, double forwardB, double upB) =>
        double.RadiansToDegrees(Math.Abs(Math.Atan2(forwardA * upB - upA * forwardB, forwardA * forwardB + upA * upB)));
}
