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

    /// <summary>Share of samples a source needs inside the window.</summary>
    private const double LeastPresent = 0.8;

    /// <summary>The low nearest to an instant; NaN where neither source can tell.</summary>
    public double LowNear(double seconds)
    {
        var period = 1 / strideHz;
        var low = seconds;
        for (var pass = 0; pass < 2; pass++)
        {
            // At an end the window keeps its length and leans inwards: a drift and a harmonic cannot be told apart over one stride.
            var middle = Math.Max(from + HalfWindowStrides * period, Math.Min(to - HalfWindowStrides * period, low));
            var fits = Fits(Math.Max(from, middle - HalfWindowStrides * period), Math.Min(to, middle + HalfWindowStrides * period));
            if (fits.Count == 0) return double.NaN;
            low = Lowest(fits, low, period);
        }

        return low;
    }

    private List<HarmonicFit> Fits(double start, double end)
    {
        var first = Math.Max(0, (int)Math.Ceiling(signals.Grid.PositionOf(start)));
        var last = Math.Min(signals.Grid.Count - 1, (int)Math.Floor(signals.Grid.PositionOf(end)));
        var fits = new List<HarmonicFit>();
        if (last <= first) return fits;
        var seconds = signals.Seconds.AsSpan(first, last - first + 1);
        foreach (var source in new[] { signals.Seat, signals.OverStirrup })
        {
            var values = source.Values.AsSpan(first, last - first + 1);
            var present = 0;
            foreach (var v in values) if (double.IsFinite(v)) present++;
            if (present < LeastPresent * values.Length) continue;
            if (HarmonicFit.Fit(seconds, values, strideHz, Harmonics, 1) is { } fit) fits.Add(fit);
        }

        return fits;
    }

    /// <summary>The low of the first harmonic nearest to an instant, each fit weighted by its amplitude over its residual.</summary>
    private static double Lowest(List<HarmonicFit> fits, double near, double period)
    {
        var sum = Complex.Zero;
        foreach (var fit in fits)
        {
            var first = fit.Amplitude[0] * Complex.FromPolarCoordinates(1, 2 * Math.PI * fit.FrequencyHz * (fit.CentreSeconds - near));
            sum += first / (fit.ResidualRms * fit.ResidualRms + 1e-8);
        }

        // a cos + b sin is lowest half a turn from the angle of a + i b.
        var turn = Complex.Negate(sum).Phase / (2 * Math.PI);
        return near + turn * period;
    }
}
