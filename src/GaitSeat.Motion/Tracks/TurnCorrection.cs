using GaitSeat.Model;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>
/// Takes the view yaw out of the near leg. Knee and foot stand out round the horse, nearer to the camera than the hip by some D; a turn f moves them
/// by D sin f against the hip along the picture (x' = x cos f - D sin f, + coming nearer), which is 4 deg of thigh at f = 8 deg. The change of f along a stretch shows as a
/// change of the thigh's length in the picture, whatever D is; the eyes see it too, from near and far shoulder and hip, and they alone see its mean.
/// </summary>
internal sealed class TurnCorrection(ScaleSettings settings)
{
    public static IReadOnlyList<BodyPoint> NearLeg { get; } = [BodyPoint.Knee, BodyPoint.Ankle, BodyPoint.Heel, BodyPoint.Toe];

    /// <summary>Below this share of a leg ahead of the hip the knee's length says nothing of a turn: a thigh within 20 deg of straight down.</summary>
    private const double LeastAhead = 0.15;

    /// <summary>Moves the near leg forward to where it would be seen side-on.</summary>
    /// <param name="turnDeg">The eyes' signed turn per frame, + turned away from the camera; empty or NaN where unknown.</param>
    /// <returns>By how much, legs, per frame.</returns>
    public double[] Apply(ReadOnlySpan<double> seconds, PlanePoints points, BodySize size, ReadOnlySpan<double> turnDeg)
    {
        var shift = Shift(seconds, points, size, turnDeg);
        foreach (var point in NearLeg)
        {
            var forward = points.ForwardPx[(int)point];
            for (var i = 0; i < forward.Length; i++) forward[i] += shift[i] * size.LegPx[i];
        }

        return shift;
    }

    private double[] Shift(ReadOnlySpan<double> seconds, PlanePoints points, BodySize size, ReadOnlySpan<double> turnDeg)
    {
        var sideways = Robust.Median(size.ThighOfLeg) * Math.Tan(double.DegreesToRadians(settings.ThighAbductionDeg));
        var mean = -sideways * settings.MeanTurnGain * Math.Sin(double.DegreesToRadians(Robust.Median(turnDeg)));
        var most = sideways * Math.Sin(double.DegreesToRadians(settings.LargestTurnDeg));
        var ahead = Ahead(points, size);
        var change = Change(seconds, size.ThighOfLeg, ahead);
        if (SeenChange(seconds, turnDeg) is { } seen)
            for (var i = 0; i < change.Length; i++) change[i] = (change[i] - sideways * settings.TurnChangeGain * seen[i]) / 2;
        var shift = new double[change.Length];
        for (var i = 0; i < shift.Length; i++) shift[i] = Math.Clamp(change[i] + (double.IsNaN(mean) ? 0 : mean), -most, most);
        return shift;
    }

    /// <summary>A thigh of fixed length R in the rider's plane shows (x' + d)^2 + y^2 = R^2: the slow course of its length gives d(t), with mean zero.</summary>
    private double[] Change(ReadOnlySpan<double> seconds, double[] thigh, double[] ahead)
    {
        var change = new double[thigh.Length];
        var middle = Robust.Median(ahead);
        if (!(middle > LeastAhead)) return change;
        var squared = Array.ConvertAll(thigh, l => l * l);
        if (double.IsNaN(Robust.Median(squared))) return change;
        var slow = SlowLine.Through(seconds, squared, settings.SizeWindowSeconds);
        var mean = Robust.Mean(slow);
        for (var i = 0; i < change.Length; i++) change[i] = (mean - slow[i]) / (2 * middle);
        return change;
    }

    /// <summary>Change of the turn's sine along the stretch as the eyes see it, mean zero; null where they see none.</summary>
    private double[]? SeenChange(ReadOnlySpan<double> seconds, ReadOnlySpan<double> turnDeg)
    {
        var seen = new double[turnDeg.Length];
        for (var i = 0; i < seen.Length; i++) seen[i] = 1 + Math.Sin(double.DegreesToRadians(turnDeg[i]));
        if (seen.Count(double.IsFinite) * 2 <= seen.Length) return null;
        var slow = SlowLine.Through(seconds, seen, settings.SizeWindowSeconds);
        var mean = Robust.Mean(slow);
        return Array.ConvertAll(slow, s => s - mean);
    }

    private static double[] Ahead(PlanePoints points, BodySize size)
    {
        var ahead = new double[size.LegPx.Length];
        for (var i = 0; i < ahead.Length; i++)
            ahead[i] = (points.ForwardPx[(int)BodyPoint.Knee][i] - points.ForwardPx[(int)BodyPoint.Hip][i]) / size.LegPx[i];
        return ahead;
    }
}
