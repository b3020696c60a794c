using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.BeforeAfter;

/// <summary>A rider's mean after a change less that before, in the outcome's unit; the mean of it over the rider's sessions.</summary>
/// <param name="StandardError">From the spread of the strides (Welch); it knows nothing of what else changed between the two sides.</param>
public sealed record RiderChange(string Rider, int StridesBefore, int StridesAfter, double Change, double StandardError, double DegreesOfFreedom, double Low, double High);

/// <summary>A change within a session: each rider, and all together.</summary>
/// <param name="Riders">Riders with two strides or more on either side of some session.</param>
/// <param name="LeftOut">Riders without.</param>
/// <param name="Pooled">Mean change by a mixed model in which each rider has a level and a change of their own.</param>
/// <param name="Paired">The mean of the riders' changes with a paired t test, each rider counting once: the plain check on <paramref name="Pooled"/>.</param>
/// <param name="ChangeSd">Spread of the change between riders.</param>
/// <param name="Sessions">How many sessions were compared within themselves.</param>
public sealed record ChangeResult(
    int Sessions, IReadOnlyList<RiderChange> Riders, IReadOnlyList<string> LeftOut, ContrastEstimate Pooled, ContrastEstimate Paired, double ChangeSd, bool IsSingular);

/// <summary>Before and after a change of stirrups: each rider is their own control.</summary>
public static class StirrupChange
{
    private const double Level = 0.95;

    /// <param name="sessions">Session of each stride, the same name under two riders being two; strides are compared only within one.</param>
    /// <param name="after">Whether the stride came after the change.</param>
    public static ChangeResult Of(double[] outcome, string[] riders, string[] sessions, bool[] after, MixedSettings? settings = null)
    {
        DataCheck.SameLength(outcome.Length, "rider", riders.Length);
        DataCheck.SameLength(outcome.Length, "session", sessions.Length);
        DataCheck.SameLength(outcome.Length, "after", after.Length);
        DataCheck.Finite("outcome", outcome);
        var whole = Enumerable.Range(0, outcome.Length).GroupBy(i => (riders[i], sessions[i])).Where(g => g.Count(i => !after[i]) > 1 && g.Count(i => after[i]) > 1).ToArray();
        var byRider = whole.GroupBy(g => g.Key.Item1, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).ToArray();
        if (byRider.Length < 2)
            throw new StudyException(StudyProblem.TooFewRows, $"{byRider.Length} riders have a session with two strides or more both before and after; two riders are needed for a pooled change");
        var changes = byRider.Select(r => Change(r.Key, [.. r.Select(s => (Take(s, false), Take(s, true)))])).ToArray();
        int[] kept = [.. whole.SelectMany(g => g).Order()];
        var fit = Fit([.. kept.Select(i => outcome[i])], [.. kept.Select(i => riders[i])], [.. kept.Select(i => sessions[i])], [.. kept.Select(i => after[i] ? 1.0 : 0)], settings);
        string[] leftOut = [.. riders.Distinct().Except(byRider.Select(r => r.Key)).Order(StringComparer.Ordinal)];
        return new(whole.Length, changes, leftOut, fit.Fixed[1], PairedTest(changes), fit.Random[0].StandardDeviations[1], fit.IsSingular);

        double[] Take(IEnumerable<int> rows, bool side) => [.. rows.Where(i => after[i] == side).Select(i => outcome[i])];
    }

    /// <summary>Sessions have a level of their own where some rider has several; with one each they are the riders.</summary>
    private static MixedFit Fit(double[] outcome, string[] riders, string[] sessions, double[] after, MixedSettings? settings)
    {
        var intercept = DesignColumn.Intercept(outcome.Length);
        var change = new DesignColumn("change", after);
        var rider = Grouping.Of("rider", riders);
        var session = Grouping.Of("session", sessions).Within(rider);
        List<RandomTerm> random = [new(rider, [intercept, change])];
        if (session.Levels.Count > rider.Levels.Count) random.Add(new(session, [intercept]));
        return MixedModel.Fit(new() { Outcome = outcome, Fixed = [intercept, change], Random = random }, settings);
    }

    private static RiderChange Change(string rider, (double[] Before, double[] After)[] sessions)
    {
        var parts = sessions.Select(s => Welch(s.Before, s.After)).ToArray();
        var change = parts.Average(p => p.Change);
        var variance = parts.Sum(p => p.Variance) / (parts.Length * parts.Length);
        if (!(variance > 0)) throw new StudyException(StudyProblem.BadData, $"rider '{rider}': all strides before, and all after, are the same; there is no spread to judge the change by");
        // Satterthwaite over all sides of all sessions.
        var df = Math.Pow(parts.Sum(p => p.Variance), 2) / parts.Sum(p => p.Squares);
        var half = Math.Sqrt(variance) * StudentQuantile.TwoSided(df, Level);
        return new(rider, sessions.Sum(s => s.Before.Length), sessions.Sum(s => s.After.Length), change, Math.Sqrt(variance), df, change - half, change + half);
    }

    private static (double Change, double Variance, double Squares) Welch(double[] before, double[] after)
    {
        var (b, a) = (Moments.Of(before), Moments.Of(after));
        var (vb, va) = (b.Variance / b.Count, a.Variance / a.Count);
        return (a.Mean - b.Mean, vb + va, vb * vb / (b.Count - 1) + va * va / (a.Count - 1));
    }

    private static ContrastEstimate PairedTest(RiderChange[] changes)
    {
        var m = Moments.Of([.. changes.Select(c => c.Change)]);
        var error = m.Sd / Math.Sqrt(m.Count);
        var half = error * StudentQuantile.TwoSided(m.Count - 1, Level);
        return new("change, riders paired", m.Mean, error, m.Count - 1, 2 * StudentT.CDF(0, 1, m.Count - 1, -Math.Abs(m.Mean / error)), m.Mean - half, m.Mean + half, IntervalMethod.PairedT);
    }
}
