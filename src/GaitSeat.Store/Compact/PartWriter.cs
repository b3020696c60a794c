using System.Globalization;
using DuckDB.NET.Data;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Writes one part: sorted, Zstandard, row groups of a size that a reader can skip or spread over cores; whole or not at all.</summary>
internal static class PartWriter
{
    /// <summary>DuckDB's own choice; the largest part of a season of 500 riders is far below it, so most parts are one group.</summary>
    private const int RowGroupRows = 122_880;

    /// <summary>Level 3 is the format's own default. Measured in docs/decisions/0013-zstandard-by-duckdb.md.</summary>
    private const int ZstdLevel = 3;

    /// <param name="engine">With one thread: rows that compare equal then keep their order, so the same sources give the same bytes. Parts are written side by side instead.</param>
    /// <returns>What goes into the manifest.</returns>
    /// <exception cref="DatasetException">A source cannot be read, or the part does not read back as written.</exception>
    /// <exception cref="IOException">The part cannot be written.</exception>
    internal static CompactPart Write(Engine engine, PartGroup group, string datasetFolder, SchemaHistory history)
    {
        var sources = group.Files.Select(f => Path.Combine(datasetFolder, group.Table.Name, f.Name)).ToList();
        var path = Path.Combine([PartFolder.Of(datasetFolder), .. group.Path.Split('/')]);
        var (rows, bytes) = AtomicFile.Write(path, temporary => (Copy(engine, group.Table, sources, temporary, history), new FileInfo(temporary).Length));
        return new(group.Path, group.Season, group.Rider, rows, bytes, group.Fingerprint, [.. group.Files.Select(f => f.Name)]);
    }

    private static long Copy(Engine engine, TableInfo table, IReadOnlyList<string> sources, string temporary, SchemaHistory history)
    {
        try
        {
            engine.Execute(Statement(table, sources, temporary, history));
            var written = (long)engine.Scalar($"SELECT count(*) FROM read_parquet({SqlText.Files([temporary])}, hive_partitioning = false)")!;
            var read = (long)engine.Scalar($"SELECT sum(num_rows)::BIGINT FROM parquet_file_metadata({SqlText.Files(sources)})")!;
            if (written != read) throw new DatasetException($"'{temporary}' reads back {written} rows; its sources hold {read}. Check the disk, then compact again.");
            return written;
        }
        catch (DuckDBException e)
        {
            throw ReadError.Of(e, sources);
        }
    }

    private static string Statement(TableInfo table, IReadOnlyList<string> sources, string temporary, SchemaHistory history)
    {
        var partitioned = PartFolder.IsPartitioned(table);
        // Rows are in the present layout once they are migrated, so they say so; what is in the folders' names is not repeated in the file.
        var columns = table.Columns.Where(c => !partitioned || !PartFolder.Keys.Contains(c.Name)).Select(c => c.Name == "schema_version"
            ? string.Create(CultureInfo.InvariantCulture, $"CAST({history.Current} AS INTEGER) AS {SchemaHistory.Quoted(c.Name)}")
            : SchemaHistory.Quoted(c.Name));
        var rows = history.Migrated(table, TableView.OfFiles(sources), columns);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"COPY ({rows} ORDER BY {Keys(table, partitioned)}) TO {SqlText.Literal(temporary)} (FORMAT parquet, COMPRESSION zstd, COMPRESSION_LEVEL {ZstdLevel}, ROW_GROUP_SIZE {RowGroupRows}, USE_TMP_FILE false, KV_METADATA {{gaitseat_table: {SqlText.Literal(table.Name)}, gaitseat_schema_version: '{history.Current}'}})");
    }

    /// <summary>Within a part there is one rider: sorting by it is idle, and the column is not selected.</summary>
    private static string Keys(TableInfo table, bool partitioned) =>
        SortKeys.Of(partitioned ? table with { Columns = [.. table.Columns.Where(c => !PartFolder.Keys.Contains(c.Name))] } : table);
}
