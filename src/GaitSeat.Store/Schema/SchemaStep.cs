namespace GaitSeat.Store;

/// <summary>One column whose layout changed: how a row of the older layout gets its value.</summary>
/// <param name="OlderSql">SQL over the older row's columns: <c>NULL</c> for a column that is new, the old name for one renamed, a formula for one whose unit changed.</param>
internal sealed record ColumnChange(string Table, string Column, string OlderSql);

/// <summary>What changed between two versions of the tables' layout.</summary>
/// <param name="From">Rows of this version and older ones are brought to the next by the changes.</param>
/// <param name="Gone">Columns that older files have and newer ones have not, by table; formulas may read them.</param>
/// <param name="MeasureAnew">
/// The meaning of a number changed so that no formula gives the new from the old: older rows are still read, and their clips count as undone.
/// </param>
internal sealed record SchemaStep(int From, IReadOnlyList<ColumnChange> Changes, IReadOnlyList<(string Table, string Column)> Gone, bool MeasureAnew);
