namespace GaitSeat.Store;

/// <summary>The columns that together name one row of a table; tables without such columns have none.</summary>
internal static class TableKeys
{
    private static readonly string[] Run = ["clip_key", "pipeline_hash", "model_hash"];

    internal static IReadOnlyList<string> Of(string table) => table switch
    {
        ClipsTable.Name => Run,
        SpellsTable.Name => [.. Run, "spell"],
        StridesTable.Name => [.. Run, "spell", "stride"],
        FlagsTable.Name => [.. Run, "spell", "fault"],
        TracksTable.Name => [.. Run, "frame"],
        _ => [],
    };
}
