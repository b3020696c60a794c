using System.Globalization;

namespace GaitSeat.Study.Linear;

/// <summary>What every analysis asks of its columns.</summary>
internal static class DataCheck
{
    public static void SameLength(int rows, IReadOnlyList<DesignColumn> columns)
    {
        if (columns.Count == 0) throw new StudyException(StudyProblem.BadData, "no columns; at least one is needed");
        foreach (var column in columns)
        {
            SameLength(rows, column.Name, column.Values.Length);
            Finite(column.Name, column.Values);
        }
    }

    public static void SameLength(int rows, string name, int found)
    {
        if (found != rows) throw new StudyException(StudyProblem.BadData, $"column '{name}' has {found} values; the outcome has {rows}");
    }

    public static void Finite(string name, ReadOnlySpan<double> values)
    {
        for (var i = 0; i < values.Length; i++)
            if (!double.IsFinite(values[i])) throw Bad(name, i, values[i], "finite numbers are allowed; leave rows with missing values out first");
    }

    public static void Positive(string name, ReadOnlySpan<double> values)
    {
        for (var i = 0; i < values.Length; i++)
            if (!(values[i] > 0) || !double.IsFinite(values[i])) throw Bad(name, i, values[i], "numbers above zero are allowed");
    }

    public static void NotNegative(string name, ReadOnlySpan<double> values)
    {
        for (var i = 0; i < values.Length; i++)
            if (!(values[i] >= 0) || !double.IsFinite(values[i])) throw Bad(name, i, values[i], "numbers from zero up are allowed");
    }

    private static StudyException Bad(string name, int row, double value, string allowed) =>
        new(StudyProblem.BadData, string.Create(CultureInfo.InvariantCulture, $"column '{name}', row {row}: found {value}; {allowed}"));
}
