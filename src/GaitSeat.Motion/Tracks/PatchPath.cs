using GaitSeat.Model;

namespace GaitSeat.Motion.Tracks;

/// <summary>Adds up the steps of a followed patch. Short holes are bridged by the mean of the steps beside them; after a long one the path starts anew.</summary>
internal static class PatchPath
{
    /// <summary>Steps of the frames of a segment, short holes filled; NaN in long ones. The step into the first frame is 0.</summary>
    public static double[] Steps(ReadOnlySpan<double> stepsPx, ReadOnlySpan<double> seconds, double maxHoleSeconds)
    {
        var steps = stepsPx.ToArray();
        if (steps.Length > 0) steps[0] = 0;
        for (var i = 1; i < steps.Length; i++)
        {
            if (double.IsFinite(steps[i])) continue;
            var next = i;
            while (next < steps.Length && !double.IsFinite(steps[next])) next++;
            var last = Math.Min(next, steps.Length) - 1;
            var shortHole = seconds[last] - seconds[i - 1] <= maxHoleSeconds + 1e-9;
            var before = i > 1 ? steps[i - 1] : double.NaN;
            var after = next < steps.Length ? steps[next] : double.NaN;
            var filled = double.IsNaN(before) ? after : double.IsNaN(after) ? before : (before + after) / 2;
            for (var k = i; k <= last; k++) steps[k] = shortHole ? filled : double.NaN;
            i = last;
        }

        return steps;
    }

    /// <summary>The running sum; NaN at a lost step, from which a new sum starts at 0.</summary>
    public static double[] Sum(ReadOnlySpan<double> steps)
    {
        var path = new double[steps.Length];
        double sum = 0;
        for (var i = 0; i < steps.Length; i++)
        {
            if (double.IsFinite(steps[i])) path[i] = sum += steps[i];
            else
            {
                path[i] = double.NaN;
                sum = 0;
            }
        }

        return path;
    }

    /// <summary>The steps of a patch in the rider plane (forward, up), turned back by the camera's roll.</summary>
    public static (double[] Forward, double[] Up) InRiderPlane(PatchMotion patch, Segment segment, double[] roll, ReadOnlySpan<double> seconds, double maxHoleSeconds)
    {
        var x = Steps(patch.XPx.AsSpan(segment.First, segment.Count), seconds, maxHoleSeconds);
        var y = Steps(patch.YPx.AsSpan(segment.First, segment.Count), seconds, maxHoleSeconds);
        for (var i = 0; i < x.Length; i++)
        {
            var (s, c) = Math.SinCos(-roll[i]);
            (x[i], y[i]) = (segment.Sign * (c * x[i] - s * y[i]), -(s * x[i] + c * y[i]));
        }

        return (x, y);
    }
}
