using GaitSeat.Model;
using GaitSeat.Motion.Gaits;
using GaitSeat.Motion.Measures;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Strides;

/// <summary>Cuts a spell of rising trot into strides, and says which are dropped and why.</summary>
internal sealed class StrideCutter(StrideSettings settings)
{
    public const string HoleInPoints = "hole_in_points";
    public const string Irregular = "irregular_duration";
    public const string NoRise = "no_rise";

    /// <summary>A stride beyond the spell's border rises at least so much of the spell's usual rise. No source.</summary>
    private const double LeastOfUsualRise = 0.5;

    private readonly SitFinder _sits = new(settings);

    /// <param name="from">How far before the spell strides of the same kind are looked for, s; <paramref name="to"/> the same after it.</param>
    public List<StrideCandidate> Cut(SegmentSignals signals, RawSpell spell, double from, double to)
    {
        var strideHz = spell.BounceHz / 2;
        var sits = _sits.Find(signals, spell.StartSeconds, spell.EndSeconds, from, to, strideHz);
        var strides = new List<StrideCandidate>();
        for (var k = 0; k + 1 < sits.Count; k++)
        {
            if (sits[k].IsMissing) continue;
            var next = k + 1;
            while (next < sits.Count && sits[next].IsMissing) next++;
            if (next == sits.Count) break;
            strides.Add(Judge(signals, sits[k], sits[next], strideHz));
        }

        bool Inside(StrideCandidate s) => s.Start.Seconds >= spell.StartSeconds && s.End.Seconds <= spell.EndSeconds;
        var usual = Robust.Median([.. strides.Where(s => Inside(s) && s.DropReason is null).Select(s => s.Rise)]);
        return strides.FindAll(s => Inside(s) || (s.DropReason is null && s.Rise >= LeastOfUsualRise * usual));
    }

    private StrideCandidate Judge(SegmentSignals signals, Sit start, Sit end, double strideHz)
    {
        var span = new StrideSpan(signals.Grid.PositionOf(start.Seconds), double.NaN, signals.Grid.PositionOf(end.Seconds));
        if (HasHole(signals, span)) return Dropped(HoleInPoints);
        var departure = Math.Abs((end.Seconds - start.Seconds) * strideHz - 1);
        if (departure > settings.MaxDurationDeparture) return Dropped(Irregular);
        var (top, rise) = Top(signals, span);
        if (double.IsNaN(rise)) return Dropped(HoleInPoints);
        if (rise * 100 < settings.MinRisePctLeg) return Dropped(NoRise);
        return new(start, signals.Grid.TimeAt(top), end, rise, null);

        StrideCandidate Dropped(string reason) => new(start, double.NaN, end, double.NaN, reason);
    }

    /// <summary>Hip, knee and ankle are needed, and one of seat over trunk and seat over stirrup; what else is missing leaves its measure empty.</summary>
    private static bool HasHole(SegmentSignals signals, StrideSpan span)
    {
        bool Holed(Smoothed s)
        {
            for (var i = Math.Max(0, (int)Math.Ceiling(span.Sit)); i <= Math.Min(s.Values.Length - 1, (int)span.NextSit); i++)
                if (double.IsNaN(s.Values[i])) return true;
            return false;
        }

        return Holed(signals.Up[(int)BodyPoint.Hip])
            || Holed(signals.Up[(int)BodyPoint.Knee])
            || Holed(signals.Up[(int)BodyPoint.Ankle])
            || (Holed(signals.Seat) && Holed(signals.OverStirrup));
    }

    /// <summary>
    /// The top is where three harmonics of the stride are highest, moved to the turning point of a parabola there: the highest sample itself
    /// would be the one the noise lifts most.
    /// </summary>
    private (double Position, double Rise) Top(SegmentSignals signals, StrideSpan span)
    {
        var half = settings.LevelHalfSpan * span.Length;
        foreach (var source in new[] { signals.Seat, signals.OverStirrup })
        {
            var level = Levels.BetweenSits(source.Values, span, settings.LevelHalfSpan);
            if (StrideHarmonics.Highest(level, span) is not { } highest) continue;
            var top = Levels.TurningPoint(level, highest, half);
            if (Levels.At(level, top, half) is var rise && double.IsFinite(rise)) return (top, rise);
        }

        return (double.NaN, double.NaN);
    }
}
