namespace GaitSeat.Motion.Signals;

/// <summary>
/// Winter's residual analysis: the residual of the smoother against its cut-off is a straight line where only noise is left;
/// that line read at 0 Hz is the noise, and the cut-off is where the residual equals it (Winter 2009 ch. 3, from memory).
/// </summary>
internal static class ResidualAnalysis
{
    private const double StepHz = 1;

    /// <summary>Runs longer than this are judged by their middle, s: more would not change the choice.</summary>
    private const double LongestSeconds = 20;

    /// <param name="run">Unbroken samples on the even grid.</param>
    /// <param name="frameRateHz">Rate of the frames behind the grid: above half of it there is nothing to see.</param>
    public static double Cutoff(ReadOnlySpan<double> run, double rateHz, double frameRateHz, double minHz, double maxHz)
    {
        var top = Math.Min(0.45 * frameRateHz, 0.35 * rateHz);
        if (top <= minHz) return minHz;
        var longest = (int)(LongestSeconds * rateHz);
        if (run.Length > longest) run = run.Slice((run.Length - longest) / 2, longest);
        var bottom = Math.Min(minHz, 4);
        var count = (int)((top - bottom) / StepHz) + 1;
        var residual = new double[count];
        for (var k = 0; k < count; k++) residual[k] = Residual(run, rateHz, bottom + k * StepHz);

        // The noise line is fitted to the upper part, at least three points of it.
        var from = Math.Min(count - 3, Math.Max((int)((maxHz - bottom) / StepHz), count / 2));
        if (from < 0) return Math.Min(maxHz, top);
        var noise = Intercept(residual, bottom, from);
        for (var k = 0; k < count; k++)
        {
            var hz = bottom + k * StepHz;
            if (hz >= minHz && residual[k] <= noise) return Math.Min(hz, maxHz);
        }

        return maxHz;
    }

    private static double Residual(ReadOnlySpan<double> run, double rateHz, double cutoffHz)
    {
        var smooth = JerkSmoother.Smooth(run, rateHz, cutoffHz);
        for (var i = 0; i < smooth.Length; i++) smooth[i] -= run[i];
        return Robust.RootMeanSquare(smooth);
    }

    private static double Intercept(double[] residual, double bottomHz, int from)
    {
        double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
        for (var k = from; k < residual.Length; k++)
        {
            var x = bottomHz + k * StepHz;
            n++;
            sx += x;
            sy += residual[k];
            sxx += x * x;
            sxy += x * residual[k];
        }

        var slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
        return (sy - slope * sx) / n;
    }
}
