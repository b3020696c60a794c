using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Gaits;

/// <summary>A window of the vertical signals, thinned: gait needs nothing above 6 Hz. Percent of leg length.</summary>
internal sealed class Stretch
{
    /// <summary>Enough for the highest frequency looked at, 4 Hz, six times over.</summary>
    private const double LeastHz = 24;

    /// <summary>A source counts where this share of it is there.</summary>
    private const double LeastPresent = 0.7;

    private Stretch(double[] seconds, List<Source> sources) => (Seconds, Sources) = (seconds, sources);

    public double[] Seconds { get; }

    public List<Source> Sources { get; }

    /// <summary>One way to see the bounce, with the seat motion that goes with it; null where the rider's points are not there.</summary>
    internal sealed record Source(double[] Bounce, double[]? Seat);

    public static Stretch Of(SegmentSignals signals, double from, double to)
    {
        var first = Math.Max(0, (int)Math.Ceiling(signals.Grid.PositionOf(from) - 1e-6));
        var last = Math.Min(signals.Grid.Count - 1, (int)Math.Floor(signals.Grid.PositionOf(to) + 1e-6));
        var thin = Math.Max(1, (int)(signals.Grid.RateHz / LeastHz));
        var count = Math.Max(0, (last - first) / thin + 1);
        double[] Thinned(double[] values, double factor)
        {
            var taken = new double[count];
            for (var i = 0; i < count; i++) taken[i] = factor * values[first + i * thin];
            return taken;
        }

        var sources = new List<Source>();
        void Add(Smoothed bounce, Smoothed seat)
        {
            var (seenBounce, seenSeat) = (Thinned(bounce.Values, 100), Thinned(seat.Values, 100));
            if (Present(seenBounce) >= LeastPresent) sources.Add(new(seenBounce, Present(seenSeat) >= LeastPresent ? seenSeat : null));
        }

        Add(signals.Bounce, signals.Seat);
        Add(signals.TreadBounce, signals.OverStirrup);
        return new(Thinned(signals.Seconds, 1), sources);
    }

    private static double Present(double[] values) =>
        values.Length == 0 ? 0 : values.Count(double.IsFinite) / (double)values.Length;

    public double TotalSquares(double[] values)
    {
        // A frequency of 0 adds two columns that fix nothing: fit the trend alone.
        return HarmonicFit.Fit(Seconds, values, 0, 0, 2)?.ResidualSumSquares ?? 0;
    }
}
