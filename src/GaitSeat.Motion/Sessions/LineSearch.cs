using GaitSeat.Model;

namespace GaitSeat.Motion.Sessions;

/// <summary>The search for changes in one line of strides: one side, one rein.</summary>
/// <param name="strides">In order.</param>
/// <param name="lines">Lines searched in the session: the more, the stronger each must show (Bonferroni).</param>
internal sealed class LineSearch(SessionStride[] strides, SessionSettings settings, int lines)
{
    public IEnumerable<SessionShift> Run()
    {
        var found = new SortedDictionary<int, double>();
        Search(0, strides.Length, found);
        int[] cuts = [0, .. found.Keys, strides.Length];
        for (var c = 1; c < cuts.Length - 1; c++)
        {
            var at = cuts[c] - cuts[c - 1];
            yield return Shift(strides[cuts[c - 1]..cuts[c + 1]], at, found[cuts[c]]);
        }
    }

    private void Search(int first, int endExcl, SortedDictionary<int, double> found)
    {
        if (endExcl - first < 2 * settings.LeastStrides) return;
        var part = strides[first..endExcl];
        var line = ChangeEffects.LineOf(part, settings);
        var scan = new SplitScan(line, settings);
        var best = scan.Strongest(ChangeEffects.Values(part, StrideMeasure.ThighAngleSit), ChangeEffects.Values(part, StrideMeasure.StirrupLengthIndex));
        if (best.At == 0) return;
        var probability = Math.Min(1, lines * new UnchangedRides(line, scan, settings).Probability(best, settings.Seed + first));
        if (probability > settings.FalseAlarmLevel) return;
        found.Add(first + best.At, probability);
        Search(first, first + best.At, found);
        Search(first + best.At, endExcl, found);
    }

    private SessionShift Shift(SessionStride[] part, int at, double probability)
    {
        var effects = ChangeEffects.Of(part, at, settings);
        var shorter = effects.Single(e => e.Measure == StrideMeasure.ThighAngleSit).Difference.Value > 0;
        var (before, after) = (part[at - 1], part[at]);
        var shift = new StirrupShift(
            shorter ? LengthChange.Shorter : LengthChange.Longer, before.Stride.Facing, before.Stride, after.Stride, at, part.Length - at, probability, effects);
        return new(shift, before.Clip, after.Clip, before.Rein, Clips(part[..at]), Clips(part[at..]));
    }

    private static int Clips(SessionStride[] part) => part.Select(s => s.Clip).Distinct().Count();
}
