using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Planning;

namespace GaitSeat.Study.Report;

/// <summary>One answer in one line.</summary>
internal static class SummaryLine
{
    public static string Of(StudySettings study, StudyAnswer answer)
    {
        var outcome = ColumnTerm.Of(answer.Outcome);
        var exploratory = answer.IsExploratory ? " (exploratory)" : "";
        return outcome.Name + exploratory + ": " + answer switch
        {
            DoseAnswer d => $"{Signed(d.Effect.Estimate, outcome)} for {ColumnTerm.Of(study.Exposure).With(Shown.Chosen(study.EffectStep))} more {ColumnTerm.Of(study.Exposure).Name} (95 % interval {Shown.Interval(d.Effect.Low, d.Effect.High)}, p {Shown.P(d.AdjustedPValue)}; {Shown.Count(d.Rows)} strides, {d.Fit.Random[0].Levels.Count} riders){(d.Fit.IsSingular ? "; singular fit" : "")}.",
            ChangeAnswer c => $"{Signed(c.Change.Pooled.Estimate, outcome)} after the change (95 % interval {Shown.Interval(c.Change.Pooled.Low, c.Change.Pooled.High)}, p {Shown.P(c.AdjustedPValue)}; {c.Change.Riders.Count} riders){(c.Change.IsSingular ? "; singular fit" : "")}.",
            AgreementAnswer a => $"less {study.Comparator} {outcome.With(Shown.Number(a.Limits.Bias))}, limits of agreement {Shown.Interval(a.Limits.Lower, a.Limits.Upper)} ({Shown.Count(a.Limits.Pairs)} pairs, {a.Limits.Subjects} riders).",
            ReliabilityAnswer r => $"ICC {Shown.Number(r.Reliability.Icc)}, SEM {outcome.With(Shown.Number(r.Reliability.Sem))}, smallest change beyond error {outcome.With(Shown.Number(r.Reliability.Mdc95))}{(r.Reliability.IsSingular ? "; singular fit" : "")}.",
            NoAnswer n => $"no numbers: {n.Reason}.",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.GetType(), "an answer with a line"),
        };
    }

    public static string Of(PowerResult p) =>
        $"{p.Plan.Riders} riders, {p.Plan.StridesPerLength} strides at each of {p.Plan.LengthsPerRider} lengths: ± {Shown.Number(p.HalfWidth90)} in nine seasons of ten, power {Shown.Percent(p.Detected.Value)}.";

    private static string Signed(double value, ColumnTerm term) => term.With((value > 0 ? "+" : "") + Shown.Number(value));
}
