using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.Tests.Answers;

public sealed class StudyRunTests
{
    [Fact]
    public void DoseResponse_FindsTheEffectAndCountsEveryRow()
    {
        var result = StudyRun.Of(Season.Study, Season.Table);
        var rise = Assert.IsType<DoseAnswer>(result.Answers[0]);
        Assert.Equal(IntervalMethod.Profile, rise.Effect.Method);
        Assert.InRange(0.6, rise.Effect.Low, rise.Effect.High);
        Assert.Equal([480, 472, 471], rise.Flow.Select(f => f.Left).Distinct());
        Assert.Equal(1, rise.Flow.Single(f => f.Reason == "no rise_height_cm").LeftOut);
        Assert.Equal(8, rise.Flow.Single(f => f.Reason == "not gait = rising_trot").LeftOut);
        Assert.Equal(471, rise.Fit.Rows);
        Assert.Equal(24, rise.Influence.Count);
        Assert.Null(rise.Sensitivity);
    }

    [Fact]
    public void SeveralOutcomes_AreAdjustedTogetherAndExploratoryOnesApart()
    {
        var result = StudyRun.Of(Season.Study with { Exploratory = ["coach_cm"], MeasurementError = CarriedError.None }, Season.Table);
        Assert.Equal([false, false, true], result.Answers.Select(a => a.IsExploratory));
        Assert.Equal(2 * result.Answers[0].PValue, result.Answers[0].AdjustedPValue, 1e-15);
        Assert.Equal(result.Answers[2].PValue, result.Answers[2].AdjustedPValue);
        Assert.True(result.Answers[1].AdjustedPValue > 0.05);
    }

    [Fact]
    public void SameStudyAndRows_GiveTheSameNumbers()
    {
        var study = Season.Study with { Interval = IntervalMethod.Bootstrap, Bootstrap = new() { Replicates = 30 }, Outcomes = ["rise_height_cm"] };
        ContrastEstimate Run() => ((DoseAnswer)StudyRun.Of(study, Season.Table).Answers[0]).Effect;
        Assert.Equal(Run(), Run());
    }

    [Fact]
    public void ErrorOfTheExposure_GivesASensitivityRun()
    {
        var study = Season.Study with { ExposureErrorSd = 1, Simex = new() { Replicates = 3 }, Outcomes = ["rise_height_cm"], Interval = IntervalMethod.Satterthwaite };
        var dose = Assert.IsType<DoseAnswer>(StudyRun.Of(study, Season.Table).Answers[0]);
        Assert.Equal(dose.Wald.Estimate, dose.Sensitivity!.Naive, 1e-9);
        Assert.True(dose.Sensitivity.Corrected > dose.Sensitivity.Naive);
    }

    [Fact]
    public void BeforeAfter_ComparesTheSidesOfTheCondition()
    {
        var study = Season.Study with { Kind = StudyKind.BeforeAfter, After = "stirrup_hole >= 2", Outcomes = ["rise_height_cm"] };
        var change = Assert.IsType<ChangeAnswer>(StudyRun.Of(study, Season.Table).Answers[0]).Change;
        // Two holes of 2.5 cm at 0.3 per cm.
        Assert.InRange(1.5, change.Pooled.Low, change.Pooled.High);
        Assert.Equal(24, change.Riders.Count);
    }

    [Fact]
    public void Agreement_FindsTheBiasOfTheCoach()
    {
        var study = Season.Study with { Kind = StudyKind.Agreement, Comparator = "coach_cm", Outcomes = ["rise_height_cm"] };
        var agreement = Assert.IsType<AgreementAnswer>(StudyRun.Of(study, Season.Table).Answers[0]);
        Assert.Equal(-0.5, agreement.Limits.Bias, 4 * agreement.Limits.BiasSe);
        Assert.Equal(0.7, agreement.Limits.Sd, 0.08);
        Assert.Equal(1, agreement.Deming.Slope.Estimate, 4 * agreement.Deming.Slope.StandardError);
        Assert.True(agreement.Icc.Value > 0.9);
    }

    [Fact]
    public void Reliability_SeparatesRidersAndSessions()
    {
        var study = Season.Study with { Kind = StudyKind.Reliability, Outcomes = ["rise_height_cm"], Bootstrap = new() { Replicates = 30 } };
        var reliability = Assert.IsType<ReliabilityAnswer>(StudyRun.Of(study, Season.Table).Answers[0]).Reliability;
        Assert.Equal((24, 96), (reliability.Riders, reliability.Sessions));
        Assert.InRange(reliability.Icc, reliability.IccLow, reliability.IccHigh);
    }

    [Fact]
    public void Planning_NeedsNoRows()
    {
        var study = new StudySettings { Question = "How many riders?", Kind = StudyKind.Planning, RiderCounts = ["5", "9"], Power = new() { Simulations = 20 }, Plan = new() { Horses = 0, StridesPerLength = 4 } };
        Assert.Equal([5, 9], StudyRun.Plan(study).Plans.Select(p => p.Plan.Riders));
    }

    [Fact]
    public void FilterThatLeavesNothing_IsNamedAndStopsNoOther()
    {
        var none = StudyRun.Of(Season.Study with { Filters = ["gait = rising_trot", "stirrup_hole > 9"] }, Season.Table);
        var answer = Assert.IsType<NoAnswer>(none.Answers[0]);
        Assert.Contains("no rows are left after 'not stirrup_hole > 9'", answer.Reason, StringComparison.Ordinal);
        Assert.Equal(2, none.Answers.Count);
    }

    [Fact]
    public void OneRider_GivesNoNumbers()
    {
        var answer = Assert.IsType<NoAnswer>(StudyRun.Of(Season.Study with { Filters = ["rider = rider 0003"], Dose = new() { Session = false, Horse = HorseRole.None } }, Season.Table).Answers[0]);
        Assert.Equal(StudyProblem.OneLevel, answer.Problem);
    }
}
