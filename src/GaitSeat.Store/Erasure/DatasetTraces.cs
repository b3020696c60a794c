using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>What is to be done with a file of the dataset that tells of a rider.</summary>
public enum TraceRemedy
{
    /// <summary>It is theirs alone, or can be made anew without them.</summary>
    Delete,

    /// <summary>A table with rows of others: written anew without theirs.</summary>
    RewriteTable,

    /// <summary>A list of lines: theirs go.</summary>
    DropLines,
}

/// <param name="Path">Relative to the dataset, with slashes.</param>
/// <param name="Parts">Rows or lines that go; 0 where the whole file does.</param>
public sealed record TracedFile(string Path, TraceRemedy Remedy, long Parts);

/// <summary>The files of a dataset that tell of a rider outside the clips' own files, and taking them away.</summary>
public static class DatasetTraces
{
    /// <summary>Where files are lists with a line a clip; elsewhere a text that names the rider goes as a whole.</summary>
    private const string LinesFolder = "worker/";

    private static readonly string[] LineEndings = [".jsonl", ".md", ".html", ".log", ".txt"];

    /// <param name="except">Names of files directly in the dataset that are passed over.</param>
    public static IReadOnlyList<TracedFile> Find(string datasetFolder, Traces traces, IReadOnlySet<string> except, CancellationToken cancellationToken)
    {
        var search = TraceSearch.Of(datasetFolder, traces, except, cancellationToken);
        using var tables = new ParquetTraces(traces);
        return [.. search.Found.Where(f => !f.Path.EndsWith('/')).Select(f => RemedyOf(datasetFolder, f, traces, tables))];
    }

    /// <summary>Does what was planned. A file that is gone by now is fine.</summary>
    public static void Apply(string datasetFolder, IReadOnlyList<TracedFile> files, Traces traces)
    {
        ArgumentNullException.ThrowIfNull(files);
        using var tables = new ParquetTraces(traces);
        foreach (var file in files)
        {
            var path = Path.Combine(datasetFolder, file.Path);
            if (!File.Exists(path)) continue;
            if (file.Remedy == TraceRemedy.RewriteTable) tables.Rewrite(path);
            else if (file.Remedy == TraceRemedy.DropLines) AtomicFile.WriteText(path, string.Concat(Lines(path).Where(l => !traces.In(l))));
            else File.Delete(path);
        }

        foreach (var top in files.Where(f => f.Remedy == TraceRemedy.Delete && f.Path.Contains('/', StringComparison.Ordinal)).Select(f => f.Path.Split('/')[0]).Distinct())
        {
            // Only folders below a table's or the like: the tables' own stay.
            var root = Path.Combine(datasetFolder, top);
            if (Directory.Exists(root)) foreach (var below in Directory.EnumerateDirectories(root).ToList()) EmptyFolders.Remove(below);
        }
    }

    private static TracedFile RemedyOf(string folder, TraceFound found, Traces traces, ParquetTraces tables)
    {
        var path = Path.Combine(folder, found.Path);
        if (found.InName) return new(found.Path, TraceRemedy.Delete, 0);
        if (found.Rows > 0)
        {
            // A table that names the rider in rows that are not theirs cannot be mended row by row, and is left for the proof to tell.
            return tables.OwnRows(path) is > 0 and var rows ? new(found.Path, TraceRemedy.RewriteTable, rows) : new(found.Path, TraceRemedy.Delete, 0);
        }

        return found.Path.StartsWith(LinesFolder, StringComparison.Ordinal) && LineEndings.Contains(Path.GetExtension(path))
            ? new(found.Path, TraceRemedy.DropLines, Lines(path).Count(traces.In))
            : new(found.Path, TraceRemedy.Delete, 0);
    }

    private static IEnumerable<string> Lines(string path)
    {
        var text = Encoding.UTF8.GetString(File.ReadAllBytes(path));
        for (int from = 0, to; from < text.Length; from = to)
        {
            var end = text.IndexOf('\n', from);
            to = end < 0 ? text.Length : end + 1;
            yield return text[from..to];
        }
    }
}
