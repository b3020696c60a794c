using GaitSeat.Study.Agreement;
using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Plots;
using GaitSeat.Study.Plots.Studies;

namespace GaitSeat.Study.Report.Sections;

/// <summary>One way of measuring against another.</summary>
internal sealed class AgreementSection(ReportBuilder report, StudySettings study, int question)
{
    private const int MostPairs = 3000;

    public static string[] Heads => ["outcome", "pairs", "riders", "bias", "95 % interval", "limits of agreement", "ICC(A,1)", "95 % interval", ""];

    public static string Method(StudySettings study) =>
        $"{study.Comparator} is set against each outcome{(study.AverageOver.Length > 0 ? $", both averaged over each {study.AverageOver}" : ", stride by stride")}. Bland and Altman's limits with several pairs a rider (2007); "
        + "ICC(A,1), absolute agreement of one reading, of the riders' means: two methods that are to stand in for each other must agree and not only go together; "
        + $"Deming's line with a ratio of error variances of {Shown.Chosen(study.ErrorVarianceRatio)}, standard errors by leaving out riders in turn.";

    public static IReadOnlyList<string> Row(AgreementAnswer answer)
    {
        var limits = answer.Limits;
        var (low, high) = BlandAltman.Interval(limits.Bias, limits.BiasSe, limits.Subjects);
        return [ColumnTerm.Of(answer.Outcome).Label, Shown.Count(limits.Pairs), Shown.Count(limits.Subjects), Shown.Number(limits.Bias), Shown.Interval(low, high), Shown.Interval(limits.Lower, limits.Upper), Shown.Number(answer.Icc.Value), Shown.Interval(answer.Icc.Low, answer.Icc.High), answer.IsExploratory ? "exploratory" : ""];
    }

    public void Write(AgreementAnswer answer)
    {
        var (outcome, limits) = (ColumnTerm.Of(answer.Outcome), answer.Limits);
        report.Add(new Heading(3, Questions.Name(answer)));
        report.Add(new Paragraph(
            $"{outcome.Name} less {study.Comparator} is {outcome.With(Shown.Number(limits.Bias))} on average; a single difference lies between {outcome.With(Shown.Interval(limits.Lower, limits.Upper))} nineteen times in twenty. "
            + $"Of its SD of {Shown.Number(limits.Sd)}, {Shown.Number(limits.BetweenSubjectSd)} goes with the rider. Deming's line of {study.Comparator} on {outcome.Name}: slope {Shown.Number(answer.Deming.Slope.Estimate)} (SE {Shown.Number(answer.Deming.Slope.StandardError)}), intercept {Shown.Number(answer.Deming.Intercept.Estimate)} (SE {Shown.Number(answer.Deming.Intercept.StandardError)}). "
            + "Whether limits of this width will do is a question to the rider's purpose, not to statistics. Neither way of measuring is the truth."));
        if (Math.Abs(limits.Slope.Estimate) > 2 * limits.Slope.StandardError)
            report.Add(new Warning($"The difference grows with the size of what is measured (slope {Shown.Number(limits.Slope.Estimate)}, SE {Shown.Number(limits.Slope.StandardError)}): one pair of limits does not hold for all sizes."));
        report.Picture($"q{question}-{answer.Outcome}-agreement", "Left: difference over mean, with bias, limits of agreement and their 95 % intervals. Right: one way over the other, equality dashed, Deming's line solid.",
            (png, svg) => AgreementPlot.Save($"{outcome.Name} less {study.Comparator}", outcome.Label, study.Comparator, Drawn(answer.Pairs),
                [Line(ErrorLines.Bias, limits.Bias, limits.BiasSe), Line(ErrorLines.Lower, limits.Lower, limits.LimitSe), Line(ErrorLines.Upper, limits.Upper, limits.LimitSe)],
                (answer.Deming.Intercept.Estimate, answer.Deming.Slope.Estimate), report.Note, png, svg));
        report.Add(question, answer.Outcome, ("bias", limits.Bias), ("bias, se", limits.BiasSe), ("lower limit", limits.Lower), ("upper limit", limits.Upper), ("limit, se", limits.LimitSe), ("sd", limits.Sd), ("sd between riders", limits.BetweenSubjectSd),
            ("icc(a,1)", answer.Icc.Value), ("icc(a,1), low", answer.Icc.Low), ("icc(a,1), high", answer.Icc.High), ("deming slope", answer.Deming.Slope.Estimate), ("deming intercept", answer.Deming.Intercept.Estimate));

        LevelLine Line(string name, double value, double error)
        {
            var (low, high) = BlandAltman.Interval(value, error, limits.Subjects);
            return new(name, value, low, high);
        }
    }

    private static (double, double)[] Drawn(IReadOnlyList<MethodPair> pairs)
    {
        var step = Math.Max(1, pairs.Count / MostPairs);
        return [.. pairs.Where((_, i) => i % step == 0).Select(p => (p.First, p.Second))];
    }
}
