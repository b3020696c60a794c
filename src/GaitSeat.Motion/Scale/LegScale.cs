using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Scale;

/// <summary>Centimetres in one leg length (thigh plus shank as they show in the picture).</summary>
/// <param name="CmPerLeg">NaN where the rider's size is not known.</param>
/// <param name="RelativeSe">Its standard error over itself: sources, people, tape and joint centres.</param>
internal readonly record struct LegScale(double CmPerLeg, double RelativeSe)
{
    public static LegScale Unknown => new(double.NaN, double.NaN);

    public bool IsUnknown => double.IsNaN(CmPerLeg);

    /// <summary>
    /// A taped lower leg is used alone: it hangs in the picture plane. Without it, stature through the shank and through trunk plus thigh
    /// (where an error in the hip's height cancels), and a taped thigh, weighted by their errors.
    /// </summary>
    public static LegScale From(BodyLengths lengths, IReadOnlyList<BodySize> sizes, MotionSettings settings)
    {
        if (lengths.IsUnknown || sizes.Count == 0) return Unknown;
        var shank = Robust.Median([.. sizes.SelectMany(s => s.ShankOfLeg)]);
        var thigh = Robust.Median([.. sizes.SelectMany(s => s.ThighOfLeg)]);
        var trunk = Robust.Median([.. sizes.SelectMany(s => s.TrunkOfLeg)]);
        var s = settings.Scale;
        var joint = settings.Uncertainty;
        var shankJoints = Norm(joint.KneeBiasPctLeg, joint.AnkleBiasPctLeg) / 100 / shank;
        if (lengths.LowerLegCm is { } lowerLeg) return new(lowerLeg / shank, Norm(s.TapeRelativeSe, shankJoints));

        var abduction = double.DegreesToRadians(s.ThighAbductionDeg);
        var abductionSe = Math.Tan(abduction) * double.DegreesToRadians(s.ThighAbductionSeDeg);
        var ways = new List<(double Cm, double Se)>();
        if (lengths.ThighCm is { } thighCm)
        {
            var thighJoints = Norm(joint.HipBiasPctLeg, joint.KneeBiasPctLeg) / 100 / thigh;
            ways.Add((thighCm * Math.Cos(abduction) / thigh, Norm(s.TapeRelativeSe, abductionSe, thighJoints)));
        }

        if (lengths.StatureCm is { } stature)
        {
            ways.Add((stature * s.ShankOfStature / shank, Norm(s.ShankOfStatureRelativeSe, shankJoints)));
            var thighShown = s.ThighOfStature * Math.Cos(abduction);
            var upper = s.TrunkOfStature + thighShown;
            var upperSe = Norm(
                s.TrunkOfStature * s.TrunkOfStatureRelativeSe / upper,
                thighShown * s.ThighOfStatureRelativeSe / upper,
                thighShown * abductionSe / upper,
                Norm(joint.KneeBiasPctLeg, joint.ShoulderBiasPctLeg) / 100 / (trunk + thigh));
            ways.Add((stature * upper / (trunk + thigh), upperSe));
        }

        return Weighted(ways.Where(w => double.IsFinite(w.Cm) && w.Cm > 0));
    }

    private static LegScale Weighted(IEnumerable<(double Cm, double Se)> ways)
    {
        double weights = 0, logs = 0;
        foreach (var (cm, se) in ways)
        {
            var weight = 1 / Math.Max(1e-8, se * se);
            weights += weight;
            logs += weight * Math.Log(cm);
        }

        return weights == 0 ? Unknown : new(Math.Exp(logs / weights), 1 / Math.Sqrt(weights));
    }

    private static double Norm(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (var p in parts) sum += p * p;
        return Math.Sqrt(sum);
    }
}
