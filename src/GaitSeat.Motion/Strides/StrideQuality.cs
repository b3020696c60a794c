using GaitSeat.Model;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Strides;

/// <summary>The words that tell how much care a stride needs, and how sure its boundaries are.</summary>
internal static class StrideQuality
{
    /// <summary>A sit uncertain by this share of a stride halves the confidence or so.</summary>
    private const double SitSeOfStride = 0.06;

    public static string Of(SegmentSignals signals, StrideCandidate stride, MeasureSet measures, LegScale scale, MotionSettings settings)
    {
        var q = settings.Quality;
        var words = new List<string>();
        if (scale.IsUnknown) words.Add("no_scale");
        else if (scale.RelativeSe > q.MaxScaleRelativeSe) words.Add("scale_uncertain");
        var (rise, over) = (measures[StrideMeasure.RiseHeightPctLeg], measures[StrideMeasure.OverStirrupRisePctLeg]);
        if (rise.IsMissing) words.Add("no_trunk");
        if (over.IsMissing) words.Add("no_foot");
        if (Math.Abs(rise.Value - over.Value) > q.MaxRiseDisagreement * Math.Max(rise.Value, over.Value)) words.Add("trunk_and_stirrup_disagree");
        var turned = measures[StrideMeasure.ViewYaw].Value > q.TurnedDeg;
        if (turned) words.Add("turned");
        var height = measures[StrideMeasure.RiderHeight].Value;
        // Either alone is in the standard errors; of a small rider who is turned as well too little is seen for them to hold.
        if (height < q.UntrustedRiderPx || (turned && height < q.SmallRiderPx)) words.Add(Stride.UntrustedPrefix + "small_rider");
        else if (height < q.SmallRiderPx) words.Add("small_rider");
        if (signals.FollowedShare(stride.Start.Seconds, stride.End.Seconds) < q.LeastFollowedShare) words.Add(Stride.UntrustedPrefix + "points");
        var frames = signals.Segment.Count / (signals.Grid.EndSeconds - signals.Grid.StartSeconds) * stride.Seconds;
        if (frames < q.LeastFramesAStride) words.Add("few_frames");
        return words.Count == 0 ? "good" : string.Join('+', words);
    }

    public static double Confidence(StrideCandidate stride, double spell)
    {
        var share = Math.Max(stride.Start.Se, stride.End.Se) / stride.Seconds / SitSeOfStride;
        return Math.Clamp(spell * Math.Exp(-share * share / 2), 0, 1);
    }
}
