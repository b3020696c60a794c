using DuckDB.NET.Data;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Traces in Parquet files, whose bytes are compressed: rows are asked by DuckDB.</summary>
internal sealed class ParquetTraces(Traces traces) : IDisposable
{
    /// <summary>A judge and a horse may bear the pseudonym of a rider; they are not the rider.</summary>
    private static readonly string[] OthersNames = ["judge", "horse"];

    private readonly Engine _engine = Engine.Open();

    /// <summary>How many rows of a file belong to the clips or the rider.</summary>
    /// <exception cref="DatasetException">The file cannot be read.</exception>
    internal long OwnRows(string path) => Ask([path], columns => Own(columns) is { } own ? Count(path, own) : 0);

    /// <summary>How many rows of each file hold a trace in any column of text; files without one are not listed. All are asked at once: a table has thousands of small files.</summary>
    /// <exception cref="DatasetException">A file cannot be read.</exception>
    internal IReadOnlyDictionary<string, long> RowsWithTraces(IReadOnlyList<string> paths) => Ask(paths, columns =>
    {
        var own = Own(columns);
        var conditions = own is null ? [] : new List<string> { own };
        foreach (var column in columns)
        {
            var found = new List<string>();
            _engine.Each($"SELECT DISTINCT {SchemaHistory.Quoted(column)} FROM {Source(paths)} WHERE {SchemaHistory.Quoted(column)} IS NOT NULL", r => found.Add(r.GetString(0)));
            var hits = found.Where(v => OthersNames.Contains(column) ? v != traces.Rider && traces.In(v) : traces.In(v)).ToArray();
            if (hits.Length > 0) conditions.Add(In(column, hits));
        }

        var rows = new Dictionary<string, long>(StringComparer.Ordinal);
        if (conditions.Count > 0) _engine.Each($"SELECT filename, count(*) FROM {Source(paths)} WHERE {string.Join(" OR ", conditions.Select(c => $"coalesce({c}, false)"))} GROUP BY ALL", r => rows[r.GetString(0)] = r.GetInt64(1));
        return rows;
    });

    /// <summary>Writes the file anew without the rows that belong to the clips or the rider; it appears whole or not at all.</summary>
    internal void Rewrite(string path) => Ask([path], columns =>
    {
        var own = Own(columns)!;
        return AtomicFile.Write(path, temporary =>
        {
            _engine.Execute($"COPY (SELECT * EXCLUDE (filename) FROM {Source([path])} WHERE NOT coalesce({own}, false)) TO {SqlText.Literal(temporary)} (FORMAT parquet, COMPRESSION zstd, USE_TMP_FILE false)");
            return true;
        });
    });

    public void Dispose() => _engine.Dispose();

    private T Ask<T>(IReadOnlyList<string> paths, Func<string[], T> ask)
    {
        try
        {
            var columns = new List<string>();
            _engine.Each($"SELECT column_name FROM (DESCRIBE SELECT * EXCLUDE (filename) FROM {Source(paths)}) WHERE column_type = 'VARCHAR'", r => columns.Add(r.GetString(0)));
            return ask([.. columns]);
        }
        catch (DuckDBException e)
        {
            throw ReadError.Of(e, paths);
        }
    }

    private long Count(string path, string where) => (long)_engine.Scalar($"SELECT count(*) FROM {Source([path])} WHERE coalesce({where}, false)")!;

    private string? Own(string[] columns)
    {
        var conditions = new List<string>();
        if (columns.Contains("clip_key") && traces.ClipKeys.Count > 0) conditions.Add(In("clip_key", traces.ClipKeys));
        if (columns.Contains("clip_keys") && traces.ClipKeys.Count > 0) conditions.Add($"list_has_any(string_split(clip_keys, ','), [{Literals(traces.ClipKeys)}])");
        if (columns.Contains("rider") && traces.Rider is { } rider) conditions.Add($"rider = {SqlText.Literal(rider)}");
        return conditions.Count == 0 ? null : $"({string.Join(" OR ", conditions.Select(c => $"coalesce({c}, false)"))})";
    }

    private static string In(string column, IEnumerable<string> values) => $"CAST({SchemaHistory.Quoted(column)} AS VARCHAR) IN ({Literals(values)})";

    private static string Literals(IEnumerable<string> values) => string.Join(", ", values.Select(SqlText.Literal));

    private static string Source(IReadOnlyList<string> paths) => $"read_parquet({SqlText.Files(paths)}, union_by_name = true, hive_partitioning = false, filename = true)";
}
