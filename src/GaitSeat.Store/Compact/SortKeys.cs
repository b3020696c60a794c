namespace GaitSeat.Store;

/// <summary>The order of rows in a part: what is asked for together lies together, and the smallest and largest values in the file's statistics then tell a reader what to skip.</summary>
internal static class SortKeys
{
    private static readonly string[] Order =
    [
        "session_date", "horse", "rider", "clip_file", "clip_key", "pipeline_hash", "model_hash", "spell", "stride", "frame", "scope", "reason", "what", "fault", "before_end_s",
        "start_s", "measure", "judged_at", "judge",
    ];

    internal static string Of(TableInfo table) =>
        string.Join(", ", Order.Where(o => table.Columns.Any(c => c.Name == o)).Select(o => SchemaHistory.Quoted(o) + " NULLS LAST"));
}
