namespace GaitSeat.Motion.Signals;

/// <summary>
/// Low-pass of 4th order without lag: a 2nd-order Butterworth forward and backward. Two passes square the gain, so each pass is designed at
/// cut-off / (sqrt 2 - 1)^(1/4) = cut-off / 0.8022 to be 3 dB down at the cut-off itself (standard result, Winter 2009 from memory; exact).
/// </summary>
internal static class Butterworth
{
    /// <summary>(sqrt 2 - 1)^(1/4).</summary>
    public static readonly double TwoPassFactor = Math.Pow(Math.Sqrt(2) - 1, 0.25);

    /// <summary>Bandwidth of the ideal filter that passes as much white noise, over the cut-off: (3/4)(pi / (2 sqrt 2)) / 0.8022, the integral of the squared gain.</summary>
    public static readonly double NoiseBandwidthOverCutoff = 0.75 * Math.PI / (2 * Math.Sqrt(2)) / TwoPassFactor;

    /// <summary>The gain of the analogue filter at a frequency: 1 / (1 + (f / fp)^4).</summary>
    public static double Gain(double frequencyHz, double cutoffHz) =>
        1 / (1 + Math.Pow(frequencyHz / (cutoffHz / TwoPassFactor), 4));

    /// <summary>Filters an unbroken run of finite samples. Ends are continued by point reflection, so that a ramp stays a ramp.</summary>
    /// <exception cref="ArgumentException">The corrected cut-off reaches 0.9 of half the rate.</exception>
    public static double[] LowPass(ReadOnlySpan<double> run, double rateHz, double cutoffHz)
    {
        var pass = cutoffHz / TwoPassFactor;
        if (!(pass > 0 && pass < 0.45 * rateHz))
            throw new ArgumentException($"A cut-off of {cutoffHz} Hz needs a rate above {pass / 0.45:F1} Hz; the signal has {rateHz:F1} Hz.", nameof(cutoffHz));
        if (run.Length < 3) return run.ToArray();

        // Two time constants of the lowest pole pair settle to below 1e-4 of a step within one period of the cut-off.
        var pad = Math.Min(run.Length - 1, (int)Math.Ceiling(2 * rateHz / cutoffHz));
        var padded = Reflected(run, pad);
        Pass(padded, rateHz, pass);
        Array.Reverse(padded);
        Pass(padded, rateHz, pass);
        Array.Reverse(padded);
        return padded.AsSpan(pad, run.Length).ToArray();
    }

    private static double[] Reflected(ReadOnlySpan<double> run, int pad)
    {
        var padded = new double[run.Length + 2 * pad];
        run.CopyTo(padded.AsSpan(pad));
        for (var k = 1; k <= pad; k++)
        {
            padded[pad - k] = 2 * run[0] - run[k];
            padded[pad + run.Length - 1 + k] = 2 * run[^1] - run[^(k + 1)];
        }

        return padded;
    }

    private static void Pass(double[] x, double rateHz, double cutoffHz)
    {
        // Bilinear transform, pre-warped at the cut-off.
        var w = Math.Tan(Math.PI * cutoffHz / rateHz);
        var norm = 1 + Math.Sqrt(2) * w + w * w;
        double b0 = w * w / norm, b1 = 2 * b0, b2 = b0;
        double a1 = 2 * (w * w - 1) / norm, a2 = (1 - Math.Sqrt(2) * w + w * w) / norm;

        // Start settled on the first value.
        double x1 = x[0], x2 = x[0], y1 = x[0], y2 = x[0];
        for (var i = 0; i < x.Length; i++)
        {
            var y = b0 * x[i] + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
            (x2, x1) = (x1, x[i]);
            (y2, y1) = (y1, y);
            x[i] = y;
        }
    }
}
