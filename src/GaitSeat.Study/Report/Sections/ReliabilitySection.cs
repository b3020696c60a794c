using GaitSeat.Study.Answers;

namespace GaitSeat.Study.Report.Sections;

/// <summary>How well a session's mean tells one rider from another, and what change is more than chance.</summary>
internal sealed class ReliabilitySection(ReportBuilder report, int question)
{
    public const string Method =
        "Linear mixed model of the strides with riders and, within them, sessions. The ICC is the one-way form, ICC(1,1), of session means: a session belongs to one rider, so no session is a judge common to all. "
        + "SEM: spread of the session means of an unchanging rider. MDC: smallest change between two sessions beyond their error at 95 %, 1.96 √2 SEM. Intervals by parametric bootstrap.";

    public static string[] Heads => ["outcome", "riders", "sessions", "ICC", "95 % interval", "SEM", "95 % interval", "MDC", ""];

    public static IReadOnlyList<string> Row(ReliabilityAnswer answer)
    {
        var r = answer.Reliability;
        return [ColumnTerm.Of(answer.Outcome).Label, Shown.Count(r.Riders), Shown.Count(r.Sessions), Shown.Number(r.Icc), Shown.Interval(r.IccLow, r.IccHigh), Shown.Number(r.Sem), Shown.Interval(r.SemLow, r.SemHigh), Shown.Number(r.Mdc95), (answer.IsExploratory ? "exploratory " : "") + (r.IsSingular ? "singular" : "")];
    }

    public void Write(ReliabilityAnswer answer)
    {
        var (outcome, r) = (ColumnTerm.Of(answer.Outcome), answer.Reliability);
        report.Add(new Heading(3, Questions.Name(answer)));
        report.Add(new Paragraph(
            $"Between two sessions of one rider the mean {outcome.Name} must change by more than {outcome.With(Shown.Number(r.Mdc95))} before the change is more than error (95 %). "
            + $"{Shown.Percent(r.Icc)} of the spread of session means is between riders (95 % interval {Shown.Percent(r.IccLow)} to {Shown.Percent(r.IccHigh)}). "
            + $"Spread (SD): riders {Shown.Number(r.RiderSd)}, sessions {Shown.Number(r.SessionSd)}, strides {Shown.Number(r.StrideSd)}; {Shown.Number(r.StridesPerSession)} strides a session. Real change of a rider between sessions counts as error here."));
        if (r.IsSingular) report.Add(new Warning("Singular fit: as far as these data tell, riders or sessions do not differ. The figures hold for these data only."));
        report.Add(question, answer.Outcome, ("icc", r.Icc), ("icc, low", r.IccLow), ("icc, high", r.IccHigh), ("sem", r.Sem), ("sem, low", r.SemLow), ("sem, high", r.SemHigh), ("mdc95", r.Mdc95), ("sd riders", r.RiderSd), ("sd sessions", r.SessionSd), ("sd strides", r.StrideSd));
    }
}
