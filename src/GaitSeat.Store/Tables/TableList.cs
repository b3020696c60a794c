namespace GaitSeat.Store;

/// <summary>The tables of the dataset.</summary>
public static class TableList
{
    /// <summary>In the order of writing: <c>clips</c> comes last, so that a clip whose row is there is whole.</summary>
    internal static IReadOnlyList<Table> InWriteOrder { get; } =
    [
        TracksTable.Table, SpellsTable.Table, StridesTable.Table, FindingsTable.Table, SkippedTable.Table, ClipsTable.Table,
    ];

    /// <summary>Name, purpose and columns of every table. Verdicts come from people, not with a clip's measuring.</summary>
    public static IReadOnlyList<TableInfo> All { get; } = [.. InWriteOrder.Reverse().Select(t => t.Info), VerdictsTable.Table.Info];

    /// <summary>The tables a finished clip has a file in; tracks only where they are asked for.</summary>
    internal static IEnumerable<Table> For(bool withTracks) => InWriteOrder.Where(t => withTracks || t.Name != TracksTable.Name);
}
