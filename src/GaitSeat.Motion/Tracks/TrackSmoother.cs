using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>From raw values at frame times to a smooth signal on the even grid: bridges short holes by a spline, filters each run on its own.</summary>
internal sealed class TrackSmoother(double[] seconds, EvenGrid grid, double maxHoleSeconds, SmoothingSettings settings)
{
    private readonly double _step = EvenGrid.MedianStep(seconds);

    public EvenGrid Grid => grid;

    public Smoothed Smooth(ReadOnlySpan<double> raw)
    {
        if (raw.Length != seconds.Length) throw new ArgumentException($"raw has {raw.Length} entries; expected {seconds.Length}.", nameof(raw));
        var values = Smoothed.Missing(grid.Count).Values;
        double residual = 0, cutoffs = 0;
        var knots = 0;
        foreach (var (times, run) in Runs(raw))
        {
            if (run.Length < Spline.MinKnots) continue;
            var onGrid = new double[grid.Count];
            Spline.OnGrid(times, run, grid, onGrid);
            var (from, to) = Spline.Inside(times, grid);
            if (to - from < 3) continue;
            var span = onGrid.AsSpan(from, to - from + 1);
            var cutoff = ResidualAnalysis.Cutoff(span, grid.RateHz, 1 / _step, settings.MinCutoffHz, settings.MaxCutoffHz);
            JerkSmoother.Smooth(span, grid.RateHz, cutoff).CopyTo(values.AsSpan(from));
            residual += SquaredResidual(times, run, values);
            cutoffs += cutoff * run.Length;
            knots += run.Length;
        }

        return knots == 0 ? Smoothed.Missing(grid.Count) : WithNoise(values, Math.Sqrt(residual / knots), cutoffs / knots);
    }

    /// <summary>
    /// The residual shows the noise the filter took; of white noise it leaves the share of its band. Model errors hang together,
    /// so more of them passes than of white noise: the span of the noise is never taken shorter than the setting says.
    /// </summary>
    private Smoothed WithNoise(double[] values, double residualRms, double cutoffHz)
    {
        const double mostPassed = 0.8;
        var band = JerkSmoother.NoiseBandwidthOverCutoff * cutoffHz;
        var passed = Math.Min(mostPassed, band * 2 * _step);
        return new(values, residualRms * Math.Sqrt(passed / (1 - passed)), Math.Max(1 / (2 * band), settings.NoiseTogetherSeconds));
    }

    private double SquaredResidual(double[] times, double[] run, double[] smooth)
    {
        double sum = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var difference = run[i] - Sample.At(smooth, grid.PositionOf(times[i]));
            if (double.IsFinite(difference)) sum += difference * difference;
        }

        return sum;
    }

    private List<(double[] Seconds, double[] Values)> Runs(ReadOnlySpan<double> raw)
    {
        var runs = new List<(double[], double[])>();
        var times = new List<double>();
        var values = new List<double>();
        void Close()
        {
            if (times.Count > 0) runs.Add(([.. times], [.. values]));
            times.Clear();
            values.Clear();
        }

        for (var i = 0; i < raw.Length; i++)
        {
            if (!double.IsFinite(raw[i])) continue;
            if (times.Count > 0 && seconds[i] - times[^1] > maxHoleSeconds + 1.5 * _step) Close();
            times.Add(seconds[i]);
            values.Add(raw[i]);
        }

        Close();
        return runs;
    }
}
