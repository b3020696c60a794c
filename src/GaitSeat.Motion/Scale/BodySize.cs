using GaitSeat.Model;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Scale;

/// <summary>
/// The rider's size in the picture, frame by frame of one segment. The slow course comes from shank and trunk, which stay in the picture plane;
/// the thigh stands out sideways round the horse, so that a small turn of the rider changes its length in the picture.
/// </summary>
/// <param name="LegPx">Thigh plus shank, slow, px.</param>
/// <param name="ShankOfLeg">Raw shank length over <paramref name="LegPx"/>; NaN where not seen.</param>
/// <param name="ThighOfLeg">The same of the thigh.</param>
/// <param name="TrunkOfLeg">The same of hip to shoulder.</param>
internal sealed record BodySize(double[] LegPx, double[] ShankOfLeg, double[] ThighOfLeg, double[] TrunkOfLeg)
{
    /// <returns>Null where hip, knee and ankle were never seen together.</returns>
    public static BodySize? Of(ReadOnlySpan<double> seconds, PlanePoints points, ScaleSettings settings)
    {
        var thigh = points.Distance(BodyPoint.Hip, BodyPoint.Knee);
        var shank = points.Distance(BodyPoint.Knee, BodyPoint.Ankle);
        var trunk = points.Distance(BodyPoint.Hip, BodyPoint.Shoulder);
        var leg = Robust.Median(thigh) + Robust.Median(shank);
        if (!(leg > 0)) return null;
        var slow = SlowLine.Through(seconds, Relative(shank, trunk), settings.SizeWindowSeconds);
        for (var i = 0; i < slow.Length; i++) slow[i] *= leg;
        return new(slow, Over(shank, slow), Over(thigh, slow), Over(trunk, slow));
    }

    private static double[] Relative(double[] shank, double[] trunk)
    {
        var shankMedian = Robust.Median(shank);
        var trunkMedian = Robust.Median(trunk);
        var size = new double[shank.Length];
        for (var i = 0; i < size.Length; i++) size[i] = Robust.Mean([shank[i] / shankMedian, trunk[i] / trunkMedian]);
        return size;
    }

    private static double[] Over(double[] length, double[] leg)
    {
        var ratio = new double[length.Length];
        for (var i = 0; i < ratio.Length; i++) ratio[i] = length[i] / leg[i];
        return ratio;
    }
}
