namespace GaitSeat.Store;

/// <summary>
/// Erasure reaches the compacted copy: every part that holds rows of the clip goes as a whole, with the pages that describe it. The rows of other clips in those parts
/// are not lost, they are read from the clips' files until the dataset is compacted again.
/// </summary>
internal static class CompactErasure
{
    /// <returns>How many parts were taken away.</returns>
    internal static int Erase(string datasetFolder, string clipKey)
    {
        if (!Directory.Exists(PartFolder.Of(datasetFolder))) return 0;
        var prefix = RunName.ClipPart(clipKey);
        var gone = TableList.All.Sum(table => Table(datasetFolder, table, prefix));
        if (gone > 0) Pages(datasetFolder);
        return gone;
    }

    private static int Table(string datasetFolder, TableInfo table, string prefix)
    {
        var root = Path.Combine(PartFolder.Of(datasetFolder), table.Name);
        if (!Directory.Exists(root)) return 0;
        var manifest = CompactManifest.Read(datasetFolder, table.Name);
        // A session's file is named after the session, not after its clips: the one part of all sessions goes with any clip.
        var kept = (manifest?.Parts ?? [])
            .Where(p => table.Name != SessionsTable.Name && CompactState.IsThere(datasetFolder, p) && !p.Sources.Any(s => s.StartsWith(prefix, StringComparison.Ordinal))).ToList();
        // What the list does not know may hold the clip too: a run torn off between a part and the list leaves such files.
        var stays = kept.Select(p => CompactState.FullPath(datasetFolder, p)).ToHashSet(StringComparer.Ordinal);
        var touched = Directory.EnumerateFiles(root, "*" + RunName.Extension + "*", SearchOption.AllDirectories).Where(f => !stays.Contains(f)).ToList();
        if (touched.Count == 0) return 0;
        touched.ForEach(File.Delete);
        if (kept.Count > 0) (manifest! with { FolderTicks = null, Parts = kept }).Write(datasetFolder, table.Name);
        else File.Delete(CompactManifest.PathOf(datasetFolder, table.Name));
        EmptyFolders.Remove(root);
        return touched.Count;
    }

    /// <summary>They name files, riders and counts that no longer hold.</summary>
    private static void Pages(string datasetFolder)
    {
        foreach (var page in Directory.EnumerateFiles(PartFolder.Of(datasetFolder)).Where(f => Path.GetFileName(f) != PartFolder.LockFile)) File.Delete(page);
    }
}
