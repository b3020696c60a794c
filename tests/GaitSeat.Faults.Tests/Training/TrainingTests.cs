using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Tests.Season;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Training;

public sealed class TrainingTests
{
    private static readonly Lazy<PlantedSeason> Season = new(() => PlantedSeason.Make(riders: 40, clips: 12));
    private static readonly Lazy<TrainingOutcome> Trained = new(() => Train(Season.Value.Judged(noise: 0.05)));

    [Fact]
    public void PlantedFault_IsFoundOnHeldOutRidersAndBetterThanByRule()
    {
        var (outcome, there) = (Trained.Value, Season.Value.There);
        var spells = outcome.Data.Spells;
        bool[] truth = [.. spells.Select(s => there.Contains(s.Row.Key))];
        var model = new Ranking([.. spells.Select(s => outcome.HeldOut[s.Row.Key])], truth).AveragePrecision();
        var rules = new Ranking([.. spells.Select(s => s.Rule)], truth).AveragePrecision();
        Assert.True(model >= 0.9, $"Average precision {model:0.000} against the planted truth; at least 0.9.");
        Assert.True(rules > PlantedSeason.Planted + 0.1, $"The rules are no baseline: {rules:0.000}.");
        Assert.True(model > rules, $"Model {model:0.000}, rules {rules:0.000}.");
        Assert.Equal(TrainingEnd.Replaces, outcome.End);
    }

    [Fact]
    public void Report_ComparesEveryTrainerAndTheRules()
    {
        var report = Trained.Value.Report!;
        Assert.Equal(["nested choice", "logistic_regression", "stochastic_dual_ascent", "fast_tree", "light_gbm", "rules"], report.Compared.Select(c => c.Name));
        Assert.All(report.Compared, c => Assert.InRange(c.AveragePrecision.Value, c.AveragePrecision.Lower, c.AveragePrecision.Upper));
        Assert.Contains(report.Importances.Take(3), i => i.Family is "stirrup_drift_offset_pct_leg" or "heel_offset_pct_leg");
        Assert.Contains(report.Slices, s => s is { By: "horse_colour", Value: "grey" });
        Assert.Equal(report.Spells, report.Slices.Where(s => s.By == "rein").Sum(s => s.Spells));
        Assert.True(report.Compared[0].ExpectedCalibrationError < 0.1, $"{report.Compared[0].ExpectedCalibrationError}");
    }

    /// <summary>
    /// Verdicts dealt anew know nothing of the spells: what is above prevalence then was leaked. Average precision over a random order lies a
    /// little above prevalence and scatters; 3 SD of the area under the ROC curve at no skill, sqrt((n+m+1)/12nm) = 0.027, is the limit held for it.
    /// </summary>
    [Fact]
    public void ShuffledVerdicts_FallToPrevalence()
    {
        var keys = Season.Value.Table.Rows.Select(r => r.Key).ToArray();
        var dealt = keys.Select(Season.Value.There.Contains).ToArray();
        new Random(11).Shuffle(dealt);
        var labels = keys.Zip(dealt).ToDictionary(p => p.First, p => p.Second);
        var outcome = Train(Season.Value.Judged(noise: 0, truth: k => labels[k]));
        var told = outcome.Report!.Compared[0];
        Assert.Equal(TrainingEnd.Candidate, outcome.End);
        Assert.InRange(told.RocArea.Value, 0.5 - 0.081, 0.5 + 0.081);
        Assert.InRange(told.AveragePrecision.Value, outcome.Report.Prevalence - 0.08, outcome.Report.Prevalence + 0.08);
    }

    [Fact]
    public void CutThatLeaksARider_TrainsNothing()
    {
        var spells = Season.Value.Judged(noise: 0.05).Spells;
        int[] Leaking(IReadOnlyList<string> riders, IReadOnlyList<bool> there, int folds, int seed) => [.. riders.Select((_, i) => i % folds)];
        var validation = new CrossValidation(PlantedSeason.Quick, Leaking);
        Assert.Throws<RiderLeakException>(() => validation.Run(spells, CancellationToken.None));
        Assert.Throws<RiderLeakException>(() => validation.Choose(spells, CancellationToken.None));
    }

    [Theory]
    [InlineData(TrainerKind.LogisticRegression)]
    [InlineData(TrainerKind.StochasticDualAscent)]
    [InlineData(TrainerKind.FastTree)]
    [InlineData(TrainerKind.LightGbm)]
    public void SameSpells_GiveTheSameBytesFromEveryTrainer(TrainerKind kind)
    {
        var spells = Season.Value.Judged(noise: 0.05).Spells;
        var first = Trainer.Fit(spells, kind, PlantedSeason.Quick).ToBytes();
        Assert.Equal(first, Trainer.Fit(spells, kind, PlantedSeason.Quick).ToBytes());
        Assert.NotEqual(first, Trainer.Fit([.. spells.Skip(20)], kind, PlantedSeason.Quick).ToBytes());
    }

    [Fact]
    public void SavedScorer_SpeaksAsTheTrainedOne()
    {
        var spells = Season.Value.Judged(noise: 0.05).Spells;
        var trained = Trainer.Fit(spells, TrainerKind.LightGbm, PlantedSeason.Quick);
        double[][] vectors = [.. spells.Take(50).Select(s => s.Row.Values)];
        Assert.Equal(trained.Scores(vectors), Scorer.Load(trained.ToBytes(), trained.Preparation).Scores(vectors));
    }

    private static TrainingOutcome Train(TrainingSet data) => new FaultTrainer(PlantedSeason.Quick, new(), "test").Train(data, null, CancellationToken.None);
}
