namespace GaitSeat.Store;

/// <summary>How a column is kept: Parquet and DuckDB types follow from it.</summary>
public enum ColumnType
{
    Text,
    Whole,
    Real,
    Date,
}

/// <summary>One line of the data dictionary.</summary>
/// <param name="Unit">Unit of the value; empty where it has none.</param>
/// <param name="NullMeans">What a null says; null where the column is always filled.</param>
public sealed record ColumnInfo(string Name, ColumnType Type, string Unit, string Definition, string? NullMeans);

/// <summary>A table of the dataset as others may know it.</summary>
public sealed record TableInfo(string Name, string About, IReadOnlyList<ColumnInfo> Columns);
