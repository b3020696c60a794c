namespace GaitSeat.Store;

/// <summary>The statement that shows a table's files as one view.</summary>
internal static class TableView
{
    internal static string Sql(TableInfo table, string folder)
    {
        var tableFolder = Path.Combine(folder, table.Name);
        var any = Directory.Exists(tableFolder) && Directory.EnumerateFiles(tableFolder, "*" + RunName.Extension).Any();
        return $"CREATE VIEW {table.Name} AS " + (any ? OfFiles(tableFolder) : Empty(table));
    }

    private static string OfFiles(string tableFolder)
    {
        var pattern = Path.Combine(Literal(tableFolder), "*" + RunName.Extension).Replace("'", "''", StringComparison.Ordinal);
        return $"SELECT * FROM read_parquet('{pattern}', union_by_name = true)";
    }

    /// <summary>A folder name may hold what a pattern reads as a wildcard.</summary>
    private static string Literal(string path) =>
        path.Replace("[", "[[]", StringComparison.Ordinal).Replace("*", "[*]", StringComparison.Ordinal).Replace("?", "[?]", StringComparison.Ordinal);

    private static string Empty(TableInfo table) =>
        "SELECT " + string.Join(", ", table.Columns.Select(c => $"CAST(NULL AS {TypeOf(c.Type)}) AS \"{c.Name}\"")) + " WHERE false";

    private static string TypeOf(ColumnType type) => type switch
    {
        ColumnType.Text => "VARCHAR",
        ColumnType.Whole => "INTEGER",
        ColumnType.Date => "DATE",
        _ => "DOUBLE",
    };
}
