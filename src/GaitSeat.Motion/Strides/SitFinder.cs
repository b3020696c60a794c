using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Strides;

/// <summary>All sit instants of a spell of rising trot: stepped from stride to stride by phase, then placed by the flanks.</summary>
internal sealed class SitFinder(StrideSettings settings)
{
    /// <summary>Spread of true sits about an even phase is taken no smaller than this, s: within a horse durations vary by 2 % (Drevemo 1980).</summary>
    private const double LeastSpreadSeconds = 0.005;

    public List<Sit> Find(SegmentSignals signals, double from, double to, double strideHz)
    {
        var rough = Rough(signals, from, to, strideHz);
        return Rhythm.Steady(Placed(signals, rough, 1 / strideHz), 1 / strideHz, settings.RhythmSpreadShare);
    }

    private static List<Sit> Rough(SegmentSignals signals, double from, double to, double strideHz)
    {
        var phase = new SitPhase(signals, from, to, strideHz);
        var seed = phase.LowNear((from + to) / 2);
        if (seed.IsMissing) seed = seed with { Seconds = (from + to) / 2 };
        var sits = new List<Sit> { seed };
        for (var direction = -1; direction <= 1; direction += 2)
        {
            var period = 1 / strideHz;
            var last = seed.Seconds;
            var expected = last + direction * period;
            while (expected >= from - period / 4 && expected <= to + period / 4)
            {
                var low = phase.LowNear(Math.Clamp(expected, from, to));
                var found = !low.IsMissing && Math.Abs(low.Seconds - expected) < period / 3;
                sits.Add(found ? low : new(double.NaN, double.NaN));
                if (found) period = 0.7 * period + 0.3 * Math.Clamp(Math.Abs(low.Seconds - last), 0.75 / strideHz, 1.33 / strideHz);
                last = found ? low.Seconds : expected;
                expected = last + direction * period;
            }

            if (direction < 0) sits.Reverse();
        }

        return sits.FindAll(s => s.IsMissing || (s.Seconds >= from && s.Seconds <= to));
    }

    private List<Sit> Placed(SegmentSignals signals, List<Sit> rough, double period)
    {
        var flanks = rough.ConvertAll(r => r.IsMissing ? r : ByFlanks(signals, r.Seconds, period));
        var offsets = rough.Zip(flanks, (r, f) => f.Seconds - r.Seconds).ToArray();
        var offset = Robust.Median(offsets);
        if (double.IsNaN(offset)) offset = 0;
        var spread = Spread(offsets, offset, flanks);
        return [.. rough.Zip(flanks, (r, f) => Blend(r.Seconds + offset, Math.Max(spread, r.Se), f))];
    }

    /// <summary>What the sits truly scatter about the phase: the scatter seen less what the flanks' own error explains.</summary>
    private static double Spread(double[] offsets, double offset, List<Sit> flanks)
    {
        var seen = Robust.Sigma(offsets, offset);
        var own = Robust.Median([.. flanks.Select(f => f.Se)]);
        var square = seen * seen - own * own;
        return Math.Sqrt(Math.Max(LeastSpreadSeconds * LeastSpreadSeconds, double.IsFinite(square) ? square : 0));
    }

    private Sit ByFlanks(SegmentSignals signals, double near, double period)
    {
        var seat = SitFlanks.Read(signals, signals.Seat, near, period, settings.SitLevelShare);
        var stirrup = SitFlanks.Read(signals, signals.OverStirrup, near, period, settings.SitLevelShare);
        if (seat.IsMissing) return stirrup;
        if (stirrup.IsMissing) return seat;
        double a = 1 / (seat.Se * seat.Se + 1e-10), b = 1 / (stirrup.Se * stirrup.Se + 1e-10);

        // Both share the hip's noise: the error of the mean is taken as that of the better one.
        return new((a * seat.Seconds + b * stirrup.Seconds) / (a + b), Math.Min(seat.Se, stirrup.Se));
    }

    private static Sit Blend(double byPhase, double spread, Sit flanks)
    {
        if (double.IsNaN(byPhase)) return new(double.NaN, double.NaN);
        if (flanks.IsMissing) return new(byPhase, spread);
        double a = spread * spread, b = flanks.Se * flanks.Se;
        var weight = a / (a + b);
        return new(byPhase + weight * (flanks.Seconds - byPhase), Math.Sqrt(a * b / (a + b)));
    }
}
