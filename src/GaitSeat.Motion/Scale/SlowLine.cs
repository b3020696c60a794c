using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Scale;

/// <summary>A slow course through scattered values about 1: a straight line fitted around each instant, wild values left out.</summary>
internal static class SlowLine
{
    private const double OutlierSigmas = 3;

    public static double[] Through(ReadOnlySpan<double> seconds, double[] values, double windowSeconds)
    {
        var centre = Robust.Median(values);
        var sigma = Robust.Sigma(values, centre);

        // A zoom moves the size far from its median: judge against that no tighter than a quarter.
        var limit = Math.Max(0.25 * centre, OutlierSigmas * sigma);
        var slow = new double[values.Length];
        int from = 0, to = 0;
        for (var i = 0; i < slow.Length; i++)
        {
            while (seconds[from] < seconds[i] - windowSeconds) from++;
            while (to < slow.Length && seconds[to] <= seconds[i] + windowSeconds) to++;
            slow[i] = At(seconds, values, from, to, seconds[i], windowSeconds, centre, limit);
        }

        return slow;
    }

    private static double At(ReadOnlySpan<double> seconds, double[] values, int from, int to, double at, double window, double centre, double limit)
    {
        var squares = new LeastSquares(2);
        Span<double> row = stackalloc double[2];
        for (var k = from; k < to; k++)
        {
            if (!(Math.Abs(values[k] - centre) <= limit)) continue;
            var u = (seconds[k] - at) / window;
            var weight = 1 - u * u;
            row[0] = weight;
            row[1] = weight * u;
            squares.Add(row, weight * values[k]);
        }

        return squares.Solve() is { } line && line.Solution[0] > 0 ? line.Solution[0] : centre;
    }
}
