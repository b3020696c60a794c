using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace GaitSeat.Study.Reliability;

/// <summary>How well the mean of a session tells one rider from another, and what change between two sessions is more than chance.</summary>
/// <param name="StridesPerSession">Harmonic mean: the count whose mean is as precise.</param>
/// <param name="Icc">
/// Share of the spread of session means that is between riders. It is the one-way form, ICC(1,1): a session belongs to one rider, so no session is a judge common to all.
/// </param>
/// <param name="Sem">Standard error of measurement: spread of the session means of an unchanging rider, in the measure's unit.</param>
/// <param name="Mdc95">Smallest change between two session means beyond their error at 95 %: 1.96 √2 SEM (Weir 2005, J Strength Cond Res 19:231-240).</param>
/// <param name="IccLow">Ends of the 95 % interval by parametric bootstrap.</param>
/// <param name="IsSingular">Sessions or riders do not differ as far as the data tell.</param>
public sealed record ReliabilityResult(
    int Riders, int Sessions, double StridesPerSession, double RiderSd, double SessionSd, double StrideSd,
    double Icc, double IccLow, double IccHigh, double Sem, double SemLow, double SemHigh, double Mdc95, bool IsSingular);

/// <summary>Reliability between sessions from strides: a mixed model with riders and, within them, sessions; numbers of strides and sessions may differ.</summary>
public static class SessionReliability
{
    /// <param name="values">One per stride.</param>
    /// <param name="sessions">Name of the session; the same name under two riders is two sessions.</param>
    public static ReliabilityResult Of(double[] values, string[] riders, string[] sessions, BootstrapSettings bootstrap)
    {
        DataCheck.SameLength(values.Length, "rider", riders.Length);
        DataCheck.SameLength(values.Length, "session", sessions.Length);
        var intercept = DesignColumn.Intercept(values.Length);
        var rider = Grouping.Of("rider", riders);
        var session = Grouping.Of("session", sessions).Within(rider);
        if (session.Levels.Count == rider.Levels.Count)
            throw new StudyException(StudyProblem.TooFewRows, "no rider has a second session; reliability between sessions needs riders seen twice or more");
        var strides = 1 / session.LevelOf.GroupBy(l => l).Average(g => 1.0 / g.Count());
        var fit = MixedModel.Fit(new() { Outcome = values, Fixed = [intercept], Random = [new(rider, [intercept]), new(session, [intercept])] });
        var found = new Components(fit.Random[0].StandardDeviations[0], fit.Random[1].StandardDeviations[0], fit.ResidualSd, strides);
        Components[] drawn = [.. Bootstrap.Refits(fit.Solution, bootstrap).Select(r => new Components(r.ResidualSd * Math.Abs(r.Theta[0]), r.ResidualSd * Math.Abs(r.Theta[1]), r.ResidualSd, strides))];
        return new(
            rider.Levels.Count, session.Levels.Count, strides, found.Rider, found.Session, found.Stride,
            found.Icc, Quantile(drawn, d => d.Icc, 0.025), Quantile(drawn, d => d.Icc, 0.975),
            found.Sem, Quantile(drawn, d => d.Sem, 0.025), Quantile(drawn, d => d.Sem, 0.975),
            Normal.InvCDF(0, 1, 0.975) * Math.Sqrt(2) * found.Sem, fit.IsSingular);
    }

    private static double Quantile(Components[] drawn, Func<Components, double> of, double share) => drawn.Select(of).QuantileCustom(share, QuantileDefinition.R7);

    private readonly record struct Components(double Rider, double Session, double Stride, double StridesPerSession)
    {
        public double Sem => Math.Sqrt(Session * Session + Stride * Stride / StridesPerSession);

        public double Icc => Rider * Rider / (Rider * Rider + Sem * Sem);
    }
}
