using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Strides;

/// <summary>All sit instants of a spell of rising trot: stepped from stride to stride by phase, then placed by the flanks.</summary>
internal sealed class SitFinder(StrideSettings settings)
{
    /// <summary>Spread of true sits about an even phase is taken no smaller than this, s: within a horse durations vary by 2 % (Drevemo 1980).</summary>
    private const double LeastSpreadSeconds = 0.005;

    /// <summary>Where the beat breaks the low is anywhere: an instant known no better than to this share of a stride is none. No source.</summary>
    private const double LargestSe = 0.125;

    /// <param name="from">Start of the spell, s; <paramref name="to"/> its end.</param>
    /// <param name="reachFrom">How far before the spell sits may be found that go on at its beat; <paramref name="reachTo"/> the same after it.</param>
    public List<Sit> Find(SegmentSignals signals, double from, double to, double reachFrom, double reachTo, double strideHz)
    {
        var rough = Rough(signals, from, to, strideHz);
        GoOn(rough, Lows(signals, reachFrom, reachTo, strideHz), reachFrom, reachTo, 1 / strideHz);
        var sits = Placed(signals, rough, 1 / strideHz);
        var beats = BounceClock.Beats(sits, new(signals, [signals.Bounce, signals.TreadBounce], from, to, 2 * strideHz));
        return Rhythm.Steady(sits, beats, 1 / strideHz, settings.RhythmSpreadShare);
    }

    /// <summary>From the last sit on, and from the first one back, as long as the next is where it is expected by what lies on the spell's side of it.</summary>
    private static void GoOn(List<Sit> sits, LowPhase phase, double reachFrom, double reachTo, double period)
    {
        for (var direction = -1; direction <= 1; direction += 2)
        {
            while (sits.Count > 0 && (direction < 0 ? sits[0] : sits[^1]) is { IsMissing: false } edge)
            {
                var expected = edge.Seconds + direction * period;
                if (expected < reachFrom || expected > reachTo) break;
                if (Continued(phase, direction, expected, period) is not { IsMissing: false } low) break;
                sits.Insert(direction < 0 ? 0 : sits.Count, low);
            }
        }
    }

    private static List<Sit> Rough(SegmentSignals signals, double from, double to, double strideHz)
    {
        var phase = Lows(signals, from, to, strideHz);
        var seed = Clearest(phase, from, to, 1 / strideHz);
        var sits = new List<Sit> { seed };
        for (var direction = -1; direction <= 1; direction += 2)
        {
            var period = 1 / strideHz;
            var last = seed.Seconds;
            var expected = last + direction * period;
            while (expected >= from - period / 4 && expected <= to + period / 4)
            {
                // After a sit that was not where it was expected the count begins anew: a second sit turns the beat about, so that the next comes half a stride sooner.
                var near = Math.Clamp(sits[^1].IsMissing ? expected - direction * period / 2 : expected, from, to);
                var low = IfNear(phase.LowNear(near), near, (sits[^1].IsMissing ? 1.0 / 2 : 1.0 / 3) * period, LargestSe * period);
                if (low.IsMissing && !sits[^1].IsMissing) low = Continued(phase, direction, expected, period);
                if (!low.IsMissing && !sits[^1].IsMissing) period = 0.7 * period + 0.3 * Math.Clamp(Math.Abs(low.Seconds - last), 0.75 / strideHz, 1.33 / strideHz);
                sits.Add(low);
                last = low.IsMissing ? expected : low.Seconds;
                expected = last + direction * period;
            }

            if (direction < 0) sits.Reverse();
        }

        for (var k = 0; k < sits.Count; k++)
            if (OneSided(sits, k, phase) is { IsMissing: false } low) sits[k] = low;
        return sits.FindAll(s => s.IsMissing || (s.Seconds >= from && s.Seconds <= to));
    }

    /// <summary>The well known low nearest the middle of the spell: counting begins there, and not where a beat may break.</summary>
    private static Sit Clearest(LowPhase phase, double from, double to, double period)
    {
        var middle = (from + to) / 2;
        var reach = (int)((to - from) / 2 / period);
        var lows = Enumerable.Range(-reach, 2 * reach + 1).Select(k => phase.LowNear(middle + k * period)).Where(l => !l.IsMissing).ToArray();
        if (lows.Length == 0) return new(middle, double.NaN);
        var wellKnown = 2 * lows.Min(l => l.Se);
        return lows.Where(l => l.Se <= wellKnown).MinBy(l => Math.Abs(l.Seconds - middle));
    }

    private static LowPhase Lows(SegmentSignals signals, double from, double to, double strideHz) => new(signals, [signals.Seat, signals.OverStirrup], from, to, strideHz);

    /// <summary>The next sit in a direction by what lies on this side of it alone, since the beat may break just beyond; missing where it is not where it is expected.</summary>
    private static Sit Continued(LowPhase phase, int direction, double expected, double period) =>
        IfNear(phase.On(-direction, expected).LowNear(expected), expected, period / 6, LargestSe / 2 * period);

    private static Sit IfNear(Sit low, double expected, double reach, double largestSe) =>
        !low.IsMissing && Math.Abs(low.Seconds - expected) < reach && low.Se < largestSe ? low : Sit.Missing;

    /// <summary>Beside a sit that was missed the beat may break: there only the other side tells. Null where nothing is missed, or on both sides.</summary>
    private static Sit? OneSided(List<Sit> sits, int k, LowPhase phase) => (Breaks(sits, k - 1), Breaks(sits, k + 1)) switch
    {
        _ when sits[k].IsMissing => null,
        (true, false) => phase.On(1, sits[k].Seconds).LowNear(sits[k].Seconds),
        (false, true) => phase.On(-1, sits[k].Seconds).LowNear(sits[k].Seconds),
        _ => null,
    };

    private static bool Breaks(List<Sit> sits, int k) => k >= 0 && k < sits.Count && sits[k].IsMissing;

    private List<Sit> Placed(SegmentSignals signals, List<Sit> rough, double period)
    {
        // The middle between two flanks is the sit only where both belong to the same beat.
        var flanks = rough.Select((r, k) => r.IsMissing || Breaks(rough, k - 1) || Breaks(rough, k + 1) ? Sit.Missing : ByFlanks(signals, r.Seconds, period)).ToList();
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
        if (double.IsNaN(byPhase)) return Sit.Missing;
        if (flanks.IsMissing) return new(byPhase, spread);
        double a = spread * spread, b = flanks.Se * flanks.Se;
        var weight = a / (a + b);
        return new(byPhase + weight * (flanks.Seconds - byPhase), Math.Sqrt(a * b / (a + b)));
    }
}
