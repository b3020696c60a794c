using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Strides;

/// <summary>
/// A sit instant from the two flanks of one signal: half way between the fall and the rise through a low share of the rise. It is the middle of the
/// seated phase, does not wander on a flat seat, and for a symmetric low it is the lowest point itself.
/// </summary>
internal static class SitFlanks
{
    /// <summary>How far the tops on either side are looked for, strides.</summary>
    private const double Reach = 0.75;

    /// <summary>Half width of the span whose mean is the sit's level, strides.</summary>
    private const double BottomHalf = 0.06;

    /// <summary>The lower of the two tops reaches at least this share of the higher: neighbouring rises differ by a few percent, drift by some more. No source.</summary>
    private const double LeastTopShare = 0.6;

    public static Sit Read(SegmentSignals signals, Smoothed source, double near, double period, double levelShare)
    {
        var values = source.Values;
        var centre = signals.Grid.PositionOf(near);
        var reach = Reach * period * signals.Grid.RateHz;
        var half = BottomHalf * period * signals.Grid.RateHz;
        var bottom = Sample.Mean(values, Math.Max(0, centre - half), Math.Min(values.Length - 1, centre + half));
        var left = Peak(values, centre, -reach);
        var right = Peak(values, centre, reach);
        if (double.IsNaN(bottom) || left < 0 || right < 0) return Sit.Missing;

        // Beside the end of a stretch the highest sample may lie on the way up and be no top: then the other top alone sets the height.
        bool leftIsTop = IsTop(values, left), rightIsTop = IsTop(values, right);
        if (!leftIsTop && !rightIsTop) return Sit.Missing;
        var (lower, higher) = values[left] < values[right] ? (left, right) : (right, left);
        if (leftIsTop && rightIsTop && values[lower] - bottom < LeastTopShare * (values[higher] - bottom)) return Sit.Missing;

        // A straight line between the tops takes slow drift out of both flanks alike.
        var drift = leftIsTop && rightIsTop ? (values[right] - values[left]) / (right - left) : 0;
        double Level(int i) => values[i] - drift * (i - centre);
        var height = levelShare * (Level(rightIsTop ? right : left) - bottom);
        if (!(height > 0)) return Sit.Missing;
        var fall = Crossing(Level, bottom + height, (int)Math.Round(centre), -1, left);
        var rise = Crossing(Level, bottom + height, (int)Math.Round(centre), 1, right);
        if (double.IsNaN(fall.Position) || double.IsNaN(rise.Position)) return Sit.Missing;
        var slope = (fall.Slope + rise.Slope) / 2 * signals.Grid.RateHz;
        return new(signals.Grid.TimeAt((fall.Position + rise.Position) / 2), source.NoiseSd / slope / Math.Sqrt(2));
    }

    private static bool IsTop(double[] values, int at) =>
        at > 0 && at < values.Length - 1 && values[at] >= values[at - 1] && values[at] >= values[at + 1];

    private static int Peak(double[] values, double centre, double reach)
    {
        var direction = Math.Sign(reach);
        var at = (int)Math.Round(centre);
        var best = -1;
        for (var i = at; Math.Abs(i - centre) <= Math.Abs(reach); i += direction)
        {
            if (i < 0 || i >= values.Length) break;
            if (double.IsNaN(values[i])) return -1;
            if (best < 0 || values[i] > values[best]) best = i;
        }

        return best == at ? -1 : best;
    }

    private static (double Position, double Slope) Crossing(Func<int, double> level, double height, int from, int direction, int limit)
    {
        for (var i = from; i != limit; i += direction)
        {
            double here = level(i), next = level(i + direction);
            if (here <= height && next > height) return (i + direction * (height - here) / (next - here), next - here);
        }

        return (double.NaN, double.NaN);
    }
}
