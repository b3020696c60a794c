namespace GaitSeat.Store;

/// <summary>The statement that shows a table's files as one view: the compacted ones as far as they still hold, and the files of the clips for the rest.</summary>
internal static class TableView
{
    /// <param name="where">A condition on the rows; null for all.</param>
    internal static string Sql(TableInfo table, string folder, string? where, SchemaHistory history)
    {
        var sources = Sources(table, folder);
        var columns = table.Columns.Select(c => SchemaHistory.Quoted(c.Name));
        var select = history.Migrated(table, sources, columns);
        return $"CREATE VIEW {table.Name} AS {select}" + (where is null ? "" : $" AND {where}");
    }

    /// <summary>What stands behind FROM for some files of a table.</summary>
    internal static string OfFiles(IEnumerable<string> paths) => $"read_parquet({SqlText.Files(paths)}, union_by_name = true, hive_partitioning = false)";

    /// <summary>Full paths of the files a view of the table reads.</summary>
    internal static IReadOnlyList<string> FilesRead(TableInfo table, string folder)
    {
        var state = CompactState.Of(folder, table);
        return [.. state.FreshParts, .. state.Loose ?? SourceFile.In(Path.Combine(folder, table.Name)).Keys.Order(StringComparer.Ordinal).Select(f => Path.Combine(folder, table.Name, f))];
    }

    private static string Sources(TableInfo table, string folder)
    {
        var tableFolder = Path.Combine(folder, table.Name);
        var state = CompactState.Of(folder, table);
        string?[] sources =
        [
            state.FreshParts.Count > 0 ? OfParts(table, state.FreshParts) : null,
            state.Loose is { } loose ? loose.Count > 0 ? OfFiles(loose) : null
            : Directory.Exists(tableFolder) && Directory.EnumerateFiles(tableFolder, "*" + RunName.Extension).Any() ? OfFolder(tableFolder) : null,
        ];
        var there = sources.OfType<string>().ToArray();
        return there.Length switch
        {
            0 => $"(SELECT CAST(NULL AS INTEGER) AS schema_version WHERE false)",
            1 => there[0],
            _ => $"(SELECT * FROM {there[0]} UNION ALL BY NAME SELECT * FROM {there[1]})",
        };
    }

    /// <summary>
    /// Parts carry what they are parted by in their folders' names; read as text, also where a season is a year. All are of one layout: only the first is opened to learn its columns.
    /// </summary>
    private static string OfParts(TableInfo table, IReadOnlyList<string> parts) => PartFolder.IsPartitioned(table)
        ? $"read_parquet({SqlText.Files(parts)}, hive_partitioning = true, hive_types = {{'season': VARCHAR, 'rider': VARCHAR}})"
        : $"read_parquet({SqlText.Files(parts)}, hive_partitioning = false)";

    private static string OfFolder(string tableFolder)
    {
        var pattern = Path.Combine(SqlText.Pattern(tableFolder), "*" + RunName.Extension);
        return $"read_parquet({SqlText.Literal(pattern)}, union_by_name = true, hive_partitioning = false)";
    }
}
