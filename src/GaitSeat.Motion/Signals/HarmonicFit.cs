using System.Numerics;

namespace GaitSeat.Motion.Signals;

/// <summary>
/// A trend (polynomial) and the harmonics of one frequency fitted to a stretch of signal by least squares: a spectrum for stretches
/// too short for Fourier bins. Harmonic k is <c>Re(Amplitude[k-1] * exp(-i k w (t - CentreSeconds)))</c> = a cos + b sin with Amplitude = a + i b.
/// </summary>
internal sealed record HarmonicFit(double FrequencyHz, double CentreSeconds, Complex[] Amplitude, double[] Trend, double ResidualSumSquares, int Count)
{
    /// <summary>Null where fewer finite samples than unknowns are there.</summary>
    /// <param name="trendOrder">0 a constant, 1 a line, 2 a parabola.</param>
    public static HarmonicFit? Fit(ReadOnlySpan<double> seconds, ReadOnlySpan<double> values, double frequencyHz, int harmonics, int trendOrder)
    {
        if (seconds.Length != values.Length) throw new ArgumentException($"seconds has {seconds.Length} entries, values {values.Length}.", nameof(values));
        if (seconds.Length == 0) return null;
        var centre = (seconds[0] + seconds[^1]) / 2;
        var half = Math.Max(1e-6, (seconds[^1] - seconds[0]) / 2);
        var unknowns = trendOrder + 1 + 2 * harmonics;
        var squares = new LeastSquares(unknowns);
        Span<double> row = stackalloc double[unknowns];
        for (var i = 0; i < seconds.Length; i++)
        {
            if (!double.IsFinite(values[i])) continue;
            var t = seconds[i] - centre;
            var power = 1.0;
            for (var k = 0; k <= trendOrder; k++, power *= t / half) row[k] = power;
            for (var h = 1; h <= harmonics; h++)
                (row[trendOrder + 2 * h], row[trendOrder + 2 * h - 1]) = Math.SinCos(2 * Math.PI * h * frequencyHz * t);
            squares.Add(row, values[i]);
        }

        if (squares.Solve() is not { } solved) return null;
        var amplitude = new Complex[harmonics];
        for (var h = 0; h < harmonics; h++)
            amplitude[h] = new(solved.Solution[trendOrder + 1 + 2 * h], solved.Solution[trendOrder + 2 + 2 * h]);
        return new(frequencyHz, centre, amplitude, solved.Solution[..(trendOrder + 1)], solved.ResidualSumSquares, squares.Count);
    }

    /// <summary>The harmonics alone at an instant.</summary>
    public double PeriodicAt(double seconds)
    {
        double sum = 0;
        for (var h = 0; h < Amplitude.Length; h++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * (h + 1) * FrequencyHz * (seconds - CentreSeconds));
            sum += Amplitude[h].Real * c + Amplitude[h].Imaginary * s;
        }

        return sum;
    }

    public double ResidualRms => Math.Sqrt(ResidualSumSquares / Math.Max(1, Count - Trend.Length - 2 * Amplitude.Length));
}
