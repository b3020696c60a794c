namespace GaitSeat.Motion.Signals;

/// <summary>Evenly spaced instants; sample i is at <c>StartSeconds + i * StepSeconds</c>.</summary>
internal readonly record struct EvenGrid(double StartSeconds, double StepSeconds, int Count)
{
    public double RateHz => 1 / StepSeconds;

    public double EndSeconds => TimeAt(Count - 1);

    public double TimeAt(double position) => StartSeconds + position * StepSeconds;

    public double PositionOf(double seconds) => (seconds - StartSeconds) / StepSeconds;

    /// <summary>
    /// A grid over frame times whose rate is the least whole multiple of the median frame rate that reaches <paramref name="minRateHz"/>:
    /// at an even frame rate every frame falls on a sample.
    /// </summary>
    public static EvenGrid Over(ReadOnlySpan<double> seconds, double minRateHz)
    {
        if (seconds.Length < 2) return new(seconds.Length == 0 ? 0 : seconds[0], 1 / minRateHz, seconds.Length);
        var step = MedianStep(seconds);
        var span = seconds[^1] - seconds[0];
        var frames = Math.Max(1, (int)Math.Round(span / step));
        var perFrame = Math.Max(1, (int)Math.Ceiling(minRateHz * step - 1e-9));
        return new(seconds[0], span / (frames * perFrame), frames * perFrame + 1);
    }

    public static double MedianStep(ReadOnlySpan<double> seconds)
    {
        if (seconds.Length < 2) return double.NaN;
        var steps = new double[seconds.Length - 1];
        for (var i = 0; i < steps.Length; i++) steps[i] = seconds[i + 1] - seconds[i];
        return Robust.Median(steps);
    }
}
