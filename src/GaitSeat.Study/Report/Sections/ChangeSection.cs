using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Plots.Studies;

namespace GaitSeat.Study.Report.Sections;

/// <summary>A change within a session: each rider and all together.</summary>
internal sealed class ChangeSection(ReportBuilder report, StudySettings study, int question)
{
    public static string[] Heads => ["outcome", "riders", "sessions", "mean change", "95 % interval", "p", "p adjusted", ""];

    public static string Method(StudySettings study) =>
        $"Strides after the change ({study.After}) against strides before it, within the same session of the same rider. Linear mixed model with a level and a change for each rider; beside it the plain paired t test, in which each rider counts once.";

    public static IReadOnlyList<string> Row(ChangeAnswer answer)
    {
        var pooled = answer.Change.Pooled;
        return [ColumnTerm.Of(answer.Outcome).Label, Shown.Count(answer.Change.Riders.Count), Shown.Count(answer.Change.Sessions), Shown.Number(pooled.Estimate), Shown.Interval(pooled.Low, pooled.High), Shown.P(answer.PValue), Shown.P(answer.AdjustedPValue), answer.IsExploratory ? "exploratory" : ""];
    }

    public void Write(ChangeAnswer answer)
    {
        var (outcome, change) = (ColumnTerm.Of(answer.Outcome), answer.Change);
        report.Add(new Heading(3, Questions.Name(answer)));
        var clear = change.Pooled.Low > 0 || change.Pooled.High < 0;
        report.Add(new Paragraph(
            $"After the change ({study.After}) {outcome.Name} was {outcome.With(Shown.Number(Math.Abs(change.Pooled.Estimate)))} {(change.Pooled.Estimate < 0 ? "less" : "more")} than before in the same session (95 % interval {Shown.Interval(change.Pooled.Low, change.Pooled.High)}; {change.Riders.Count} riders, {change.Sessions} sessions). "
            + (clear ? "" : "The interval holds zero: the data do not tell the direction, which is not the same as no change. ")
            + $"The paired t test gives {Shown.Number(change.Paired.Estimate)} ({Shown.Interval(change.Paired.Low, change.Paired.High)}). Riders' changes differ by an SD of {outcome.With(Shown.Number(change.ChangeSd))}. "
            + "What else changed during the session (warming up, tiredness, the horse) is in the change as well."));
        if (change.IsSingular) report.Add(new Warning("Singular fit: as far as these data tell, riders do not differ in their level or in their change. The mean change can be read; the spread between riders cannot."));
        if (change.LeftOut.Count > 0) report.Add(new Paragraph($"Without two strides on either side of a session, and so left out: {string.Join(", ", change.LeftOut)}."));
        IntervalRow[] rows =
        [
            .. change.Riders.OrderBy(r => r.Change).Select(r => new IntervalRow(r.Rider, r.Change, r.Low, r.High)),
            new("all riders (mixed model)", change.Pooled.Estimate, change.Pooled.Low, change.Pooled.High, true),
            new("all riders (paired t)", change.Paired.Estimate, change.Paired.Low, change.Paired.High, true),
        ];
        report.Picture($"q{question}-{answer.Outcome}-forest", "Each rider's change with its 95 % interval, from least to most, and that of all.",
            (png, svg) => IntervalPlot.Save("change within a session", $"after less before, {outcome.Label}", rows, 0, report.Note, png, svg));
        report.Add(question, answer.Outcome, ("change", change.Pooled.Estimate), ("change, se", change.Pooled.StandardError), ("change, low", change.Pooled.Low), ("change, high", change.Pooled.High), ("p", answer.PValue), ("p adjusted", answer.AdjustedPValue),
            ("paired change", change.Paired.Estimate), ("paired change, low", change.Paired.Low), ("paired change, high", change.Paired.High), ("sd of change between riders", change.ChangeSd));
        foreach (var r in change.Riders) report.Add(question, answer.Outcome, ($"change of {r.Rider}", r.Change), ($"change of {r.Rider}, low", r.Low), ($"change of {r.Rider}, high", r.High));
    }
}
