using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// The dataset folder, which is also the ledger of what is done: <c>folder/table/clip-run.parquet</c>, one file a clip and table.
/// Any number of processes may share it. See <see cref="RunName"/> for the names and <see cref="AtomicParquet"/> for how a file appears.
/// </summary>
public sealed class Dataset
{
    private readonly string _folder;
    private readonly SessionFiles _sessions;

    private readonly SchemaHistory _history;

    private Dataset(string folder, SchemaHistory history) => (_folder, _sessions, _history) = (folder, new(Path.Combine(folder, SessionsTable.Name)), history);

    public string Folder => _folder;

    /// <summary>Opens the folder, making it where it is not there, and checks that it can be written to.</summary>
    /// <exception cref="DatasetException">It cannot be made or written to.</exception>
    public static Dataset Open(string folder) => Open(folder, SchemaHistory.Ours);

    internal static Dataset Open(string folder, SchemaHistory history)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var full = Path.GetFullPath(folder);
        try
        {
            foreach (var table in TableList.All)
            {
                var tableFolder = Directory.CreateDirectory(Path.Combine(full, table.Name)).FullName;
                var probe = Path.Combine(tableFolder, $"write-check-{Guid.NewGuid():N}{AtomicFile.TemporaryExtension}");
                using (new FileStream(probe, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose))
                {
                }
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"The dataset folder '{full}' cannot be written to ({e.Message}). Give a folder you may write to, on a disk with room.", e);
        }

        return new(full, history);
    }

    /// <summary>Whether the clip was measured or set aside under these hashes. A missing file of any table makes it undone, so that running again repairs it.</summary>
    public bool IsDone(string clipKey, string pipelineHash, string modelHash) =>
        NamesThatCount(clipKey, pipelineHash, modelHash).Any(name => IsWhole(name, withTracks: false));

    /// <summary>
    /// As <see cref="IsDone(string, string, string)"/>, and the clip's row of the sheet is still the one it was measured with
    /// (a corrected stature makes other centimetres), and the tracks are there where they are asked for.
    /// </summary>
    public bool IsDone(string clipKey, string pipelineHash, string modelHash, Session? session, bool withTracks)
    {
        var hash = SessionHash.Of(session);
        return NamesThatCount(clipKey, pipelineHash, modelHash).Any(name => IsWhole(name, withTracks) && ClipsReader.HasSessionHash(PathOf(ClipsTable.Name, name), hash));
    }

    /// <summary>
    /// Writes a clip's files, <c>clips</c> last. Of a clip without consent nothing is written, and what earlier runs left of it is erased.
    /// </summary>
    /// <exception cref="ArgumentException">The record contradicts itself.</exception>
    /// <exception cref="DatasetException">A file could not be written, or did not read back as written.</exception>
    public async Task WriteAsync(ClipRecord record, bool withTracks, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(record);
        RecordCheck.Throw(record);
        if (record.Status == ClipStatus.NoConsent)
        {
            Erase(record.Provenance.ClipKey);
            return;
        }

        var name = RunName.Of(record.Provenance.ClipKey, record.Provenance.PipelineHash, record.Provenance.ModelHash, _history.Current);
        try
        {
            // Undone while it is being replaced: a crash half-way must not leave old and new files that pass for one whole.
            File.Delete(PathOf(ClipsTable.Name, name));
            // Flags follow from the spells and are made anew after the run.
            File.Delete(PathOf(FlagsTable.Name, name));
            foreach (var table in TableList.For(withTracks))
            {
                await AtomicParquet.WriteAsync(table, record, PathOf(table.Name, name), cancellationToken);
            }

            DeleteOlder(record.Provenance);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"Clip '{record.Provenance.ClipFile}' could not be written to '{_folder}' ({e.Message}). Check rights and room on the disk, then run again.", e);
        }
    }

    /// <summary>
    /// Writes what the sessions of a run show, one file each; files of this run for sessions that are not among them are taken away.
    /// A file that already holds the same is left untouched.
    /// </summary>
    /// <exception cref="DatasetException">A file could not be written, or did not read back as written.</exception>
    public Task WriteSessionsAsync(IReadOnlyList<SessionRecord> sessions, string pipelineHash, string modelHash, CancellationToken cancellationToken) =>
        _sessions.WriteAsync(sessions, pipelineHash, modelHash, cancellationToken);

    /// <summary>Writes the flags of a run, one file a clip that has any, and takes away those of the run's clips that have none any more. A file that already holds the same is left untouched.</summary>
    /// <exception cref="ArgumentException">A flag is of another run.</exception>
    /// <exception cref="DatasetException">A file could not be written, or did not read back as written.</exception>
    public Task WriteFlagsAsync(IReadOnlyList<FlagRecord> flags, DatasetRun run, string softwareVersion, CancellationToken cancellationToken) =>
        new FlagFiles(Path.Combine(_folder, FlagsTable.Name)).WriteAsync(flags, run, softwareVersion, cancellationToken);

    /// <summary>Takes away every file of a clip, of all runs, and what was made of the sessions it belonged to.</summary>
    /// <returns>How many files were taken away.</returns>
    public int Erase(string clipKey)
    {
        var pattern = RunName.ClipPart(clipKey) + "*";
        // clips goes first: a clip half erased must not pass for done.
        var files = TableList.All.SelectMany(t => Directory.EnumerateFiles(Path.Combine(_folder, t.Name), pattern)).ToList();
        files.ForEach(File.Delete);
        return files.Count + _sessions.Erase(clipKey) + CompactErasure.Erase(_folder, clipKey);
    }

    /// <summary>Full paths of the Parquet files of a table, in ordinal order.</summary>
    /// <exception cref="ArgumentException">There is no such table.</exception>
    public IReadOnlyList<string> FilesOf(string table)
    {
        if (TableList.All.All(t => t.Name != table))
        {
            throw new ArgumentException($"There is no table '{table}'; the tables are {string.Join(", ", TableList.All.Select(t => t.Name))}.", nameof(table));
        }

        var folder = Path.Combine(_folder, table);
        return Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, "*" + RunName.Extension).Order(StringComparer.Ordinal)] : [];
    }

    /// <summary>All rows of the clips table, of every run, by clip file and then by hashes.</summary>
    /// <exception cref="DatasetException">A file is damaged.</exception>
    public IReadOnlyList<ClipRow> Clips() => ClipsReader.Read(this);

    /// <summary>The keys of all clips that any table gives to a rider, sessions included.</summary>
    /// <exception cref="DatasetException">A file is damaged.</exception>
    public IReadOnlyList<string> ClipKeysOf(string? rider)
    {
        if (rider is null) return [];
        using var query = new DatasetQuery(_folder);
        var name = SqlText.Literal(rider);
        var tables = TableList.InWriteOrder.Where(t => t.Info.Columns.Any(c => c.Name == "rider")).Select(t => $"SELECT clip_key FROM {t.Name} WHERE rider = {name}");
        var sessions = $"SELECT unnest(string_split(clip_keys, ',')) AS clip_key FROM {SessionsTable.Name} WHERE rider = {name}";
        return [.. query.Query($"SELECT DISTINCT clip_key FROM ({string.Join(" UNION ALL ", tables.Append(sessions))}) ORDER BY clip_key").Select(r => (string)r["clip_key"]!)];
    }

    /// <summary>Takes away temporary files of runs that were torn off; those of running processes stay.</summary>
    public void CleanLeftovers()
    {
        foreach (var table in TableList.All) Leftovers.Clean(Path.Combine(_folder, table.Name));
    }

    /// <summary>The name of the present layout, then those of older layouts whose numbers are still right.</summary>
    private IEnumerable<string> NamesThatCount(string clipKey, string pipelineHash, string modelHash) =>
        _history.StillRight.Prepend(_history.Current).Select(v => RunName.Of(clipKey, pipelineHash, modelHash, v));

    /// <summary>The same clip under the same hashes in an older layout would be counted twice.</summary>
    private void DeleteOlder(Provenance p)
    {
        foreach (var name in _history.Older.Select(v => RunName.Of(p.ClipKey, p.PipelineHash, p.ModelHash, v)))
        {
            // clips goes first, as always: a clip half taken away must not pass for done.
            foreach (var table in TableList.InWriteOrder.Reverse().Append(FlagsTable.Table)) File.Delete(PathOf(table.Name, name));
        }
    }

    private bool IsWhole(string name, bool withTracks) => TableList.For(withTracks).All(t => File.Exists(PathOf(t.Name, name)));

    private string PathOf(string table, string name) => Path.Combine(_folder, table, name);
}
