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
        Assert.Equal(IntervalMethod.Satterthwaite, rise.Effect.Method);
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

    [Theory]
    [InlineData("stirrup_hole rises", 2.25)]
    [InlineData("stirrup_hole falls", -2.25)]
    [InlineData("stirrup_hole >= 2", 1.5)]
    public void BeforeAfter_ComparesTheSidesOfTheChange(string after, double truth)
    {
        var study = Season.Study with { Kind = StudyKind.BeforeAfter, After = after, Session = "term", Outcomes = ["rise_height_cm"] };
        var answer = Assert.IsType<ChangeAnswer>(StudyRun.Of(study, Season.Table).Answers[0]);
        // Holes of 2.5 cm at 0.3 per cm: three from the first length to the last, two from the lower two to the upper two.
        Assert.InRange(truth, answer.Change.Pooled.Low, answer.Change.Pooled.High);
        Assert.Equal(24, answer.Change.Riders.Count);
        Assert.Equal(after.Contains('s', StringComparison.Ordinal) && !after.Contains('>', StringComparison.Ordinal), answer.Flow.Any(f => f.Reason.StartsWith("neither before nor after", StringComparison.Ordinal) && f.LeftOut > 200));
    }

    [Fact]
    public void OtherSteps_AreGivenBesideTheFirst()
    {
        var dose = Assert.IsType<DoseAnswer>(StudyRun.Of(Season.Study with { OtherSteps = ["2.5", "-1"], Outcomes = ["rise_height_cm"] }, Season.Table).Answers[0]);
        Assert.Equal(["+2.5", "-1"], dose.OtherEffects.Select(e => e.Name));
        Assert.Equal(1.25 * dose.Effect.Estimate, dose.OtherEffects[0].Estimate, 1e-12);
        Assert.Equal(-0.5 * dose.Effect.High, dose.OtherEffects[1].Low, 1e-9);
    }

    /// <summary>Where all stated errors are alike, weights say nothing.</summary>
    [Fact]
    public void EqualErrors_AreAsNone()
    {
        var table = Season.Table;
        var alike = new StudyTable(table.Rows, table.Columns.Numbers.ToDictionary(c => c, c => c.EndsWith("_se", StringComparison.Ordinal) ? Array.ConvertAll(table.Numbers(c), _ => 0.4) : table.Numbers(c)), table.Columns.Texts.ToDictionary(c => c, table.Labels));
        ContrastEstimate Run(CarriedError how, StudyTable rows) => ((DoseAnswer)StudyRun.Of(Season.Study with { Outcomes = ["rise_height_cm"], MeasurementError = how }, rows).Answers[0]).Effect;
        Assert.Equal(Run(CarriedError.None, alike).Estimate, Run(CarriedError.Weights, alike).Estimate, 1e-9);
        Assert.Equal(Run(CarriedError.None, alike).High, Run(CarriedError.Weights, alike).High, 1e-7);
        Assert.NotEqual(Run(CarriedError.None, table).Estimate, Run(CarriedError.Weights, table).Estimate);
    }

    [Fact]
    public void SeveralQuestions_AreAdjustedTogether()
    {
        StudySettings[] questions = [Season.Study with { Outcomes = ["rise_height_cm"] }, Season.Study with { Outcomes = ["noise_pct"] }, Season.Study with { Outcomes = [], Exploratory = ["coach_cm"], MeasurementError = CarriedError.None }];
        var results = StudyRun.Of(questions, _ => Season.Table);
        Assert.Equal(2 * results[0].Answers[0].PValue, results[0].Answers[0].AdjustedPValue, 1e-15);
        Assert.Equal(results[1].Answers[0].PValue, results[1].Answers[0].AdjustedPValue, 1e-15);
        Assert.Equal(results[2].Answers[0].PValue, results[2].Answers[0].AdjustedPValue);
    }

    /// <summary>The coach's value holds for a whole day: averaged, there is one pair a rider and day.</summary>
    [Fact]
    public void AveragedPairs_AreOneForEachRiderAndUnit()
    {
        var study = Season.Study with { Kind = StudyKind.Agreement, Comparator = "coach_cm", AverageOver = "session_date", Outcomes = ["rise_height_cm"] };
        var agreement = Assert.IsType<AgreementAnswer>(StudyRun.Of(study, Season.Table).Answers[0]);
        Assert.Equal(96, agreement.Pairs.Count);
        Assert.Equal(0.7 / Math.Sqrt(5), agreement.Limits.Sd, 0.06);
    }

    [Fact]
    public void CollinearAdjustment_IsNamedAndGivesNoNumbers()
    {
        var answer = Assert.IsType<NoAnswer>(StudyRun.Of(Season.Study with { Adjustment = ["stirrup_hole", "stirrup_length_cm"] }, Season.Table).Answers[0]);
        Assert.Equal(StudyProblem.Collinear, answer.Problem);
        Assert.Contains("is a combination of others", answer.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryMeasure_StandsForAllButWhatIsAskedAndHowItWasFilmed()
    {
        var study = EveryMeasure.In(Season.Study with { Outcomes = [EveryMeasure.Word], Exposure = "stirrup_length_index_pct", Adjustment = ["stride_duration_s"], Exploratory = ["time_aloft_pct"] });
        Assert.Contains("rise_height_cm", study.Outcomes);
        foreach (var column in (string[])["stirrup_length_index_pct", "stride_duration_s", "time_aloft_pct", "view_yaw_deg"]) Assert.DoesNotContain(column, study.Outcomes);
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
