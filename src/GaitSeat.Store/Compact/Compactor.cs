using System.Collections.Concurrent;

namespace GaitSeat.Store;

/// <summary>
/// Gathers the many small files of a dataset into few large ones under <c>compact/</c>, by season and rider. The clips' files stay: they are the ledger and the truth,
/// the parts a copy of them for readers, which may be taken away at any time. Only parts whose sources changed are written.
/// </summary>
public static class Compactor
{
    /// <summary>A folder's time has the grain of the system's clock, some milliseconds: a file that came within this span of the listing might not show in it.</summary>
    private static readonly TimeSpan ClockGrain = TimeSpan.FromSeconds(2);

    /// <summary>Whether a dataset was compacted before.</summary>
    public static bool IsIn(string datasetFolder) => Directory.Exists(PartFolder.Of(datasetFolder));

    /// <exception cref="DatasetException">There is no dataset, another compacts it, a file of the clips table is damaged, or the parts cannot be written.</exception>
    public static CompactSummary Run(string datasetFolder, TimeProvider time, CancellationToken cancellationToken) =>
        Run(datasetFolder, time, SchemaHistory.Ours, cancellationToken);

    internal static CompactSummary Run(string datasetFolder, TimeProvider time, SchemaHistory history, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(time);
        var folder = Path.GetFullPath(datasetFolder);
        if (!Directory.Exists(Path.Combine(folder, ClipsTable.Name))) throw new DatasetException($"There is no dataset in '{datasetFolder}'. Give the folder a run has written to.");
        try
        {
            using var alone = Lock(folder);
            var plan = PartPlan.Of(folder, history);
            var tables = TableList.All.Select(t => Table(t, plan, folder, time, history, cancellationToken)).ToList();
            return new(
                tables.Sum(t => t.Written),
                tables.Sum(t => t.Kept),
                tables.ToDictionary(t => t.Table.Name, t => t.Parts.Sum(p => p.Rows), StringComparer.Ordinal),
                tables.Sum(t => t.Parts.Sum(p => p.Sources.Count)),
                tables.Sum(t => t.SourceBytes),
                tables.Sum(t => t.Parts.Sum(p => p.Bytes)),
                [.. tables.SelectMany(t => t.Problems)]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"'{PartFolder.Of(folder)}' could not be written ({e.Message}). Check rights and room on the disk, then compact again; the dataset itself is untouched.", e);
        }
    }

    private sealed record TableDone(TableInfo Table, IReadOnlyList<CompactPart> Parts, int Written, int Kept, long SourceBytes, IReadOnlyList<string> Problems);

    private static TableDone Table(TableInfo table, PartPlan plan, string folder, TimeProvider time, SchemaHistory history, CancellationToken ct)
    {
        var ticks = CompactState.TicksOf(plan.FolderOf(table));
        var now = time.GetUtcNow().UtcTicks;
        var files = SourceFile.In(plan.FolderOf(table));
        var groups = plan.Groups(table, files);
        var old = CompactManifest.Read(folder, table.Name);
        var standing = (old?.SchemaVersion == history.Current ? old.Parts : []).Where(p => CompactState.IsThere(folder, p)).ToDictionary(p => p.Path, StringComparer.Ordinal);
        var parts = new ConcurrentBag<CompactPart>();
        var problems = new ConcurrentBag<string>();
        var written = 0;
        Parallel.ForEach(groups, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = ct }, () => new Lazy<Engine>(() => Engine.Open(threads: 1)), (group, _, engine) =>
        {
            if (standing.GetValueOrDefault(group.Path) is { } there && there.Fingerprint == group.Fingerprint)
            {
                parts.Add(there);
                return engine;
            }

            try
            {
                parts.Add(PartWriter.Write(engine.Value, group, folder, history));
                Interlocked.Increment(ref written);
            }
            catch (DatasetException e)
            {
                problems.Add($"{group.Path}: {e.Message}");
            }

            return engine;
        }, engine =>
        {
            if (engine.IsValueCreated) engine.Value.Dispose();
        });

        var covered = parts.Sum(p => p.Sources.Count);
        long? tells = covered == files.Count && now - ticks > ClockGrain.Ticks ? ticks : null;
        var manifest = new CompactManifest(CompactManifest.CurrentLayout, history.Current, tells, [.. parts.OrderBy(p => p.Path, StringComparer.Ordinal)]);
        if (old is null ? manifest.Parts.Count > 0 : !Same(old, manifest)) manifest.Write(folder, table.Name);
        manifest = WithoutErased(manifest, plan, folder, table);
        Sweep(folder, table, manifest);
        return new(table, manifest.Parts, written, parts.Count - written, groups.Sum(g => g.Files.Sum(f => f.Bytes)), [.. problems.Order(StringComparer.Ordinal)]);
    }

    /// <summary>A clip erased while its part was being written: the part must not outlive it. An erasure after this look finds the part in the list and takes it away itself.</summary>
    private static CompactManifest WithoutErased(CompactManifest manifest, PartPlan plan, string folder, TableInfo table)
    {
        var files = SourceFile.In(plan.FolderOf(table));
        var whole = manifest.Parts.Where(p => p.Sources.All(files.ContainsKey)).ToList();
        if (whole.Count == manifest.Parts.Count) return manifest;
        manifest = manifest with { FolderTicks = null, Parts = whole };
        manifest.Write(folder, table.Name);
        return manifest;
    }

    private static bool Same(CompactManifest a, CompactManifest b) =>
        a.FolderTicks == b.FolderTicks && a.SchemaVersion == b.SchemaVersion && a.Parts.Select(p => (p.Path, p.Fingerprint, p.Bytes)).SequenceEqual(b.Parts.Select(p => (p.Path, p.Fingerprint, p.Bytes)));

    /// <summary>Takes away parts that nothing stands behind any more and what a torn-off run left, then the folders that are empty.</summary>
    private static void Sweep(string folder, TableInfo table, CompactManifest manifest)
    {
        var root = Path.Combine(PartFolder.Of(folder), table.Name);
        if (!Directory.Exists(root)) return;
        var known = manifest.Parts.Select(p => CompactState.FullPath(folder, p)).Append(CompactManifest.PathOf(folder, table.Name)).ToHashSet(StringComparer.Ordinal);
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).Where(f => !known.Contains(f)).ToList()) File.Delete(file);
        EmptyFolders.Remove(root);
    }

    private static FileStream Lock(string folder)
    {
        var path = Path.Combine(Directory.CreateDirectory(PartFolder.Of(folder)).FullName, PartFolder.LockFile);
        try
        {
            return new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (IOException e)
        {
            throw new DatasetException($"Another run compacts '{folder}' just now ({e.Message}). Wait for it, then compact again.", e);
        }
    }
}
