namespace GaitSeat.Store;

/// <summary>Which columns of which tables go into CSV.</summary>
internal static class CsvTables
{
    /// <summary>One row a frame (see the other formats), and what named people said.</summary>
    private static readonly string[] NotExported = [TracksTable.Name, VerdictsTable.Name, MarksTable.Name];

    /// <summary>Free text of the yard, file names and what would tie a row to them: may name people.</summary>
    private static readonly string[] FreeText = ["clip_file", "note", "extra", "detail", "session_hash", "clip_before", "clip_after"];

    internal static IEnumerable<TableInfo> All => TableList.All.Where(t => !NotExported.Contains(t.Name));

    internal static IEnumerable<string> ColumnsOf(TableInfo table) => table.Columns.Select(c => c.Name).Where(c => !FreeText.Contains(c));
}
