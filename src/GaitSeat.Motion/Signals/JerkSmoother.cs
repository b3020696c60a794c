namespace GaitSeat.Motion.Signals;

/// <summary>
/// Smooths an even run without lag: of all courses that stay near the samples the one whose jerk is least, sum (y - x)² + L sum (third difference of x)². That is the Kalman smoother
/// (Rauch, Tung and Striebel) of a body moved by white jerk, solved at once for all samples (a smoother of Whittaker's kind; Eilers 2003, Anal Chem 75:3631, from memory).
/// Away from the ends its gain is 1 / (1 + (s(f) / s(c))^6) with s(f) = 2 sin(pi f / rate): a half at the cut-off c. Parabolas pass unchanged, to the very ends.
/// </summary>
internal static class JerkSmoother
{
    /// <summary>Third differences reach over so many samples to either side.</summary>
    private const int Band = 3;

    /// <summary>Bandwidth of the ideal filter that passes as much white noise, over the cut-off: the integral of 1 / (1 + u^6)² is 5/6 (pi / 6) / sin(pi / 6).</summary>
    public const double NoiseBandwidthOverCutoff = 5.0 / 6 * (Math.PI / 6) / 0.5;

    public static double Gain(double frequencyHz, double cutoffHz, double rateHz) =>
        1 / (1 + Math.Pow(Math.Sin(Math.PI * frequencyHz / rateHz) / Math.Sin(Math.PI * cutoffHz / rateHz), 6));

    /// <param name="run">Unbroken finite samples.</param>
    /// <exception cref="ArgumentException">The cut-off is not between 0 and half the rate.</exception>
    public static double[] Smooth(ReadOnlySpan<double> run, double rateHz, double cutoffHz)
    {
        if (!(cutoffHz > 0 && cutoffHz < rateHz / 2))
            throw new ArgumentException($"A cut-off of {cutoffHz} Hz needs a rate above {2 * cutoffHz} Hz; the signal has {rateHz:F1} Hz.", nameof(cutoffHz));
        var x = run.ToArray();
        if (x.Length <= Band) return x;
        var factor = Factor(x.Length, Math.Pow(2 * Math.Sin(Math.PI * cutoffHz / rateHz), -6));
        for (var i = 0; i < x.Length; i++)
        {
            for (var k = 1; k <= Math.Min(Band, i); k++) x[i] -= factor[i, k] * x[i - k];
            x[i] /= factor[i, 0];
        }

        for (var i = x.Length - 1; i >= 0; i--)
        {
            for (var k = 1; k <= Math.Min(Band, x.Length - 1 - i); k++) x[i] -= factor[i + k, k] * x[i + k];
            x[i] /= factor[i, 0];
        }

        return x;
    }

    /// <summary>Cholesky factor of 1 + weight D'D with D the third differences; column k holds the k-th place left of the diagonal.</summary>
    private static double[,] Factor(int count, double weight)
    {
        ReadOnlySpan<double> third = [-1, 3, -3, 1];
        var factor = new double[count, Band + 1];
        for (var i = 0; i < count; i++) factor[i, 0] = 1;
        for (var row = 0; row + Band < count; row++)
            for (var i = 0; i <= Band; i++)
                for (var k = 0; k <= i; k++) factor[row + i, k] += weight * third[i] * third[i - k];
        for (var i = 0; i < count; i++)
        {
            for (var k = Math.Min(Band, i); k >= 0; k--)
            {
                var sum = factor[i, k];
                for (var m = k + 1; m <= Math.Min(Band, i); m++) sum -= factor[i, m] * factor[i - k, m - k];
                factor[i, k] = k == 0 ? Math.Sqrt(sum) : sum / factor[i - k, 0];
            }
        }

        return factor;
    }
}
