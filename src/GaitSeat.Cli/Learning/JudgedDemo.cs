using GaitSeat.Faults.Training;
using GaitSeat.Pipeline.Flags;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using GaitSeat.Studio;

namespace GaitSeat.Cli.Learning;

/// <summary>The learning loop on the judged demo season: measured, judged, learnt from, flagged.</summary>
/// <param name="Figures">One for each planted fault.</param>
internal sealed record JudgedDemo(string DatasetFolder, string Sheet, int Spells, IReadOnlyList<TrainingOutcome> Outcomes, IReadOnlyList<PlantedFigures> Figures, IReadOnlyList<string> Lines)
{
    /// <param name="folder">Dataset and sheet of answers go there; what is there of the same season is made anew.</param>
    /// <exception cref="DatasetException">The folder cannot be written to.</exception>
    internal static async Task<JudgedDemo> RunAsync(IReadOnlyList<JudgedClip> clips, string folder, PipelineSettings pipeline, string softwareVersion, CancellationToken ct)
    {
        var dataset = Dataset.Open(Path.Combine(folder, "dataset"));
        var season = new UndrawnSeason(clips, pipeline, softwareVersion);
        await season.WriteAsync(dataset, ct);
        var run = PipelineHash.Of(pipeline);
        var sheet = Path.Combine(folder, "verdicts.csv");
        await season.WriteVerdictsAsync(sheet, [.. JudgedSeason.Open(dataset.Folder, run, pipeline.Faults.Features).Table.Rows.Select(r => r.Spell)], ct);
        var read = VerdictSheet.Read(sheet, dataset, run, TimeProvider.System.GetUtcNow());
        if (read.Errors.Count > 0) throw new InvalidOperationException($"The demo's own sheet of answers is wrong: {read.Errors[0]}");
        await new VerdictStore(dataset).AppendAsync(read.Verdicts, ct);
        var judged = JudgedSeason.Open(dataset.Folder, run, pipeline.Faults.Features);
        // Against the rules, also when it is made a second time: the figures are those of a first training.
        var outcomes = await SeasonTraining.RunAsync(judged, new Dictionary<Model.Fault, ModelInUse>(), pipeline, softwareVersion, ct);
        var (_, lines) = await new FlagPass(pipeline, softwareVersion).RunAsync(dataset, judged.Run, ct);
        return new(dataset.Folder, sheet, judged.Table.Rows.Count, outcomes, [.. outcomes.Select(o => PlantedFigures.Of(o, clips)).OfType<PlantedFigures>()], lines);
    }
}
