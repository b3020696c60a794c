using GaitSeat.Model;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>
/// Takes the view yaw out of the near leg. Knee and foot stand out round the horse, nearer to the camera than the hip by some D; a turn f moves them
/// by D sin f against the hip along the picture (x' = x cos f - D sin f, + coming nearer), which is 4 deg of thigh at f = 8 deg. The change of f along a stretch shows as a
/// change of the thigh's length in the picture, whatever D is; its mean shows in how far near and far shoulder and hip stand apart.
/// </summary>
internal sealed class TurnCorrection(ScaleSettings settings)
{
    private static readonly BodyPoint[] NearLeg = [BodyPoint.Knee, BodyPoint.Ankle, BodyPoint.Heel, BodyPoint.Toe];

    /// <summary>Below this share of a leg ahead of the hip the knee's length says nothing of a turn: a thigh within 20 deg of straight down.</summary>
    private const double LeastAhead = 0.15;

    /// <summary>Moves the near leg forward to where it would be seen side-on.</summary>
    public void Apply(ReadOnlySpan<double> seconds, PlanePoints points, BodySize size)
    {
        var shift = Shift(seconds, points, size);
        foreach (var point in NearLeg)
        {
            var forward = points.ForwardPx[(int)point];
            for (var i = 0; i < forward.Length; i++) forward[i] += shift[i] * size.LegPx[i];
        }
    }

    /// <returns>Legs, per frame.</returns>
    public double[] Shift(ReadOnlySpan<double> seconds, PlanePoints points, BodySize size)
    {
        var sideways = Robust.Median(size.ThighOfLeg) * Math.Tan(double.DegreesToRadians(settings.ThighAbductionDeg));
        var mean = sideways * settings.MeanTurnGain * MeanSine(points);
        var most = sideways * Math.Sin(double.DegreesToRadians(settings.LargestTurnDeg));
        var ahead = Ahead(points, size);
        var change = Change(seconds, size.ThighOfLeg, ahead);
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

    private static double[] Ahead(PlanePoints points, BodySize size)
    {
        var ahead = new double[size.LegPx.Length];
        for (var i = 0; i < ahead.Length; i++)
            ahead[i] = (points.ForwardPx[(int)BodyPoint.Knee][i] - points.ForwardPx[(int)BodyPoint.Hip][i]) / size.LegPx[i];
        return ahead;
    }

    /// <summary>Sine of the mean turn, + coming nearer: then the far shoulder and hip stand ahead of the near ones.</summary>
    private double MeanSine(PlanePoints points)
    {
        var trunk = points.Distance(BodyPoint.Hip, BodyPoint.Shoulder);
        var sine = new double[trunk.Length];
        double[][] x = points.ForwardPx;
        for (var i = 0; i < sine.Length; i++)
        {
            var apart = x[(int)BodyPoint.FarShoulder][i] - x[(int)BodyPoint.Shoulder][i] + x[(int)BodyPoint.FarHip][i] - x[(int)BodyPoint.Hip][i];
            sine[i] = apart / (settings.BreadthsOverTrunk * trunk[i]);
        }

        return Math.Clamp(Robust.Median(sine), -1, 1);
    }
}
