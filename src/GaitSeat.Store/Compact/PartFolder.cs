namespace GaitSeat.Store;

/// <summary>
/// Where a compacted part lies: <c>compact/table/season=…/rider=…/table.parquet</c> for what is kept clip by clip,
/// <c>compact/table/table.parquet</c> for sessions and verdicts.
/// </summary>
internal static class PartFolder
{
    internal const string Name = "compact";
    internal const string LockFile = "_lock";

    /// <summary>What Hive, Spark, Arrow and DuckDB read as null.</summary>
    private const string NullValue = "__HIVE_DEFAULT_PARTITION__";

    internal static IReadOnlyList<string> Keys { get; } = ["season", "rider"];

    internal static string Of(string datasetFolder) => Path.Combine(datasetFolder, Name);

    internal static bool IsPartitioned(TableInfo table) => TableList.InWriteOrder.Any(t => t.Name == table.Name);

    /// <summary>Path of a part relative to the compact folder, with slashes: it goes into files that others read.</summary>
    internal static string PathOf(TableInfo table, string? season, string? rider) => IsPartitioned(table)
        ? $"{table.Name}/season={Escaped(season)}/rider={Escaped(rider)}/{table.Name}{RunName.Extension}"
        : $"{table.Name}/{table.Name}{RunName.Extension}";

    /// <summary>Percent-encoded, as Hive and DuckDB do with what a folder's name may not hold.</summary>
    private static string Escaped(string? value) => value is null or "" ? NullValue : Uri.EscapeDataString(value).Replace(".", "%2E", StringComparison.Ordinal);
}
