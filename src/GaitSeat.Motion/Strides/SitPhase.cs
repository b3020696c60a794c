using System.Numerics;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Strides;

/// <summary>
/// Rough sit instants: the low of the first harmonic of the seat motion, fitted with the second over about two strides. The first harmonic alone has one
/// low a stride whatever else is in the signal; a sum with a second harmonic above a quarter of it has two (closed form of A1 cos p + A2 cos 2p).
/// </summary>
internal sealed class SitPhase(SegmentSignals signals, double from, double to, double strideHz)
{
    private const int Harmonics = 2;
    private const double HalfWindowStrides = 1.1;

    /// <summary>How far past an instant one looks who sees only one side of it, strides: the seat is still down.</summary>
    private const double BeyondStrides = 0.1;

    /// <summary>Share of samples a source needs inside the window.</summary>
    private const double LeastPresent = 0.8;

    /// <summary>The same, seeing only what lies on one side of an instant: -1 before it, 1 after it.</summary>
    public SitPhase On(int side, double seconds) => side < 0
        ? new(signals, from, Math.Min(to, seconds + BeyondStrides / strideHz), strideHz)
        : new(signals, Math.Max(from, seconds - BeyondStrides / strideHz), to, strideHz);

    /// <summary>The low nearest to an instant; missing where neither source can tell.</summary>
    public Sit LowNear(double seconds)
    {
        var period = 1 / strideHz;
        var low = new Sit(seconds, double.NaN);
        for (var pass = 0; pass < 2; pass++)
        {
            // At an end the window keeps its length and leans inwards: a drift and a harmonic cannot be told apart over one stride.
            var middle = Math.Max(from + HalfWindowStrides * period, Math.Min(to - HalfWindowStrides * period, low.Seconds));
            var fits = Fits(Math.Max(from, middle - HalfWindowStrides * period), Math.Min(to, middle + HalfWindowStrides * period));
            if (fits.Count == 0) return new(double.NaN, double.NaN);
            low = Lowest(fits, low.Seconds, period);
        }

        return low;
    }

    private List<(HarmonicFit Fit, double AmplitudeSe)> Fits(double start, double end)
    {
        var first = Math.Max(0, (int)Math.Ceiling(signals.Grid.PositionOf(start)));
        var last = Math.Min(signals.Grid.Count - 1, (int)Math.Floor(signals.Grid.PositionOf(end)));
        var fits = new List<(HarmonicFit, double)>();
        if (last <= first) return fits;
        var seconds = signals.Seconds.AsSpan(first, last - first + 1);
        foreach (var source in new[] { signals.Seat, signals.OverStirrup })
        {
            var values = source.Values.AsSpan(first, last - first + 1);
            var present = 0;
            foreach (var v in values) if (double.IsFinite(v)) present++;
            if (present < LeastPresent * values.Length) continue;
            if (HarmonicFit.Fit(seconds, values, strideHz, Harmonics, 1) is not { } fit) continue;
            var independent = Math.Max(1, (seconds[^1] - seconds[0]) / source.NoiseSeconds);
            fits.Add((fit, Math.Max(fit.ResidualRms, source.NoiseSd) * Math.Sqrt(2 / independent)));
        }

        return fits;
    }

    /// <summary>The low of the first harmonic nearest to an instant, each fit weighted by its own error. Both share the hip: the error is the better one's.</summary>
    private static Sit Lowest(List<(HarmonicFit Fit, double AmplitudeSe)> fits, double near, double period)
    {
        var sum = Complex.Zero;
        var phaseSe = double.MaxValue;
        foreach (var (fit, se) in fits)
        {
            var first = fit.Amplitude[0] * Complex.FromPolarCoordinates(1, 2 * Math.PI * fit.FrequencyHz * (fit.CentreSeconds - near));
            sum += first / (se * se + 1e-8);
            phaseSe = Math.Min(phaseSe, se / first.Magnitude);
        }

        // a cos + b sin is lowest half a turn from the angle of a + i b.
        var turn = Complex.Negate(sum).Phase / (2 * Math.PI);
        return new(near + turn * period, phaseSe / (2 * Math.PI) * period);
    }
}
