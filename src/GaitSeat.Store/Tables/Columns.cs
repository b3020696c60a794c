namespace GaitSeat.Store;

/// <summary>Short ways to describe a column. Where <c>nullMeans</c> is left away the column is always filled.</summary>
internal static class Columns
{
    internal static Column<TRow> Text<TRow>(string name, string definition, Func<TRow, string?> get, string? nullMeans = null) =>
        new TextColumn<TRow>(new(name, ColumnType.Text, "", definition, nullMeans), get);

    internal static Column<TRow> Whole<TRow>(string name, string unit, string definition, Func<TRow, int?> get, string? nullMeans = null) =>
        new ValueColumn<TRow, int>(new(name, ColumnType.Whole, unit, definition, nullMeans), get);

    internal static Column<TRow> Date<TRow>(string name, string definition, Func<TRow, DateOnly?> get, string? nullMeans = null) =>
        new ValueColumn<TRow, DateOnly>(new(name, ColumnType.Date, "", definition, nullMeans), get);

    /// <summary>A number. What is not finite becomes null: a value that cannot be measured is null, never NaN and never zero.</summary>
    internal static Column<TRow> Real<TRow>(string name, string unit, string definition, Func<TRow, double?> get, string? nullMeans = null) =>
        new ValueColumn<TRow, double>(
            new(name, ColumnType.Real, unit, definition, nullMeans),
            row => get(row) is { } v && double.IsFinite(v) ? v : null);
}
