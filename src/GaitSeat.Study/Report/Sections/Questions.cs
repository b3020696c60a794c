using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Plots.Studies;

namespace GaitSeat.Study.Report.Sections;

/// <summary>The chapter of one question: method, a table of all its outcomes, then each outcome.</summary>
internal static class Questions
{
    public static string Name(StudyAnswer answer) => ColumnTerm.Of(answer.Outcome).Label + (answer.IsExploratory ? " (exploratory)" : "");

    public static void Write(ReportBuilder report, StudyResult result, int number, int of)
    {
        var study = result.Study;
        report.Add(new Heading(2, of > 1 ? $"Question {number}: {study.Question}" : study.Question));
        report.Add(new Paragraph(Method(study)));
        if (study.Kind == StudyKind.Planning)
        {
            new PlanSection(report, study, number).Write(result.Plans);
            return;
        }

        var rows = result.Answers.SelectMany(a => Rows(report, a, study, number)).ToArray();
        if (rows.Length > 0) report.Add(new FigureTable(Heads(study.Kind), rows));
        if (result.Answers.Any(a => !double.IsNaN(a.AdjustedPValue)))
            report.Add(new Paragraph("p values are adjusted by Benjamini and Hochberg's false discovery rate over all questions of the file, exploratory outcomes among themselves."));
        Overview(report, result, number);
        foreach (var answer in result.Answers) Answer(report, answer, study, number);
        report.Add(new Heading(3, "Rows of this question"));
        Flow(report, result, number);
    }

    private static string Method(StudySettings study) => study.Kind switch
    {
        StudyKind.DoseResponse => DoseSection.Method(study),
        StudyKind.BeforeAfter => ChangeSection.Method(study),
        StudyKind.Agreement => AgreementSection.Method(study),
        StudyKind.Reliability => ReliabilitySection.Method,
        _ => PlanSection.Method(study),
    };

    private static string[] Heads(StudyKind kind) => kind switch
    {
        StudyKind.DoseResponse => DoseSection.Heads,
        StudyKind.BeforeAfter => ChangeSection.Heads,
        StudyKind.Agreement => AgreementSection.Heads,
        _ => ReliabilitySection.Heads,
    };

    private static IEnumerable<IReadOnlyList<string>> Rows(ReportBuilder report, StudyAnswer answer, StudySettings study, int number) => answer switch
    {
        DoseAnswer d => new DoseSection(report, study, number).Rows(d),
        ChangeAnswer c => [ChangeSection.Row(c)],
        AgreementAnswer a => [AgreementSection.Row(a)],
        ReliabilityAnswer r => [ReliabilitySection.Row(r)],
        _ => [],
    };

    private static void Answer(ReportBuilder report, StudyAnswer answer, StudySettings study, int number)
    {
        switch (answer)
        {
            case DoseAnswer d: new DoseSection(report, study, number).Write(d); break;
            case ChangeAnswer c: new ChangeSection(report, study, number).Write(c); break;
            case AgreementAnswer a: new AgreementSection(report, study, number).Write(a); break;
            case ReliabilityAnswer r: new ReliabilitySection(report, number).Write(r); break;
            case NoAnswer n:
                report.Add(new Heading(3, Name(n)));
                report.Add(new Warning($"No numbers: {n.Reason}."));
                break;
        }
    }

    /// <summary>Several outcomes side by side, each in its own spread.</summary>
    private static void Overview(ReportBuilder report, StudyResult result, int number)
    {
        if (result.Answers.OfType<ReliabilityAnswer>().ToArray() is { Length: > 1 } reliable)
        {
            report.Picture($"q{number}-icc", "Intraclass correlation of session means with its 95 % interval, from most to least.",
                (png, svg) => IntervalPlot.Save("reliability between sessions", "ICC(1,1) of session means", [.. reliable.OrderByDescending(r => r.Reliability.Icc).Select(r => new IntervalRow(ColumnTerm.Of(r.Outcome).Label, r.Reliability.Icc, r.Reliability.IccLow, r.Reliability.IccHigh))], double.NaN, report.Note, png, svg));
        }

        if (result.Answers.OfType<DoseAnswer>().ToArray() is { Length: > 1 } doses)
        {
            report.Picture($"q{number}-outcomes", $"Effect of the step on each outcome with its 95 % interval, in units of the outcome's spread from stride to stride; orange: what the study was written for.",
                (png, svg) => IntervalPlot.Save("all outcomes", "effect, in stride-to-stride SD", [.. doses.Select(d => InSpread(ColumnTerm.Of(d.Outcome).Label, d.Effect, d.Fit.ResidualSd, !d.IsExploratory))], 0, report.Note, png, svg));
        }
    }

    private static IntervalRow InSpread(string outcome, ContrastEstimate e, double sd, bool stands) => new(outcome, e.Estimate / sd, e.Low / sd, e.High / sd, stands);

    /// <summary>Steps that all outcomes share, then what each lacks of its own.</summary>
    private static void Flow(ReportBuilder report, StudyResult result, int number)
    {
        var shared = result.Answers[0].Flow.TakeWhile((step, i) => result.Answers.All(a => a.Flow[i] == step)).ToArray();
        report.Add(new FigureTable(
            ["step", "left out", "left"],
            [
                .. shared.Select(f => (IReadOnlyList<string>)[f.Reason, Shown.Count(f.LeftOut), Shown.Count(f.Left)]),
                .. result.Answers.SelectMany(a => a.Flow.Skip(shared.Length).Where(f => f.LeftOut > 0 || f == a.Flow[^1]).Select(f => (IReadOnlyList<string>)[$"{a.Outcome}: {f.Reason}", Shown.Count(f.LeftOut), Shown.Count(f.Left)])),
            ]));
        foreach (var answer in result.Answers)
            foreach (var step in answer.Flow) report.Add(number, answer.Outcome, ($"left out: {step.Reason}", step.LeftOut));
    }
}
