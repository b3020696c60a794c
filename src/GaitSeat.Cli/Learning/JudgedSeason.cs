using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;
using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Cli.Learning;

/// <summary>One run of a dataset with its verdicts and fault models: what training and queue begin from.</summary>
internal sealed class JudgedSeason
{
    private JudgedSeason(Dataset dataset, DatasetRun run, FeatureTable table, IReadOnlyList<Verdict> verdicts, LeftOutClips leftOut) =>
        (Dataset, Run, Table, Verdicts, LeftOut, Shelf) = (dataset, run, table, verdicts, leftOut, Pipeline.Flags.ModelsInUse.ShelfOf(dataset));

    internal Dataset Dataset { get; }

    internal DatasetRun Run { get; }

    internal FeatureTable Table { get; }

    /// <summary>Those that stand: what was withdrawn is not among them.</summary>
    internal IReadOnlyList<Verdict> Verdicts { get; }

    /// <summary>Clips that are not in it, since their riders' consent does not reach so far.</summary>
    internal LeftOutClips LeftOut { get; }

    internal ModelShelf Shelf { get; }

    /// <exception cref="DatasetException">The dataset cannot be read, or it is not clear which run is meant.</exception>
    internal static JudgedSeason Open(string folder, string? pipelineHash, FeatureSettings features) => Open(folder, pipelineHash, features, (_, _) => LeftOutClips.None);

    /// <param name="leaveOut">Clips of the run that are not to be looked at.</param>
    /// <exception cref="DatasetException">As above.</exception>
    internal static JudgedSeason Open(string folder, string? pipelineHash, FeatureSettings features, Func<DatasetQuery, DatasetRun, LeftOutClips> leaveOut)
    {
        var dataset = Datasets.OpenExisting(folder);
        using var query = new DatasetQuery(dataset.Folder);
        var run = DatasetRun.Choose(query, pipelineHash);
        var leftOut = leaveOut(query, run);
        return new(
            dataset, run, FeatureTable.Of(SpellReader.Read(query, run).Where(s => !leftOut.ClipKeys.Contains(s.Provenance.ClipKey)), features),
            [.. StandingVerdicts.Of(new VerdictStore(dataset).All()).Where(v => !leftOut.ClipKeys.Contains(v.ClipKey))], leftOut);
    }

    /// <summary>The models in use. One that cannot be used is told, and its fault left to its rule.</summary>
    internal IReadOnlyDictionary<Fault, ModelInUse> ModelsInUse(Action<string> tell) => Pipeline.Flags.ModelsInUse.Of(Shelf, Run, Table.Settings, tell);

    /// <returns>Full path of the clip's still at the sit, heads blurred as the run was told to; null where none was made.</returns>
    internal string? PictureOf(string clipKey)
    {
        var folder = SeasonRun.PictureFolder(Dataset.Folder);
        return Directory.Exists(folder)
            ? Directory.EnumerateFiles(folder, $"{ClipKey.InName(clipKey)}-*-sit.jpg").Order(StringComparer.Ordinal).FirstOrDefault()
            : null;
    }
}
