using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Where the horse's trunk is: the saddle's seat above ground, its turn, and its surge along the way.</summary>
internal readonly record struct TrunkState(double SeatUpM, double PitchDeg, double SurgeM, double BounceM);

internal static class TrunkMotion
{
    /// <summary>Height of the saddle's seat over the ground, mean over the stride, on a horse of the drawn height, m.</summary>
    public const double SeatHeightM = 1.50;

    /// <summary>Lowest trunk this far after the middle of stance, share of a stride.</summary>
    private const double Lag = 0.05;

    public static TrunkState At(ClipScript script, GaitMix mix, StrideMoment moment)
    {
        var a = Of(script, mix.A, moment);
        if (mix.IsPure) return a;
        var (b, s) = (Of(script, mix.B, moment), mix.ShareB);
        return new(a.SeatUpM + s * (b.SeatUpM - a.SeatUpM), a.PitchDeg + s * (b.PitchDeg - a.PitchDeg), a.SurgeM + s * (b.SurgeM - a.SurgeM), a.BounceM + s * (b.BounceM - a.BounceM));
    }

    private static TrunkState Of(ClipScript script, Gait gait, StrideMoment moment)
    {
        var beat = GaitDefaults.BouncesPerStride(gait) * 2 * Math.PI * (moment.HorsePhase - Lag);
        var half = script.BounceCmOf(gait) / 200;
        var bounce = gait == Gait.RisingTrot
            // The sitting half is a little deeper than the standing half: Persson-Sjodin 2018 finds the trunk uneven in rising trot; 5 % is our choice.
            ? -half * (0.975 * Math.Cos(beat) + 0.025 * Math.Cos(2 * Math.PI * (moment.Phase - Lag)))
            : -half * Math.Cos(beat);
        return new(SeatHeightM * script.HorseScale + bounce, PitchDeg(gait, beat), SurgeM(gait, beat), bounce);
    }

    /// <summary>Turn of the trunk, deg, + head end up: canter rolls by several degrees, trot and walk hardly (no source).</summary>
    private static double PitchDeg(Gait gait, double beat) => gait switch
    {
        Gait.Canter => 4.5 * Math.Sin(beat),
        Gait.Walk => 0.8 * Math.Sin(beat),
        Gait.RisingTrot or Gait.SittingTrot => 0.7 * Math.Sin(beat),
        _ => 0,
    };

    /// <summary>Fore and aft surge; trot 17 mm peak to peak for the trunk: Buchner 2000 (13 mm of the centre of mass, 24 % smaller).</summary>
    private static double SurgeM(Gait gait, double beat) => gait switch
    {
        Gait.RisingTrot or Gait.SittingTrot => 0.0085 * Math.Sin(beat),
        Gait.Canter => 0.03 * Math.Sin(beat),
        Gait.Walk => 0.012 * Math.Sin(beat),
        _ => 0,
    };
}
