using System.Globalization;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Flags;

/// <summary>
/// The flags of a run: every spell is scored with the fault models in use, the rules standing as a floor, and what is flagged is written to the flags table. A spell is held
/// against its rider's other spells, so a flag is made of the whole run and not of its clip, and is made anew when clips or models change.
/// </summary>
public sealed class FlagPass(PipelineSettings settings, string softwareVersion)
{
    /// <returns>What was flagged, and lines for people: models that cannot be used, and what the models flagged.</returns>
    /// <exception cref="DatasetException">The dataset cannot be read or written.</exception>
    public async Task<(IReadOnlyList<Flag> Flags, IReadOnlyList<string> Lines)> RunAsync(Dataset dataset, DatasetRun run, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        ArgumentNullException.ThrowIfNull(run);
        var lines = new List<string>();
        var models = ModelsInUse.Of(ModelsInUse.ShelfOf(dataset), run, settings.Faults.Features, lines.Add).ToDictionary(m => m.Key, m => m.Value.Model);
        var flagger = new Flagger(models, settings.Rules, settings.Faults.Flags);
        var flags = flagger.Flag(flagger.Score(TableOf(dataset, run)));
        ct.ThrowIfCancellationRequested();
        await dataset.WriteFlagsAsync([.. flags.Select(RecordOf)], run, softwareVersion, ct);
        if (models.Count > 0) lines.Add(LineOf(flags, models.Count));
        return (flags, lines);
    }

    /// <summary>The same at the end of a run, where the clips' rows are safe already: what goes wrong is told and fails nothing. Nothing is read where nothing changed since the last time.</summary>
    internal static async Task<IReadOnlyList<string>> NotesAsync(PipelineSettings settings, string softwareVersion, Dataset dataset, IClipStage stage, CancellationToken ct)
    {
        try
        {
            var run = new DatasetRun(stage.PipelineHash, stage.ModelHash);
            var mark = new PassMark(dataset, "flags", ["clips", "spells", "strides"], $"{run}\n{softwareVersion}\n{Provenance.CurrentSchemaVersion}\n{SettingsWriter.Write(settings.Faults, docs: null)}\n{InUseOf(dataset)}");
            return await mark.LinesAsync(async () => (await new FlagPass(settings, softwareVersion).RunAsync(dataset, run, ct)).Lines);
        }
        catch (Exception e) when (e is DatasetException or IOException or UnauthorizedAccessException)
        {
            return [$"the flags table was not made: {e.Message}"];
        }
    }

    private FeatureTable TableOf(Dataset dataset, DatasetRun run)
    {
        using var query = new DatasetQuery(dataset.Folder);
        return FeatureTable.Of(SpellReader.Read(query, run), settings.Faults.Features);
    }

    private FlagRecord RecordOf(Flag f) => new(
        f.Spell, f.Score.Fault, f.Score.Probability, f.Score.Rule, f.Drivers, f.StartSeconds, f.EndSeconds, f.Summary, f.Score.ClassifierHash,
        f.Score.ClassifierHash is not null && f.Score.Probability < settings.Faults.Flags.FlagProbability);

    /// <summary>Which models are named as in use, and when their files were last written: a model repaired by hand makes other flags.</summary>
    private static string InUseOf(Dataset dataset) => string.Join('\n', ModelsInUse.ShelfOf(dataset).Files().Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.FullName}|{f.Length}|{f.LastWriteTimeUtc.Ticks}")));

    private static string LineOf(IReadOnlyList<Flag> flags, int models) => string.Create(
        CultureInfo.InvariantCulture,
        $"{flags.Count} flags in {flags.Select(f => f.Spell.Provenance.ClipKey).Distinct().Count()} clips, {flags.Count(f => f.Score.ClassifierHash is not null)} of them on the {models} faults that a model speaks of");
}
