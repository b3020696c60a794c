using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>How the seat moves over the saddle within a stride.</summary>
internal static class SeatMotion
{
    /// <summary>Share of the stride on the saddle in rising trot; 0.40 to 0.50 is common practice, no source.</summary>
    public const double SeatedShare = 0.44;

    /// <summary>How deep the seat sinks into the saddle at the sit, m: the lowest point is then one instant, not a plateau.</summary>
    public const double SinkM = 0.004;

    /// <summary>0 on the saddle, 1 at the top; smooth.</summary>
    public static double Lift(double phase)
    {
        var into = (phase - SeatedShare / 2) / (1 - SeatedShare);
        if (into is <= 0 or >= 1) return 0;
        var sin = Math.Sin(Math.PI * into);
        return sin * sin;
    }

    /// <summary>Seat over the unloaded saddle, m, for a rising stride of this rise height.</summary>
    public static double Rising(double phase, double riseM)
    {
        var fromSit = phase > 0.5 ? 1 - phase : phase;
        var sink = fromSit < SeatedShare / 2 ? Math.Cos(Math.PI * fromSit / SeatedShare) : 0;
        return Math.Max(0, riseM - SinkM) * Lift(phase) - Math.Min(SinkM, riseM) * sink * sink;
    }

    /// <summary>
    /// Seat over the saddle where it stays on it, m: the seat follows with a small motion at the beat of the gait.
    /// Peak to peak 1.8 cm sitting trot, 0.6 cm walk, 1.6 cm canter (no source).
    /// </summary>
    public static double Following(Gait gait, double phase) => gait switch
    {
        Gait.SittingTrot => 0.009 * Math.Cos(4 * Math.PI * (phase - 0.22)),
        Gait.Walk => 0.003 * Math.Cos(4 * Math.PI * (phase - 0.10)),
        Gait.Canter => 0.008 * Math.Cos(2 * Math.PI * (phase - 0.55)),
        _ => 0,
    };

    /// <summary>Slide of the seat along the saddle, m, + forward: large in canter, where the pelvis follows the roll of the back.</summary>
    public static double Slide(Gait gait, double phase) => gait switch
    {
        Gait.Canter => 0.018 * Math.Sin(2 * Math.PI * (phase - 0.05)),
        Gait.Walk => 0.008 * Math.Sin(4 * Math.PI * phase),
        Gait.SittingTrot => 0.006 * Math.Sin(4 * Math.PI * phase),
        _ => 0,
    };

    /// <summary>Change of trunk lean over the stride, deg, zero at the sit: the rider leans further to rise.</summary>
    public static double LeanChangeDeg(Gait gait, double phase) => gait switch
    {
        Gait.RisingTrot => 4.5 * Lift(phase),
        Gait.Canter => 3 * Math.Sin(2 * Math.PI * phase),
        Gait.Walk => 0.9 * Math.Sin(4 * Math.PI * phase),
        Gait.SittingTrot => 0.8 * Math.Sin(4 * Math.PI * phase),
        _ => 0,
    };
}
