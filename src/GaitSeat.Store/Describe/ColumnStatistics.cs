using System.Globalization;
using System.Text;

namespace GaitSeat.Store;

/// <summary>
/// <c>column-statistics.csv</c>: one line a column with rows, nulls, distinct values (not of reals), smallest, largest, mean and standard deviation. Text has no smallest and largest:
/// notes and names of files do not belong on such a page.
/// </summary>
internal static class ColumnStatistics
{
    internal const string FileName = "column-statistics.csv";

    /// <summary>Sums over many cores differ in their last digits from run to run.</summary>
    private const string Rounded = "G9";

    internal static string ToCsv(string folder)
    {
        using var query = new DatasetQuery(folder);
        var page = new StringBuilder("table,column,type,unit,rows,nulls,distinct,min,max,mean,sd\n");
        foreach (var table in TableList.All)
        {
            var row = query.Query("SELECT count(*) AS n, " + string.Join(", ", table.Columns.SelectMany((c, i) => Expressions(c, i))) + $" FROM {table.Name}")[0];
            var rows = (long)row["n"]!;
            for (var i = 0; i < table.Columns.Count; i++) page.Append(Line(table, table.Columns[i], i, rows, row)).Append('\n');
        }

        return page.ToString();
    }

    private static IEnumerable<string> Expressions(ColumnInfo column, int i)
    {
        var c = SchemaHistory.Quoted(column.Name);
        yield return $"count({c}) AS filled{i}";
        // Of measured numbers nearly all differ: counting them would say nothing and take a gigabyte for a million strides.
        if (column.Type != ColumnType.Real) yield return $"count(DISTINCT {c}) AS distinct{i}";
        if (column.Type == ColumnType.Text) yield break;
        yield return $"min({c}) AS min{i}";
        yield return $"max({c}) AS max{i}";
        if (column.Type == ColumnType.Date) yield break;
        yield return $"avg({c}) AS mean{i}";
        yield return $"stddev_samp({c}) AS sd{i}";
    }

    private static string Line(TableInfo table, ColumnInfo column, int i, long rows, IReadOnlyDictionary<string, object?> row)
    {
        string Value(string name) => row.GetValueOrDefault(name + i) switch
        {
            null => "",
            double d => d.ToString(Rounded, CultureInfo.InvariantCulture),
            DateOnly d => d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            IFormattable f => f.ToString(null, CultureInfo.InvariantCulture),
            var other => other.ToString() ?? "",
        };
        string[] fields =
        [
            table.Name, column.Name, column.Type.ToString().ToLowerInvariant(), column.Unit, rows.ToString(CultureInfo.InvariantCulture),
            (rows - (long)row["filled" + i]!).ToString(CultureInfo.InvariantCulture), Value("distinct"), Value("min"), Value("max"), Value("mean"), Value("sd"),
        ];
        return string.Join(',', fields.Select(f => SheetWriter.Quoted(f, ',')));
    }
}
