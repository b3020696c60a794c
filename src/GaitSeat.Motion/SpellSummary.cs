using GaitSeat.Model;
using GaitSeat.Motion.Gaits;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Strides;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion;

/// <summary>What is said of a spell as a whole.</summary>
internal static class SpellSummary
{
    private const int LeastForSlope = 3;

    public static Spell Of(int number, RawSpell raw, SegmentSignals signals, List<StrideCandidate> cut, LegScale scale, MotionSettings settings)
    {
        var kept = cut.FindAll(s => s.DropReason is null);
        var bouncePct = 2 * raw.BouncePct;
        return new(
            number,
            raw.Gait,
            signals.Segment.Facing,
            raw.StartSeconds,
            raw.EndSeconds,
            raw.Confidence,
            raw.BounceHz,
            bouncePct / 100 * scale.CmPerLeg,
            bouncePct,
            kept.Count,
            cut.Count - kept.Count,
            Creep(signals, cut, scale, settings),
            Regularity(kept));
    }

    /// <summary>Slope of the tread's forward position over the sits. Drift of the trunk anchor is in it: its error is that of the line alone.</summary>
    private static Measured Creep(SegmentSignals signals, List<StrideCandidate> cut, LegScale scale, MotionSettings settings)
    {
        if (scale.IsUnknown) return Measured.Missing;
        var squares = new LeastSquares(2);
        double sx = 0, sxx = 0;
        for (var k = 0; k < cut.Count; k++)
        {
            var half = settings.Stride.AngleHalfSpan * cut[k].Seconds / signals.Grid.StepSeconds;
            var at = signals.Grid.PositionOf(cut[k].Start.Seconds);
            var tread = Sample.Mean(signals.TreadInTrunk.Values, at - half, at + half);
            if (!double.IsFinite(tread)) continue;
            squares.Add([1, k], tread * scale.CmPerLeg);
            sx += k;
            sxx += k * (double)k;
        }

        if (squares.Count < LeastForSlope || squares.Solve() is not { } line) return Measured.Missing;
        var variance = line.ResidualSumSquares / (squares.Count - 2);
        var se = Math.Sqrt(variance / (sxx - sx * sx / squares.Count));
        return new(line.Solution[1], Math.Sqrt(se * se + Math.Pow(line.Solution[1] * scale.RelativeSe, 2)));
    }

    private static double Regularity(List<StrideCandidate> kept)
    {
        if (kept.Count < LeastForSlope) return double.NaN;
        var mean = kept.Average(s => s.Seconds);
        var variance = kept.Sum(s => (s.Seconds - mean) * (s.Seconds - mean)) / (kept.Count - 1);
        return 100 * Math.Sqrt(variance) / mean;
    }
}
