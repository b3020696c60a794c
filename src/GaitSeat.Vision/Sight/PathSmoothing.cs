using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Steadies the boxes of a track, so that a crop neither bounces with the rider nor loses the legs when a single box does.</summary>
public static class PathSmoothing
{
    /// <summary>
    /// Place (middle of the head end) by a straight line fitted over a window, size by the median of a longer window. Null entries stay null.
    /// </summary>
    /// <param name="time">Times, s.</param>
    /// <param name="raw">Boxes as found, null where missed.</param>
    public static BoxPx?[] Smooth(double[] time, BoxPx?[] raw, ScoutSettings settings)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(raw);
        ArgumentNullException.ThrowIfNull(settings);
        var smooth = new BoxPx?[raw.Length];
        for (var i = 0; i < raw.Length; i++)
        {
            if (raw[i] is null) continue;
            var wide = Around(time, raw, i, settings.SizeWindowSeconds / 2);
            var near = Around(time, raw, i, settings.PlaceWindowSeconds / 2);
            double width = Median(wide, b => b.Width), height = Median(wide, b => b.Height);
            double x = Line(time, raw, near, time[i], b => b.Centre.X), y = Line(time, raw, near, time[i], b => b.Y);
            smooth[i] = new(x - width / 2, y, width, height);
        }

        return smooth;

        double Median(List<int> at, Func<BoxPx, double> of)
        {
            var v = at.Select(k => of(raw[k]!.Value)).Order().ToArray();
            return (v[(v.Length - 1) / 2] + v[v.Length / 2]) / 2;
        }
    }

    private static List<int> Around(double[] time, BoxPx?[] raw, int centre, double halfSeconds)
    {
        const double Slack = 1e-6;
        var found = new List<int>();
        for (var k = 0; k < raw.Length; k++)
            if (raw[k] is not null && Math.Abs(time[k] - time[centre]) <= halfSeconds + Slack) found.Add(k);
        return found;
    }

    private static double Line(double[] time, BoxPx?[] raw, List<int> at, double when, Func<BoxPx, double> of)
    {
        double meanT = at.Average(k => time[k]), meanV = at.Average(k => of(raw[k]!.Value));
        double up = 0, down = 0;
        foreach (var k in at)
        {
            var dt = time[k] - meanT;
            up += dt * (of(raw[k]!.Value) - meanV);
            down += dt * dt;
        }

        return down <= 0 ? meanV : meanV + up / down * (when - meanT);
    }
}
