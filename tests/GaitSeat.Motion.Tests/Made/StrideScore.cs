using GaitSeat.Model;

namespace GaitSeat.Motion.Tests.Made;

/// <summary>Strides found against strides made. A made stride counts where both its sits lie in the film.</summary>
internal sealed record StrideScore(int True, int Found, int Matched, double WorstSitMs, double WorstTopMs, double WorstRiseCm, double WorstThighDeg, double WorstSwingCm)
{
    private const double MatchSeconds = 0.04;

    public static StrideScore Of(ClipMotion motion, MadeRider rider, double from, double to)
    {
        var sits = rider.Sits(from, to).ToArray();
        var matched = 0;
        double sit = 0, top = 0, rise = 0, thigh = 0, swing = 0;
        foreach (var stride in motion.Strides)
        {
            var k = Array.FindIndex(sits, s => Math.Abs(s - stride.StartSeconds) < MatchSeconds);
            if (k < 0 || k + 1 >= sits.Length || Math.Abs(sits[k + 1] - stride.EndSeconds) > MatchSeconds) continue;
            matched++;
            sit = Math.Max(sit, 1000 * Math.Max(Math.Abs(sits[k] - stride.StartSeconds), Math.Abs(sits[k + 1] - stride.EndSeconds)));
            top = Math.Max(top, 1000 * Math.Abs(sits[k] + 0.5 / rider.StrideHz - stride.TopSeconds));
            rise = Math.Max(rise, Math.Abs(rider.RiseCm - stride.Measures[StrideMeasure.RiseHeightCm].Value));
            thigh = Math.Max(thigh, Math.Abs(ThighAt(rider, sits[k]) - stride.Measures[StrideMeasure.ThighAngleSit].Value));
            swing = Math.Max(swing, Math.Abs(rider.SwingCm - stride.Measures[StrideMeasure.StirrupDriftSwingCm].Value));
        }

        return new(sits.Length - 1, motion.Strides.Count, matched, sit, top, rise, thigh, swing);
    }

    /// <summary>Mean over 5 % of the stride on either side, as defined.</summary>
    public static double ThighAt(MadeRider rider, double seconds) =>
        Enumerable.Range(-20, 41).Average(k => rider.ThighDeg(seconds + 0.05 * k / 20 / rider.StrideHz));
}
