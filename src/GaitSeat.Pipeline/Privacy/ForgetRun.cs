using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>
/// Erases a rider, or clips that are too old, from a dataset: rows of every table, verdicts, pictures, lines of journals and logs, caches, jobs of the queue, fault models that learnt from them,
/// and where asked the source clips; then reads everything that is left to show that nothing tells of them. Killed at any moment, it is finished by starting it again.
/// </summary>
/// <param name="queue">PostgreSQL connection string of a shared queue; null where there is none.</param>
public sealed class ForgetRun(Dataset dataset, string? queue, TimeProvider time, string softwareVersion)
{
    private static readonly HashSet<string> OwnNotes = [ForgetOrder.FileName, ForgottenList.FileName];

    /// <summary>Told of each step before it is taken; tests end the run there.</summary>
    internal Action<string> Step { get; init; } = _ => { };

    private string Folder => dataset.Folder;

    /// <summary>What an erasure would take away; nothing is changed.</summary>
    /// <param name="rider">Pseudonym; null for the clips alone.</param>
    /// <param name="clipKeys">Clips besides those of the rider.</param>
    /// <param name="clipFolder">Where the source clips and their sheet lie; null where they are not at hand.</param>
    /// <param name="originals">Whether the source clips and the rows of the sheet go too.</param>
    /// <exception cref="DatasetException">The dataset cannot be read.</exception>
    /// <exception cref="SeasonException">The sheet or the queue cannot be read.</exception>
    public async Task<ForgetPlan> PlanAsync(string? rider, IReadOnlyCollection<string> clipKeys, string? clipFolder, bool originals, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(clipKeys);
        var measured = dataset.Clips();
        var keys = clipKeys.Concat(dataset.ClipKeysOf(rider)).ToHashSet(StringComparer.Ordinal);
        var files = measured.Where(c => keys.Contains(c.ClipKey)).Select(c => c.ClipFile).ToHashSet(StringComparer.Ordinal);
        var sources = clipFolder is null ? [] : await SourceClips.FindAsync(clipFolder, rider, keys, files, ct);
        keys.UnionWith(sources.Select(s => s.Key));
        files.UnionWith(sources.Select(s => Path.GetFileName(s.Path)));
        // A name that another clip has too does not tell of this one.
        files.ExceptWith(measured.Where(c => !keys.Contains(c.ClipKey)).Select(c => c.ClipFile));
        return PlanOf(
            new(rider, [.. keys.Order(StringComparer.Ordinal)], [.. files.Order(StringComparer.Ordinal)], originals ? [.. sources.Select(s => s.Path)] : [], originals && clipFolder is not null ? Path.GetFullPath(clipFolder) : null),
            [.. sources.Select(s => s.Path)], clipFolder, ct);
    }

    /// <summary>What is left to do of an erasure that was begun and not finished; null where there is none.</summary>
    public ForgetPlan? Unfinished(CancellationToken ct) => ForgetOrder.Unfinished(Folder) is { } order ? PlanOf(order, [.. order.Originals.Where(File.Exists)], order.ClipFolder, ct) : null;

    /// <summary>Takes away what the plan names, and searches what is left.</summary>
    /// <param name="who">Pseudonym of who asked for it, for the audit log.</param>
    /// <exception cref="SeasonException">A run is at work on the dataset, or the queue cannot be reached.</exception>
    /// <exception cref="DatasetException">A file cannot be read or written; start again once that is mended.</exception>
    public ForgetResult Do(ForgetPlan plan, string who, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(plan);
        using var alone = WorkersAway.Hold(Folder);
        var order = plan.Order;
        var traces = order.Traces;
        Step("begin");
        order.Begin(Folder);
        Step("list");
        ForgottenList.Read(Folder).Add(order.Rider, order.ClipKeys, Day);
        ConsentRecord.Read(Folder).Forget(order.Rider);
        dataset.CleanLeftovers();
        foreach (var key in order.ClipKeys)
        {
            ct.ThrowIfCancellationRequested();
            Step("rows");
            dataset.Erase(key);
        }

        Step("models");
        LearntModels.Delete(Folder, LearntModels.Find(Folder, traces));
        Step("queue");
        if (queue is not null) QueueErasure.Erase(queue, order.ClipFiles);
        Step("files");
        DatasetTraces.Apply(Folder, DatasetTraces.Find(Folder, traces, alone.PassedOver([.. OwnNotes, AuditLog.FileName, ConsentRecord.FileName]), ct), traces);
        Step("audit");
        var audit = new AuditLog(Folder);
        audit.Forget(traces);
        Step("originals");
        foreach (var original in order.Originals) File.Delete(original);
        if (order.ClipFolder is { } sheet) SourceClips.DropRows(sheet, order.Rider, order.ClipFiles.ToHashSet(StringComparer.Ordinal));
        Step("compact");
        CompactAgain(ct);
        Step("proof");
        var result = new ForgetResult(
            TraceSearch.Of(Folder, traces, alone.PassedOver(OwnNotes), ct),
            queue is null ? 0 : QueueErasure.Count(queue, order.ClipFiles),
            [.. order.Originals.Where(File.Exists)]);
        if (!result.IsClean) return result;
        audit.Add(time.GetUtcNow(), who, order.Rider is null ? "erased old sessions" : "forgot a rider", $"{order.ClipKeys.Count} clips", [], [], null);
        Step("end");
        ForgetOrder.End(Folder);
        return result;
    }

    private DateOnly Day => DateOnly.FromDateTime(time.GetLocalNow().Date);

    private ForgetPlan PlanOf(ForgetOrder order, IReadOnlyList<string> sources, string? clipFolder, CancellationToken ct)
    {
        var traces = order.Traces;
        var models = LearntModels.Find(Folder, traces);
        using var alone = WorkersAway.Hold(Folder);
        var files = DatasetTraces.Find(Folder, traces, alone.PassedOver([.. OwnNotes, AuditLog.FileName, ConsentRecord.FileName]), ct).Where(f => !models.Any(m => f.Path.StartsWith(m + "/", StringComparison.Ordinal))).ToLookup(IsLedger);
        var audit = new AuditLog(Folder);
        return new(
            order, files[true].Count(), [.. files[false]], models, audit.Count(traces), queue is null ? null : QueueErasure.Count(queue, order.ClipFiles), sources,
            clipFolder is null ? 0 : SourceClips.Rows(clipFolder, order.Rider, order.ClipFiles.ToHashSet(StringComparer.Ordinal)),
            [.. audit.Read().Where(e => e.Where is not null && (e.Riders.Contains(order.Rider) || e.Clips.Any(traces.In)))]);
    }

    private static bool IsLedger(TracedFile file) => file.Remedy == TraceRemedy.Delete && file.Path.Split('/') is [var table, _] && TableList.All.Any(t => t.Name == table);

    /// <summary>The parts that held the rider's rows are gone as a whole; they are written anew from what is left.</summary>
    private void CompactAgain(CancellationToken ct)
    {
        if (!Compactor.IsIn(Folder)) return;
        Compactor.Run(Folder, time, ct);
        DatasetPages.Write(Folder, DatasetAbout.Keep(Folder, new()), DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime), softwareVersion);
    }
}
