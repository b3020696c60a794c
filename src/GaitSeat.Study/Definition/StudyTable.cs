using System.Globalization;

namespace GaitSeat.Study.Definition;

/// <summary>Rows a study is asked of, in memory, by column. Missing is NaN for numbers and null for texts.</summary>
public sealed class StudyTable
{
    private readonly IReadOnlyDictionary<string, double[]> _numbers;
    private readonly IReadOnlyDictionary<string, string?[]> _texts;

    /// <exception cref="ArgumentException">Columns of different length.</exception>
    public StudyTable(int rows, IReadOnlyDictionary<string, double[]> numbers, IReadOnlyDictionary<string, string?[]> texts)
    {
        (Rows, _numbers, _texts) = (rows, numbers, texts);
        foreach (var (name, length) in numbers.Select(n => (n.Key, n.Value.Length)).Concat(texts.Select(t => (t.Key, t.Value.Length))))
            if (length != rows) throw new ArgumentException($"column '{name}' has {length} values; the table has {rows} rows");
    }

    public int Rows { get; }

    public ColumnList Columns => new(_numbers.Keys.ToHashSet(StringComparer.Ordinal), _texts.Keys.ToHashSet(StringComparer.Ordinal));

    public bool IsNumber(string column) => _numbers.ContainsKey(column);

    /// <exception cref="ArgumentException">No such column of numbers.</exception>
    public double[] Numbers(string column) => _numbers.TryGetValue(column, out var values) ? values : throw new ArgumentException($"no column of numbers '{column}'");

    /// <summary>A column as labels; numbers are written out, missing stays null.</summary>
    /// <exception cref="ArgumentException">No such column.</exception>
    public string?[] Labels(string column) =>
        _texts.TryGetValue(column, out var texts) ? texts : Array.ConvertAll(Numbers(column), v => double.IsNaN(v) ? null : v.ToString("R", CultureInfo.InvariantCulture));
}
