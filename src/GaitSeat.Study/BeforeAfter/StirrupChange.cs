using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.BeforeAfter;

/// <summary>A rider's mean after a change less that before, in the outcome's unit.</summary>
/// <param name="StandardError">From the spread of the strides (Welch); it knows nothing of what else changed between the two spells.</param>
public sealed record RiderChange(string Rider, int StridesBefore, int StridesAfter, double Change, double StandardError, double DegreesOfFreedom, double Low, double High);

/// <summary>A change within a session: each rider, and all together.</summary>
/// <param name="Riders">Riders with two strides or more on either side.</param>
/// <param name="LeftOut">Riders without.</param>
/// <param name="Pooled">Mean change by a mixed model in which each rider has a level and a change of their own.</param>
/// <param name="Paired">The mean of the riders' changes with a paired t test, each rider counting once: the plain check on <paramref name="Pooled"/>.</param>
/// <param name="ChangeSd">Spread of the change between riders.</param>
public sealed record ChangeResult(
    IReadOnlyList<RiderChange> Riders, IReadOnlyList<string> LeftOut, ContrastEstimate Pooled, ContrastEstimate Paired, double ChangeSd, bool IsSingular);

/// <summary>Before and after a change of stirrups: each rider is their own control.</summary>
public static class StirrupChange
{
    private const double Level = 0.95;

    /// <param name="after">Whether the stride came after the change.</param>
    public static ChangeResult Of(double[] outcome, string[] riders, bool[] after, MixedSettings? settings = null)
    {
        DataCheck.SameLength(outcome.Length, "rider", riders.Length);
        DataCheck.SameLength(outcome.Length, "after", after.Length);
        DataCheck.Finite("outcome", outcome);
        var sides = riders.Select((r, i) => (Rider: r, Row: i)).GroupBy(p => p.Rider, p => p.Row).OrderBy(g => g.Key, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => (Before: Take(g.Where(i => !after[i])), After: Take(g.Where(i => after[i]))), StringComparer.Ordinal);
        var whole = sides.Where(s => s.Value.Before.Length > 1 && s.Value.After.Length > 1).Select(s => s.Key).ToArray();
        if (whole.Length < 2)
            throw new StudyException(StudyProblem.TooFewRows, $"{whole.Length} riders have two strides or more both before and after; two riders are needed for a pooled change");
        var changes = whole.Select(r => Welch(r, sides[r].Before, sides[r].After)).ToArray();
        var kept = Enumerable.Range(0, outcome.Length).Where(i => Array.BinarySearch(whole, riders[i], StringComparer.Ordinal) >= 0).ToArray();
        var fit = Fit([.. kept.Select(i => outcome[i])], [.. kept.Select(i => riders[i])], [.. kept.Select(i => after[i] ? 1.0 : 0)], settings);
        return new(changes, [.. sides.Keys.Except(whole)], fit.Fixed[1], PairedTest(changes), fit.Random[0].StandardDeviations[1], fit.IsSingular);

        double[] Take(IEnumerable<int> rows) => [.. rows.Select(i => outcome[i])];
    }

    private static MixedFit Fit(double[] outcome, string[] riders, double[] after, MixedSettings? settings)
    {
        var intercept = DesignColumn.Intercept(outcome.Length);
        var change = new DesignColumn("change", after);
        return MixedModel.Fit(new() { Outcome = outcome, Fixed = [intercept, change], Random = [new(Grouping.Of("rider", riders), [intercept, change])] }, settings);
    }

    private static RiderChange Welch(string rider, double[] before, double[] after)
    {
        var (b, a) = (Moments.Of(before), Moments.Of(after));
        var (vb, va) = (b.Variance / b.Count, a.Variance / a.Count);
        var error = Math.Sqrt(vb + va);
        var df = (vb + va) * (vb + va) / (vb * vb / (b.Count - 1) + va * va / (a.Count - 1));
        if (!(error > 0)) throw new StudyException(StudyProblem.BadData, $"rider '{rider}': all strides before, and all after, are the same; there is no spread to judge the change by");
        var half = error * StudentT.InvCDF(0, 1, df, (1 + Level) / 2);
        return new(rider, b.Count, a.Count, a.Mean - b.Mean, error, df, a.Mean - b.Mean - half, a.Mean - b.Mean + half);
    }

    private static ContrastEstimate PairedTest(RiderChange[] changes)
    {
        var m = Moments.Of([.. changes.Select(c => c.Change)]);
        var error = m.Sd / Math.Sqrt(m.Count);
        var half = error * StudentT.InvCDF(0, 1, m.Count - 1, (1 + Level) / 2);
        return new("change, riders paired", m.Mean, error, m.Count - 1, 2 * StudentT.CDF(0, 1, m.Count - 1, -Math.Abs(m.Mean / error)), m.Mean - half, m.Mean + half, IntervalMethod.PairedT);
    }
}
