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
    private readonly string _mayBeAsked;

    /// <param name="leftOut">Clips that may not be studied.</param>
    public StudySource(DatasetQuery query, DatasetRun run, ValuesFile? values, LeftOutClips leftOut)
    {
        (_run, _values, _mayBeAsked) = (run, values, leftOut.SqlAndNot);
        AddTable(query, "strides", "s");
        AddTable(query, "clips", "c");
        AddSheetColumns(query);
        if (values is null) return;
        foreach (var (column, isNumber) in values.Columns) Add(column, isNumber, isNumber ? $"TRY_CAST(v.{Name(column)} AS DOUBLE)" : $"v.{Name(column)}");
    }

    public ColumnList Columns => new(_numbers.Keys.ToHashSet(StringComparer.Ordinal), _texts.Keys.ToHashSet(StringComparer.Ordinal));

    /// <summary>
    /// The columns of every stride of the run, in the order of clip, spell and stride. Rows come as the database finds them and are put in order here:
    /// a season has a million strides, and sorting them there takes many times their memory.
    /// </summary>
    /// <exception cref="DatasetException">The dataset cannot be read.</exception>
    public StudyTable Read(DatasetQuery query, IReadOnlyList<string> columns)
    {
        var expressions = columns.Select(c => _numbers.TryGetValue(c, out var number) ? $"CAST({number} AS DOUBLE)" : _texts[c]);
        var order = new List<(ulong Clip, int Spell, int Stride)>();
        var read = columns.Select((c, i) => (Column: c, Field: i + 3, Numbers: _numbers.ContainsKey(c) ? new List<double>() : null, Texts: new List<string?>(), Pool: new TextPool())).ToArray();
        query.Each($"SELECT {ClipNumber}, s.spell, s.stride, {string.Join(", ", expressions)} FROM {From()}", row =>
        {
            order.Add((row.GetFieldValue<ulong>(0), row.GetInt32(1), row.GetInt32(2)));
            foreach (var (_, field, numbers, texts, pool) in read)
            {
                if (numbers is not null) numbers.Add(row.IsDBNull(field) ? double.NaN : row.GetDouble(field));
                else texts.Add(row.IsDBNull(field) ? null : pool.Same(row.GetString(field)));
            }
        });
        var sorted = Enumerable.Range(0, order.Count).ToArray();
        Array.Sort(sorted, (a, b) => order[a].CompareTo(order[b]));
        return new(
            order.Count,
            read.Where(r => r.Numbers is not null).ToDictionary(r => r.Column, r => Array.ConvertAll(sorted, i => r.Numbers![i]), StringComparer.Ordinal),
            read.Where(r => r.Numbers is null).ToDictionary(r => r.Column, r => Array.ConvertAll(sorted, i => r.Texts[i]), StringComparer.Ordinal));
    }

    /// <summary>Sixteen hex digits; two clips that agree in all of them would only have their strides in turns.</summary>
    private const string ClipNumber = "CAST('0x' || left(s.clip_key, 16) AS UBIGINT)";

    /// <summary>The same rider a thousand times is one text in memory; an empty text is none.</summary>
    private sealed class TextPool
    {
        private readonly Dictionary<string, string> _known = new(StringComparer.Ordinal);

        public string? Same(string text) => text.Length == 0 ? null : _known.TryGetValue(text, out var same) ? same : _known[text] = text;
    }

    private string From()
    {
        var from = $"(SELECT * FROM strides WHERE {RunCondition("strides")}) s LEFT JOIN (SELECT * FROM clips WHERE {RunCondition("clips")}) c ON s.clip_key = c.clip_key";
        return _values is null ? from : $"{from} LEFT JOIN {_values.Sql} v ON {_values.JoinCondition}";
    }

    private string RunCondition(string table) => $"{table}.pipeline_hash = {Text(_run.PipelineHash)} AND {table}.model_hash = {Text(_run.ModelHash)}{_mayBeAsked}";

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

    private static string Name(string column) => "\"" + column.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static string Text(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
