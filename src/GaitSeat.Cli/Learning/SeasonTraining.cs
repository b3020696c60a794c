using GaitSeat.Faults.Training;
using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;
using GaitSeat.Pipeline.Settings;

namespace GaitSeat.Cli.Learning;

/// <summary>Trains every fault of a judged season side by side and keeps what was trained.</summary>
internal static class SeasonTraining
{
    /// <returns>One outcome a fault, in the order of <see cref="Fault"/>.</returns>
    internal static async Task<IReadOnlyList<TrainingOutcome>> RunAsync(
        JudgedSeason season, IReadOnlyDictionary<Fault, ModelInUse> inUse, PipelineSettings pipeline, string softwareVersion, CancellationToken ct)
    {
        var trainer = new FaultTrainer(pipeline.Faults.Training, pipeline.Faults.Evaluation, softwareVersion);
        var faults = Enum.GetValues<Fault>();
        var outcomes = new TrainingOutcome[faults.Length];
        await Task.Run(() => Parallel.For(0, faults.Length, new ParallelOptions { CancellationToken = ct }, i =>
            outcomes[i] = trainer.Train(DataOf(season, faults[i], pipeline), inUse.GetValueOrDefault(faults[i]), ct)), ct);
        foreach (var outcome in outcomes.Where(o => o.Model is not null)) season.Shelf.Keep(outcome, TimeProvider.System.GetUtcNow(), season.PictureOf);
        return outcomes;
    }

    private static TrainingSet DataOf(JudgedSeason season, Fault fault, PipelineSettings pipeline) =>
        TrainingSet.Of(season.Table, VerdictLabels.Of(fault, season.Verdicts, season.Run.PipelineHash, season.Run.ModelHash), pipeline.Rules);
}
