namespace GaitSeat.Store;

/// <summary>
/// Which compacted parts of a table still say what the clips' files say, and which of those files no such part holds.
/// The clips' files are the truth: a part whose sources changed is passed over until it is compacted again.
/// </summary>
/// <param name="FreshParts">Full paths.</param>
/// <param name="Loose">Full paths of files to read besides; null for all of the table's folder.</param>
internal sealed record CompactState(IReadOnlyList<string> FreshParts, IReadOnlyList<string>? Loose)
{
    private static readonly CompactState Nothing = new([], null);

    internal static CompactState Of(string datasetFolder, TableInfo table)
    {
        if (CompactManifest.Read(datasetFolder, table.Name) is not { } manifest) return Nothing;
        var folder = Path.Combine(datasetFolder, table.Name);
        var there = manifest.Parts.Where(p => IsThere(datasetFolder, p)).ToList();
        // The folder is as it was when it was compacted: no need to look at its files one by one.
        if (there.Count == manifest.Parts.Count && manifest.FolderTicks is { } ticks && TicksOf(folder) == ticks) return new(Paths(datasetFolder, there), []);

        var files = SourceFile.In(folder);
        var fresh = there.Where(p => IsFresh(p, files)).ToList();
        var held = fresh.SelectMany(p => p.Sources).ToHashSet(StringComparer.Ordinal);
        return new(Paths(datasetFolder, fresh), [.. files.Keys.Where(f => !held.Contains(f)).Order(StringComparer.Ordinal).Select(f => Path.Combine(folder, f))]);
    }

    internal static bool IsFresh(CompactPart part, IReadOnlyDictionary<string, SourceFile> files)
    {
        var sources = part.Sources.Select(files.GetValueOrDefault).OfType<SourceFile>().ToList();
        return sources.Count == part.Sources.Count && SourceFile.Fingerprint(sources) == part.Fingerprint;
    }

    internal static bool IsThere(string datasetFolder, CompactPart part) =>
        new FileInfo(FullPath(datasetFolder, part)) is { Exists: true } file && file.Length == part.Bytes;

    internal static string FullPath(string datasetFolder, CompactPart part) => Path.Combine([PartFolder.Of(datasetFolder), .. part.Path.Split('/')]);

    internal static long TicksOf(string folder) => Directory.Exists(folder) ? Directory.GetLastWriteTimeUtc(folder).Ticks : 0;

    private static IReadOnlyList<string> Paths(string datasetFolder, IEnumerable<CompactPart> parts) => [.. parts.Select(p => FullPath(datasetFolder, p))];
}
