namespace GaitSeat.Store;

/// <summary>The tables of the dataset.</summary>
public static class TableList
{
    /// <summary>Those with a file a clip, in the order of writing: <c>clips</c> comes last, so that a clip whose row is there is whole.</summary>
    internal static IReadOnlyList<Table> InWriteOrder { get; } =
    [
        TracksTable.Table, SpellsTable.Table, StridesTable.Table, ChangesTable.Table, FindingsTable.Table, SkippedTable.Table, ClipsTable.Table,
    ];

    /// <summary>Name, purpose and columns of every table. Sessions and flags are made of many clips, verdicts and marks come from people.</summary>
    public static IReadOnlyList<TableInfo> All { get; } =
        [.. InWriteOrder.Reverse().Select(t => t.Info), SessionsTable.Table.Info, FlagsTable.Table.Info, VerdictsTable.Table.Info, MarksTable.Table.Info];

    /// <summary>The tables a finished clip has a file in; tracks only where they are asked for.</summary>
    internal static IEnumerable<Table> For(bool withTracks) => InWriteOrder.Where(t => withTracks || t.Name != TracksTable.Name);
}
