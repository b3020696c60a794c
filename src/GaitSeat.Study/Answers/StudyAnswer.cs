using GaitSeat.Study.Agreement;
using GaitSeat.Study.BeforeAfter;
using GaitSeat.Study.Definition;
using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Planning;
using GaitSeat.Study.Reliability;

namespace GaitSeat.Study.Answers;

/// <summary>The answer for one outcome.</summary>
/// <param name="IsExploratory">Not among the outcomes the study was written for.</param>
/// <param name="Flow">From all rows to those analysed.</param>
public abstract record StudyAnswer(string Outcome, bool IsExploratory, IReadOnlyList<FlowStep> Flow)
{
    /// <summary>p value of the question; NaN where the kind asks none.</summary>
    public virtual double PValue => double.NaN;

    /// <summary>After Benjamini and Hochberg, among the study's outcomes or among its exploratory ones; NaN where there is no p value.</summary>
    public double AdjustedPValue { get; init; } = double.NaN;

    public int Rows => Flow.Count > 0 ? Flow[^1].Left : 0;
}

/// <summary>No numbers, and why.</summary>
public sealed record NoAnswer(string Outcome, bool IsExploratory, IReadOnlyList<FlowStep> Flow, StudyProblem Problem, string Reason) : StudyAnswer(Outcome, IsExploratory, Flow);

/// <param name="Data">The rows behind it.</param>
/// <param name="Effect">Effect of the study's step, by the method it names.</param>
/// <param name="OtherEffects">The same of its other steps.</param>
/// <param name="Wald">The same by Satterthwaite.</param>
/// <param name="Sensitivity">With the exposure's errors taken out, or nothing where none are stated.</param>
public sealed record DoseAnswer(
    string Outcome, bool IsExploratory, IReadOnlyList<FlowStep> Flow, DoseDesign Design, DoseData Data, MixedFit Fit, ContrastEstimate Effect, IReadOnlyList<ContrastEstimate> OtherEffects, ContrastEstimate Wald,
    ExplainedVariance Explained, ResidualCheck Residuals, IReadOnlyList<LevelInfluence> Influence, SimexResult? Sensitivity) : StudyAnswer(Outcome, IsExploratory, Flow)
{
    /// <summary>Of the interval's own method; a bootstrap has none, and Satterthwaite's stands in.</summary>
    public override double PValue => double.IsNaN(Effect.PValue) ? Wald.PValue : Effect.PValue;
}

public sealed record ChangeAnswer(string Outcome, bool IsExploratory, IReadOnlyList<FlowStep> Flow, ChangeResult Change) : StudyAnswer(Outcome, IsExploratory, Flow)
{
    public override double PValue => Change.Pooled.PValue;
}

/// <param name="Pairs">What the limits were found from, for a plot.</param>
/// <param name="Icc">Absolute agreement of one reading, ICC(A,1): methods that are to stand in for each other must agree and not only go together. Of rider means; nothing below two riders.</param>
public sealed record AgreementAnswer(
    string Outcome, bool IsExploratory, IReadOnlyList<FlowStep> Flow, IReadOnlyList<MethodPair> Pairs, AgreementLimits Limits, DemingRegression Deming, IccEstimate Icc) : StudyAnswer(Outcome, IsExploratory, Flow);

public sealed record ReliabilityAnswer(string Outcome, bool IsExploratory, IReadOnlyList<FlowStep> Flow, ReliabilityResult Reliability) : StudyAnswer(Outcome, IsExploratory, Flow);

/// <summary>What one question came to. The same table and the same study give the same numbers.</summary>
/// <param name="Plans">Of a planning question, by number of riders and strides; else empty.</param>
public sealed record StudyResult(StudySettings Study, IReadOnlyList<StudyAnswer> Answers, IReadOnlyList<PowerResult> Plans);
