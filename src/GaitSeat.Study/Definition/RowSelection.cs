namespace GaitSeat.Study.Definition;

/// <summary>One step from all rows to those that are analysed.</summary>
/// <param name="LeftOut">Rows that this step took away.</param>
/// <param name="Left">Rows after it.</param>
public sealed record FlowStep(string Reason, int LeftOut, int Left);

/// <summary>Rows that are left, and how they came to be: nothing is left out without a reason that is counted.</summary>
public sealed record RowSelection(int[] Rows, IReadOnlyList<FlowStep> Flow)
{
    public static RowSelection All(StudyTable table) => new([.. Enumerable.Range(0, table.Rows)], [new("rows in the dataset", 0, table.Rows)]);

    public RowSelection Keep(string reason, Func<int, bool> keep)
    {
        int[] left = [.. Rows.Where(keep)];
        return new(left, [.. Flow, new(reason, Rows.Length - left.Length, left.Length)]);
    }

    public RowSelection Keep(RowFilter filter, StudyTable table)
    {
        var meets = filter.Of(table);
        return Keep($"not {filter.Text}", r => meets[r]);
    }

    /// <summary>Rows with a value in a column of numbers or texts.</summary>
    public RowSelection Present(string column, StudyTable table)
    {
        if (table.IsNumber(column))
        {
            var numbers = table.Numbers(column);
            return Keep($"no {column}", r => double.IsFinite(numbers[r]));
        }

        var texts = table.Labels(column);
        return Keep($"no {column}", r => texts[r] is not null);
    }

    public double[] Take(double[] values) => [.. Rows.Select(r => values[r])];

    public string[] Take(string?[] values) => [.. Rows.Select(r => values[r]!)];

    /// <exception cref="StudyException">Nothing is left; the step that took the last row is named.</exception>
    public RowSelection OrThrow()
    {
        if (Rows.Length > 0) return this;
        var last = Flow.FirstOrDefault(f => f.Left == 0);
        throw new StudyException(StudyProblem.TooFewRows, $"no rows are left after '{last?.Reason}'; loosen the filters, or choose columns that were measured");
    }
}
