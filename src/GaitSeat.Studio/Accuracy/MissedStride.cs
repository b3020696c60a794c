using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>A true stride that was not measured.</summary>
/// <param name="Why">The reason the pipeline gave; null where it said nothing.</param>
public sealed record MissedStride(StrideTruth Truth, string? Why, Circumstances Circumstances)
{
    /// <summary>The vocabulary's limit for a hole in a needed point, s.</summary>
    private const double LongestHoleSeconds = 0.12;

    public static MissedStride Of(ClipTruth truth, StrideTruth stride, ClipResult result) =>
        new(stride, Reason(stride, result), Circumstances.Of(truth, stride.SitS, stride.NextSitS));

    private static string? Reason(StrideTruth stride, ClipResult result)
    {
        if (result.SetAside is { } clip) return $"clip: {clip}";
        var tolerance = StrideMatcher.ToleranceShareOfStride * stride.DurationS;
        var dropped = result.LeftOut.Where(l => l.Scope == LeftOutScope.Stride && l.StartSeconds is { } at && at > stride.SitS - tolerance && at < stride.NextSitS - tolerance);
        if (dropped.FirstOrDefault() is { } stridesOwn) return $"stride: {stridesOwn.Reason}";
        if (HoleSeconds(stride, result.Motion.Trace) > LongestHoleSeconds) return "frames left out";
        return CalledUnknown(stride, result.Motion) ? "gait unknown" : null;
    }

    /// <summary>Longest time within the stride without a frame that was followed.</summary>
    private static double HoleSeconds(StrideTruth stride, MotionTrace trace)
    {
        double longest = 0, last = stride.SitS;
        for (var i = 0; i < trace.TimeSeconds.Length; i++)
        {
            var at = trace.TimeSeconds[i];
            if (at < stride.SitS || at > stride.NextSitS || !double.IsFinite(trace.ThighAngleDeg[i])) continue;
            longest = Math.Max(longest, at - last);
            last = at;
        }

        return Math.Max(longest, stride.NextSitS - last);
    }

    private static bool CalledUnknown(StrideTruth stride, ClipMotion motion)
    {
        var middle = (stride.SitS + stride.NextSitS) / 2;
        return motion.Spells.Any(s => s.Gait == Gait.Unknown && middle >= s.StartSeconds && middle <= s.EndSeconds);
    }
}
