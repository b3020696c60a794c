namespace GaitSeat.Store.Tests;

internal static class DuckDbTypes
{
    internal static string Of(ColumnType type) => type switch
    {
        ColumnType.Text => "VARCHAR",
        ColumnType.Whole => "INTEGER",
        ColumnType.Date => "DATE",
        ColumnType.Real => "DOUBLE",
        _ => throw new ArgumentOutOfRangeException(nameof(type)),
    };
}
