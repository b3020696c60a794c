using System.Numerics;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Gaits;

/// <summary>Reads the evidence of one gait window: the bounce by a scan of frequencies, the seat motion at half of it.</summary>
internal static class WindowReader
{
    private const double ScanFromHz = 1.1;
    private const double ScanToHz = 4.0;
    private const double ScanStepHz = 0.05;

    /// <summary>Noise hangs together over about this long after smoothing at 6 to 10 Hz, s: it sets how many independent values a window has.</summary>
    private const double IndependentSeconds = 0.15;

    /// <param name="seatFrom">The seat motion is read over a longer window: a small rise must stand out of the points' noise.</param>
    public static WindowEvidence? Read(SegmentSignals signals, double from, double to, double seatFrom, double seatTo)
    {
        var stretch = Stretch.Of(signals, from, to);
        if (stretch.Sources.Count == 0) return null;
        var totals = stretch.Sources.Select(s => stretch.TotalSquares(s.Bounce)).ToArray();
        var (hz, periodicity) = BestFrequency(stretch, totals);

        double amplitude = 0, half = 0;
        foreach (var source in stretch.Sources)
        {
            // Half the frequency and the frequency itself together, so that neither borrows from the other.
            if (HarmonicFit.Fit(stretch.Seconds, source.Bounce, hz / 2, 2, 2) is not { } bounce) return null;
            amplitude += bounce.Amplitude[1].Magnitude / stretch.Sources.Count;
            half += bounce.Amplitude[0].Magnitude / stretch.Sources.Count;
        }

        // A second sit turns the beat of the seat about: the longer window would see two halves that cancel.
        var near = Rise(Rises(stretch, hz));
        var wide = Rise(Rises(Stretch.Of(signals, seatFrom, seatTo), hz));
        var (rise, se) = Clearer(near, wide) ?? (double.NaN, double.NaN);
        return new(from, to, hz, amplitude, periodicity, half / Math.Max(1e-9, amplitude), rise, se, signals.SpeedLegsPerSecond(from, to));
    }

    private static List<(Complex Amplitude, double Se)> Rises(Stretch stretch, double bounceHz)
    {
        var rises = new List<(Complex Amplitude, double Se)>();
        foreach (var source in stretch.Sources)
        {
            if (source.Seat is null || HarmonicFit.Fit(stretch.Seconds, source.Seat, bounceHz / 2, 2, 2) is not { } seat) continue;
            var independent = Math.Max(1, (stretch.Seconds[^1] - stretch.Seconds[0]) / IndependentSeconds);
            rises.Add((seat.Amplitude[0], seat.ResidualRms * Math.Sqrt(2 / independent)));
        }

        return rises;
    }

    private static (double Size, double Se)? Clearer((double Size, double Se)? a, (double Size, double Se)? b) =>
        a is not { } one ? b : b is not { } other ? a : one.Size / one.Se >= other.Size / other.Se ? a : b;

    private static (double Hz, double Periodicity) BestFrequency(Stretch stretch, double[] totals)
    {
        double best = 0, bestHz = ScanFromHz;
        void Try(double hz)
        {
            double explained = 0;
            for (var k = 0; k < totals.Length; k++)
            {
                if (totals[k] <= 0 || HarmonicFit.Fit(stretch.Seconds, stretch.Sources[k].Bounce, hz, 1, 2) is not { } fit) continue;
                explained += (1 - fit.ResidualSumSquares / totals[k]) / totals.Length;
            }

            if (explained > best) (best, bestHz) = (explained, hz);
        }

        for (var hz = ScanFromHz; hz <= ScanToHz; hz += ScanStepHz) Try(hz);
        var coarse = bestHz;
        for (var k = -4; k <= 4; k++) Try(coarse + k * ScanStepHz / 5);
        return (bestHz, best);
    }

    /// <summary>
    /// Over trunk and over stirrup should show one and the same rise. Each counts by its precision, so that a clear one is not held back by a
    /// poor one; where they disagree by more than their errors, the mean is as uncertain as the disagreement says (Birge 1932, Phys Rev 40:207).
    /// Where each alone shows a rise, it is one, however they differ: then the one that shows it less clearly stands for both.
    /// </summary>
    private static (double Size, double Se)? Rise(List<(Complex Amplitude, double Se)> rises)
    {
        if (rises.Count == 0) return null;
        var weights = rises.Select(r => 1 / Math.Max(1e-12, r.Se * r.Se)).ToArray();
        var total = weights.Sum();
        var mean = rises.Zip(weights, (r, w) => r.Amplitude * w).Aggregate(Complex.Zero, (a, b) => a + b) / total;
        // Cosine and sine of each rise but the mean's are free.
        var free = Math.Max(1, 2 * (rises.Count - 1));
        var disagreement = rises.Zip(weights, (r, w) => w * Math.Pow((r.Amplitude - mean).Magnitude, 2)).Sum() / free;
        var weaker = rises.Select(r => (Size: r.Amplitude.Magnitude, r.Se)).MinBy(r => r.Size / r.Se);
        return Clearer((mean.Magnitude, Math.Sqrt(Math.Max(1, disagreement) / total)), weaker);
    }
}
