using GaitSeat.Store;
using GaitSeat.Study.Definition;

namespace GaitSeat.Pipeline.Studies;

/// <summary>
/// Where a question's columns come from: the strides themselves, what else is known of their clip (stature, notes, columns of the sheet that the program does not know),
/// and a CSV of the user's. A name means the first of these that has it.
/// </summary>
internal sealed class StudySource
{
    private const string Numeric = "TINYINT SMALLINT INTEGER BIGINT HUGEINT FLOAT DOUBLE DECIMAL UINTEGER UBIGINT";
    private readonly Dictionary<string, string> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);
    private readonly DatasetRun _run;
    private readonly ValuesFile? _values;

    public StudySource(DatasetQuery query, DatasetRun run, ValuesFile? values)
    {
        (_run, _values) = (run, values);
        AddTable(query, "strides", "s");
        AddTable(query, "clips", "c");
        AddSheetColumns(query);
        if (values is null) return;
        foreach (var (column, isNumber) in values.Columns) Add(column, isNumber, isNumber ? $"TRY_CAST(v.{Name(column)} AS DOUBLE)" : $"v.{Name(column)}");
    }

    public ColumnList Columns => new(_numbers.Keys.ToHashSet(StringComparer.Ordinal), _texts.Keys.ToHashSet(StringComparer.Ordinal));

    /// <summary>
    /// The columns of every stride of the run, in the order of clip, spell and stride. Whole stretches come as lists, column by column: a season has a million strides.
    /// </summary>
    /// <exception cref="DatasetException">The dataset cannot be read.</exception>
    public StudyTable Read(DatasetQuery query, IReadOnlyList<string> columns)
    {
        const int StretchRows = 1 << 16;
        var expressions = columns.Select((c, i) => $"{(_numbers.TryGetValue(c, out var number) ? $"coalesce(CAST({number} AS DOUBLE), 'NaN'::DOUBLE)" : $"coalesce({_texts[c]}, '')")} AS k{i}");
        var sql = $"""
            WITH numbered AS (SELECT row_number() OVER (ORDER BY s.clip_key, s.spell, s.stride) - 1 AS n, {string.Join(", ", expressions)} FROM {From()})
            SELECT {string.Join(", ", columns.Select((_, i) => $"list(k{i} ORDER BY n) AS k{i}"))} FROM numbered GROUP BY n // {StretchRows} ORDER BY n // {StretchRows}
            """;
        var stretches = query.Query(sql);
        var numbers = new Dictionary<string, double[]>(StringComparer.Ordinal);
        var texts = new Dictionary<string, string?[]>(StringComparer.Ordinal);
        for (var i = 0; i < columns.Count; i++)
        {
            var key = $"k{i}";
            if (_numbers.ContainsKey(columns[i])) numbers[columns[i]] = [.. stretches.SelectMany(s => (IEnumerable<double>)s[key]!)];
            else texts[columns[i]] = Interned(stretches.SelectMany(s => (IEnumerable<string>)s[key]!));
        }

        var rows = numbers.Values.Select(v => v.Length).Concat(texts.Values.Select(v => v.Length)).FirstOrDefault();
        return new(rows, numbers, texts);
    }

    private string From()
    {
        var from = $"(SELECT * FROM strides WHERE {RunCondition("strides")}) s LEFT JOIN (SELECT * FROM clips WHERE {RunCondition("clips")}) c ON s.clip_key = c.clip_key";
        return _values is null ? from : $"{from} LEFT JOIN {_values.Sql} v ON {_values.JoinCondition}";
    }

    private string RunCondition(string table) => $"{table}.pipeline_hash = {Text(_run.PipelineHash)} AND {table}.model_hash = {Text(_run.ModelHash)}";

    private void AddTable(DatasetQuery query, string table, string alias)
    {
        foreach (var row in query.Query($"SELECT column_name, column_type FROM (DESCRIBE {table})"))
        {
            var (column, type) = ((string)row["column_name"]!, (string)row["column_type"]!);
            var isNumber = Numeric.Split(' ').Contains(type.Split('(')[0]);
            Add(column, isNumber, isNumber ? $"{alias}.{Name(column)}" : $"CAST({alias}.{Name(column)} AS VARCHAR)");
        }
    }

    /// <summary>Columns of the sheet that the program does not know; numbers where every clip's value is one.</summary>
    private void AddSheetColumns(DatasetQuery query)
    {
        var sql = $"""
            SELECT u.key AS column, bool_and(TRY_CAST(u.value AS DOUBLE) IS NOT NULL) AS numeric
            FROM (SELECT unnest(map_entries(CAST(CAST(extra AS JSON) AS MAP(VARCHAR, VARCHAR)))) AS u FROM clips WHERE {RunCondition("clips")} AND extra IS NOT NULL)
            WHERE trim(u.value) <> '' GROUP BY ALL ORDER BY ALL
            """;
        foreach (var row in query.Query(sql))
        {
            var (column, isNumber) = ((string)row["column"]!, (bool)row["numeric"]!);
            var value = $"nullif(trim(json_extract_string(c.extra, {Text("/" + column.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal))})), '')";
            Add(column, isNumber, isNumber ? $"TRY_CAST({value} AS DOUBLE)" : value);
        }
    }

    private void Add(string column, bool isNumber, string expression)
    {
        if (!_numbers.ContainsKey(column) && !_texts.ContainsKey(column)) (isNumber ? _numbers : _texts)[column] = expression;
    }

    /// <summary>The same rider a thousand times is one text in memory; an empty text is none.</summary>
    private static string?[] Interned(IEnumerable<string> texts)
    {
        var known = new Dictionary<string, string>(StringComparer.Ordinal);
        return [.. texts.Select(t => t.Length == 0 ? null : known.TryGetValue(t, out var same) ? same : known[t] = t)];
    }

    private static string Name(string column) => "\"" + column.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static string Text(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
