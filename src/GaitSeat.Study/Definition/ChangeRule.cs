using System.Text.RegularExpressions;

namespace GaitSeat.Study.Definition;

/// <summary>
/// What tells the strides after a change from those before. Either a condition that holds after it, or a column that rises or falls:
/// then each session is cut by its own smallest and largest value, and strides between them or of a session without a change are neither.
/// </summary>
public sealed partial class ChangeRule
{
    private readonly RowFilter? _condition;
    private readonly bool _rises;

    private ChangeRule(string column, RowFilter? condition, bool rises) => (Column, _condition, _rises) = (column, condition, rises);

    public string Column { get; }

    /// <exception cref="FormatException">Neither a condition nor a column that rises or falls.</exception>
    public static ChangeRule Parse(string text)
    {
        if (Form().Match(text) is { Success: true } match) return new(match.Groups[1].Value, null, match.Groups[2].Value == "rises");
        try
        {
            var condition = RowFilter.Parse(text);
            return new(condition.Column, condition, false);
        }
        catch (FormatException e)
        {
            throw new FormatException($"{e.Message}; or write: column rises, or: column falls", e);
        }
    }

    /// <summary>Rows before (false), after (true) and neither (null), in the order of <paramref name="rows"/>.</summary>
    public bool?[] Sides(StudyTable table, int[] rows, string[] riders, string[] sessions)
    {
        if (_condition is not null)
        {
            var meets = _condition.Of(table);
            return [.. rows.Select(r => (bool?)meets[r])];
        }

        var values = table.Numbers(Column);
        var sides = new bool?[rows.Length];
        foreach (var session in Enumerable.Range(0, rows.Length).GroupBy(i => (riders[i], sessions[i])))
        {
            var (low, high) = (session.Min(i => values[rows[i]]), session.Max(i => values[rows[i]]));
            if (!(high > low)) continue;
            foreach (var i in session)
                if (values[rows[i]] == low || values[rows[i]] == high) sides[i] = values[rows[i]] == high == _rises;
        }

        return sides;
    }

    /// <summary>Whether the rule needs sizes.</summary>
    internal bool NeedsNumbers => _condition is null || _condition.Operator[0] is '<' or '>';

    [GeneratedRegex(@"^\s*([a-z][a-z0-9_]*)\s+(rises|falls)\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
