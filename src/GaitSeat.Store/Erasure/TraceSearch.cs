using System.Text;

namespace GaitSeat.Store;

/// <summary>Where a trace was found.</summary>
/// <param name="Path">Relative to the folder searched, with slashes.</param>
/// <param name="InName">Whether the path itself tells.</param>
/// <param name="Rows">Rows of a table that hold one; 0 for other files.</param>
/// <param name="InBytes">Whether a file that is no table holds one in its bytes.</param>
public sealed record TraceFound(string Path, bool InName, long Rows, bool InBytes)
{
    public bool Any => InName || Rows > 0 || InBytes;
}

/// <summary>What a search came to.</summary>
/// <param name="Files">How many files were read to their end.</param>
/// <param name="Found">Those with a trace.</param>
/// <param name="Unread">Files that could not be read: nothing can be said of them.</param>
public sealed record TraceSearchResult(int Files, int Tables, IReadOnlyList<TraceFound> Found, IReadOnlyList<string> Unread)
{
    /// <summary>Nothing is left, and nothing stayed unread.</summary>
    public bool IsClean => Found.Count == 0 && Unread.Count == 0;
}

/// <summary>Reads every file of a folder for traces of a rider: names and bytes of all files, every text column of every Parquet file.</summary>
public static class TraceSearch
{
    /// <param name="except">Names of files directly in the folder that are passed over: those that say who is being forgotten.</param>
    public static TraceSearchResult Of(string folder, Traces traces, IReadOnlySet<string> except, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(traces);
        ArgumentNullException.ThrowIfNull(except);
        string Relative(string path) => Path.GetRelativePath(folder, path).Replace('\\', '/');
        var paths = Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }).Where(p => !except.Contains(Relative(p))).Order(StringComparer.Ordinal).ToArray();
        string[] tables = [.. paths.Where(IsTable)];
        var unread = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var rows = RowsOf(tables, traces, (path, why) => unread[Relative(path)] = why);
        var found = new List<TraceFound>();
        foreach (var path in paths)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var relative = Relative(path);
            try
            {
                TraceFound look = new(relative, traces.InPath(relative), rows.GetValueOrDefault(path), traces.In(Encoding.Latin1.GetString(File.ReadAllBytes(path))));
                if (look.Any) found.Add(look);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                unread[relative] = e.Message;
            }
        }

        var folders = Directory.EnumerateDirectories(folder, "*", SearchOption.AllDirectories).Select(d => Path.GetRelativePath(folder, d).Replace('\\', '/')).Where(traces.InPath);
        return new(paths.Length - unread.Count, tables.Length, [.. found, .. folders.Select(f => new TraceFound(f + "/", true, 0, false))], [.. unread.Select(u => $"{u.Key}: {u.Value}")]);
    }

    private static bool IsTable(string path) => path.EndsWith(RunName.Extension, StringComparison.OrdinalIgnoreCase);

    /// <summary>Folder by folder; one that holds a damaged file is asked file by file, so that only that one stays unread.</summary>
    private static Dictionary<string, long> RowsOf(string[] tables, Traces traces, Action<string, string> unread)
    {
        using var asked = new ParquetTraces(traces);
        var rows = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var group in tables.GroupBy(Path.GetDirectoryName))
        {
            try
            {
                foreach (var (path, count) in asked.RowsWithTraces([.. group])) rows[path] = count;
            }
            catch (DatasetException)
            {
                foreach (var path in group) OneByOne(path);
            }
        }

        return rows;

        void OneByOne(string path)
        {
            try
            {
                rows[path] = asked.RowsWithTraces([path]).GetValueOrDefault(path);
            }
            catch (DatasetException e)
            {
                unread(path, e.Message);
            }
        }
    }
}
