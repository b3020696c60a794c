using System.Numerics;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Strides;

/// <summary>
/// The lows of a motion that repeats: those of its first harmonic, fitted with the second over about two periods. The first harmonic alone has one
/// low a period whatever else is in the signal; a sum with a second harmonic above a quarter of it has two (closed form of A1 cos p + A2 cos 2p).
/// </summary>
/// <param name="sources">Ways to see the motion; each counts by its own error.</param>
internal sealed class LowPhase(SegmentSignals signals, Smoothed[] sources, double from, double to, double hz)
{
    private const int Harmonics = 2;
    private const double HalfWindowPeriods = 1.1;

    /// <summary>How far past an instant one looks who sees only one side of it, periods: the seat is still down.</summary>
    private const double BeyondPeriods = 0.1;

    /// <summary>Share of samples a source needs inside the window.</summary>
    private const double LeastPresent = 0.8;

    /// <summary>The same, seeing only what lies on one side of an instant: -1 before it, 1 after it.</summary>
    public LowPhase On(int side, double seconds) => side < 0
        ? new(signals, sources, from, Math.Min(to, seconds + BeyondPeriods / hz), hz)
        : new(signals, sources, Math.Max(from, seconds - BeyondPeriods / hz), to, hz);

    /// <summary>The low nearest to an instant; missing where no source can tell.</summary>
    public Sit LowNear(double seconds)
    {
        var period = 1 / hz;
        var low = new Sit(seconds, double.NaN);
        for (var pass = 0; pass < 2; pass++)
        {
            // At an end the window keeps its length and leans inwards: a drift and a harmonic cannot be told apart over one stride.
            var middle = Math.Max(from + HalfWindowPeriods * period, Math.Min(to - HalfWindowPeriods * period, low.Seconds));
            var fits = Fits(Math.Max(from, middle - HalfWindowPeriods * period), Math.Min(to, middle + HalfWindowPeriods * period));
            if (fits.Count == 0) return Sit.Missing;
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
        foreach (var source in sources)
        {
            var values = source.Values.AsSpan(first, last - first + 1);
            var present = 0;
            foreach (var v in values) if (double.IsFinite(v)) present++;
            if (present < LeastPresent * values.Length) continue;
            if (HarmonicFit.Fit(seconds, values, hz, Harmonics, 1) is not { } fit) continue;
            var independent = Math.Max(1, (seconds[^1] - seconds[0]) / source.NoiseSeconds);
            fits.Add((fit, Math.Max(fit.ResidualRms, source.NoiseSd) * Math.Sqrt(2 / independent)));
        }

        return fits;
    }

    /// <summary>The low of the first harmonic nearest to an instant, each fit weighted by its own error. The sources share points: the error is the better one's.</summary>
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
